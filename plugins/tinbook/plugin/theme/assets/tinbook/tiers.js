// From guests to tins: the same sums as plans/portions/guests.py, over the sets in the page.
import { handedOver } from "./embedded.js";

const MOST_SHOWN = 5;

// The portions a tin serves are in the order of the kinds.
const NAMES = {
  kinds: kinds => kinds.map(([name, size]) => ({ name, size })),
  tins: tins =>
    tins.map(([name, owned, everyday, ...rest]) => ({
      name,
      owned,
      everyday,
      serves: rest.slice(0, -2),
      area_mm2: rest.at(-2),
      width_mm: rest.at(-1),
    })),
  cups: ([name, owned, serves, ml]) => ({ name, owned, serves, ml }),
  mixtures: mixtures => mixtures.map(([slug, deep_mm, batter_ml]) => ({ slug, deep_mm, batter_ml })),
};

export const setsOf = page => handedOver("tb-sets", NAMES, page);

// wish: { guests, kind, top, owned, beside, shape }. The best sets first.
export function answers(table, wish, most = MOST_SHOWN) {
  const served = table.sets
    .filter(tiers => isWished(table, tiers, wish))
    .flatMap(tiers => withBeside(table, tiers, wish))
    .filter(({ over }) => over >= 0);
  return served.sort(byBest).slice(0, most);
}

function isWished(table, tiers, wish) {
  const stacked = tiers.length > 1;
  if (wish.shape === "stacked" && !stacked) return false;
  if (wish.shape === "single" && stacked) return false;
  if (wish.top && !stacked) return false;
  return !wish.owned || tiers.every(place => table.tins[place].owned);
}

// What a set serves alone, with each tray, or with as many cups as it takes.
function withBeside(table, tiers, wish) {
  const servesOf = place => table.tins[place].serves[wish.kind];
  const areaOf = place => table.tins[place].area_mm2;
  const counted = wish.top ? tiers.slice(0, -1) : tiers;
  const served = counted.reduce((sum, place) => sum + servesOf(place), 0);
  const tiersArea = tiers.reduce((sum, place) => sum + areaOf(place), 0);
  const answer = (serves, area, tray = null, cups = 0) => ({
    odd: [...tiers, tray].filter(isPlace).some(place => !table.tins[place].everyday),
    lent: [...tiers, tray].filter(isPlace).some(place => !table.tins[place].owned) || (cups > 0 && !table.cups.owned),
    tiers,
    tray,
    cups,
    serves,
    over: serves - wish.guests,
    area,
  });
  if (wish.beside === "nothing") return [answer(served, tiersArea)];
  if (wish.beside === "a tray") {
    const trays = table.trays.filter(place => table.tins[place].owned || !wish.owned);
    return trays.map(tray => answer(served + servesOf(tray), tiersArea + areaOf(tray), tray));
  }
  const { cups } = table;
  if (!cups || (wish.owned && !cups.owned)) return [];
  const count = Math.max(1, Math.ceil((wish.guests - served) / cups.serves));
  return count <= table.most_trays ? [answer(served + count * cups.serves, tiersArea, null, count)] : [];
}

const isPlace = place => place !== null;

// Everyday shapes, then tins of the house, then fewest over, fewest tins, least mixture, and the first in the table.
const byBest = (one, other) =>
  Number(one.odd) - Number(other.odd) ||
  Number(one.lent) - Number(other.lent) ||
  one.over - other.over ||
  tinCount(one) - tinCount(other) ||
  one.area - other.area ||
  byPlaces(one, other);

const tinCount = ({ tiers, tray, cups }) => tiers.length + cups + (tray === null ? 0 : 1);

function byPlaces(one, other) {
  const [places, others] = [one, other].map(({ tiers, tray }) => [...tiers, tray ?? -1]);
  const differs = places.findIndex((place, index) => place !== others[index]);
  if (differs < 0 || differs >= others.length) return places.length - others.length;
  return places[differs] - others[differs];
}
