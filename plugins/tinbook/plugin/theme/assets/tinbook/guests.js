// From guests to tins: the same sums as plans/guests.py, over the sets the page hands over.
import { announce, find, json, make } from "./dom.js";
import { read, write } from "./keep.js";
import { fixed, withUnit } from "./spell.js";
import { halfUp } from "./sums.js";

const words = {
  guests: "Guests",
  portion: "Portion",
  beside: "Beside it",
  mixture: "Baked from",
  top: "Keep the top tier back",
  owned: "Own tins only",
  nothing: "nothing",
  cupcakes: "cupcakes",
  "a tray": "a tray",
  any: "any",
  single: "one tin",
  stacked: "stacked",
  shape: "Cake",
  serves: (serves, over) => `serves ${serves}${over ? `, ${over} over` : ", none over"}`,
  none: "No set of up to four tiers serves so many. Bake more than one cake.",
  bad: (low, high) => `Write a number of guests from ${low} to ${high}.`,
  kept: "the top tier kept",
  recipes: (factor, litres) => `× ${factor} of the recipe, ${litres} of batter`,
};
const SHOWN = 5;

const order = (one, other) => {
  for (let at = 0; at < Math.max(one.length, other.length); at++) {
    if (at >= one.length || at >= other.length) return one.length - other.length;
    if (one[at] !== other[at]) return one[at] - other[at];
  }
  return 0;
};

// wish: { guests, kind, top, owned, beside, shape }
export function answers(made, wish, most = SHOWN) {
  const serves = made.tins.map(tin => tin[2 + wish.kind]),
    found = [];
  const keep = (tiers, tray, cups, got, area) => {
    const over = got - wish.guests;
    if (over >= 0)
      found.push({
        tiers,
        tray,
        cups,
        serves: got,
        over,
        area,
        rank: [over, tiers.length + cups + (tray === null ? 0 : 1), area, ...tiers, tray ?? -1],
      });
  };
  for (const tiers of made.sets) {
    const stacked = tiers.length > 1;
    if ((wish.shape === "stacked" && !stacked) || (wish.shape === "single" && stacked) || (wish.top && !stacked))
      continue;
    let got = 0,
      area = 0,
      owned = true;
    tiers.forEach((at, index) => {
      if (!(wish.top && index === tiers.length - 1)) got += serves[at];
      area += made.tins[at].at(-1);
      owned &&= made.tins[at][1];
    });
    if (wish.owned && !owned) continue;
    if (wish.beside === "nothing") keep(tiers, null, 0, got, area);
    else if (wish.beside === "a tray") {
      for (const at of made.trays)
        if (made.tins[at][1] || !wish.owned) keep(tiers, at, 0, got + serves[at], area + made.tins[at].at(-1));
    } else if (made.cups && (made.cups[1] || !wish.owned)) {
      const each = made.cups[2],
        count = Math.max(1, Math.ceil((wish.guests - got) / each));
      if (count <= made.most_trays) keep(tiers, null, count, got + count * each, area);
    }
  }
  return found.sort((one, other) => order(one.rank, other.rank)).slice(0, most);
}

export function told(made, each) {
  const cake = each.tiers.map(at => made.tins[at][0]).join(" + ");
  const beside =
    each.tray !== null ? made.tins[each.tray][0] : each.cups ? `${each.cups * made.cups[2]} ${made.cups[0]}` : "";
  return beside ? `${cake} and ${beside}` : cake;
}

function ask() {
  const holder = find("#tb-ask"),
    made = json("tb-sets");
  if (!holder || !made) return;
  const kept = read("guests", {}),
    fields = {},
    out = make("div", { role: "region", "aria-label": words.shape });
  const select = (name, label, options) => {
    fields[name] = make(
      "select",
      { onchange: () => show(true) },
      ...options.map(([value, text]) => make("option", { value }, text)),
    );
    fields[name].value = options.some(([value]) => String(value) === kept[name]) ? kept[name] : String(options[0][0]);
    return make("label", {}, label, fields[name]);
  };
  const tick = (name, label) => {
    fields[name] = make("input", { type: "checkbox", onchange: () => show(true) });
    fields[name].checked = kept[name] === true;
    return make("label", { class: "tb-tickbox" }, fields[name], label);
  };
  fields.guests = make("input", { type: "text", inputmode: "numeric", autocomplete: "off", oninput: () => show(true) });
  fields.guests.value = kept.guests || "40";
  const plain = names => names.map(name => [name, words[name]]);
  const kinds = made.kinds.map(([kind, size], at) => [at, `${kind}, ${size}`]);
  holder.append(
    make(
      "div",
      { class: "tb-asked" },
      make("label", {}, words.guests, fields.guests),
      select("kind", words.portion, [kinds[1], kinds[0], kinds[2]]),
      select("shape", words.shape, plain(["any", "single", "stacked"])),
      select("beside", words.beside, plain(["nothing", "cupcakes", "a tray"])),
      made.mixtures.length
        ? select(
            "mixture",
            words.mixture,
            made.mixtures.map(([name], at) => [at, name]),
          )
        : null,
      tick("top", words.top),
      tick("owned", words.owned),
    ),
    out,
  );
  function show(say) {
    const value = name => (fields[name].type === "checkbox" ? fields[name].checked : fields[name].value);
    if (say) write("guests", Object.fromEntries(Object.keys(fields).map(name => [name, value(name)])));
    const guests = Number(value("guests").trim());
    if (!Number.isInteger(guests) || guests < made.fewest || guests > made.most) {
      out.replaceChildren(make("p", {}, words.bad(made.fewest, made.most)));
      return;
    }
    const found = answers(made, {
      guests,
      kind: Number(value("kind")),
      top: value("top"),
      owned: value("owned"),
      beside: value("beside"),
      shape: value("shape"),
    });
    const mixture = fields.mixture && made.mixtures[Number(value("mixture"))];
    const takes = each => {
      if (!mixture) return "";
      const ml = (each.area * mixture[1]) / 1000 + each.cups * (made.cups?.[3] ?? 0);
      return `; ${words.recipes(fixed(halfUp(ml / mixture[2], 0.01), 2), withUnit(fixed(halfUp(ml / 1000, 0.1), 1), "l"))}`;
    };
    out.replaceChildren(
      found.length
        ? make(
            "ol",
            { class: "tb-found" },
            ...found.map(each =>
              make(
                "li",
                {},
                make("b", {}, String(each.serves)),
                make(
                  "span",
                  {},
                  told(made, each),
                  make(
                    "small",
                    {},
                    words.serves(each.serves, each.over) + (value("top") ? `; ${words.kept}` : "") + takes(each),
                  ),
                ),
              ),
            ),
          )
        : make("p", {}, words.none),
    );
    if (say)
      announce(found.length ? `${told(made, found[0])}, ${words.serves(found[0].serves, found[0].over)}` : words.none);
  }
  show(false);
  holder.hidden = false;
}
ask();
