// Spells numbers as pages/spelling/formats.py does.
import { spans, units } from "./words.js";

const FRACTIONS = { 125: "⅛", 250: "¼", 333: "⅓", 375: "⅜", 500: "½", 625: "⅝", 667: "⅔", 750: "¾", 875: "⅞" };
const PINCH = 0.0625;
const NBSP = "\u00a0";
const MINUS = "\u2212";

export function number(value) {
  const plain = Math.abs(value)
    .toFixed(4)
    .replace(/\.?0+$/, "");
  const [whole, decimals] = plain.split(".");
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, ",") : whole;
  const text = decimals ? `${grouped}.${decimals}` : grouped;
  return (value < 0 && text !== "0" ? MINUS : "") + text;
}

export function mixed(value) {
  if (value === PINCH) return "1/16";
  const whole = Math.trunc(value);
  const fraction = FRACTIONS[Math.round((value - whole) * 1000)];
  return fraction ? `${whole || ""}${fraction}` : number(value);
}

export function fixed(value, places) {
  const sign = value < 0 && Number(value.toFixed(places)) ? MINUS : "";
  return sign + Math.abs(value).toFixed(places);
}

export const withUnit = (text, unit) => (unit ? text + NBSP + unit : text);
export const grams = value => withUnit(number(value), "g");
export const centimetres = mm => number(mm / 10);
export const figure = ({ shown, unit }) => (unit === "g" || unit === "ml" ? number(shown) : mixed(shown));

// A figure and its unit; pounds come before it.
export function ounces(value) {
  const pounds = Math.floor(value / 16);
  const rest = value - pounds * 16;
  if (!pounds) return [mixed(value), units.ounces];
  if (!rest) return [String(pounds), units.pounds];
  return [withUnit(String(pounds), units.pounds) + NBSP + mixed(rest), units.ounces];
}

export const cupWord = ({ shown, unit }) => (unit === "cup" && shown > 1 ? units.cups : unit);

export const tinWords = name =>
  name
    .replace(/(fairy|mini|standard|jumbo) cups/, (_, size) => `${size} ${units[size] || units.other}`)
    .replaceAll(" x ", `${NBSP}×${NBSP}`)
    .replaceAll(" cm", `${NBSP}cm`)
    .replaceAll(" in", `${NBSP}in`);

// As pages/base/shared.py spells them: a range of minutes, in hours.
export function minutesWords(low, high) {
  const inHours = minutes => {
    const parts = [
      [Math.floor(minutes / 60), units.hours],
      [minutes % 60, units.minutes],
    ];
    return parts
      .filter(([count]) => count)
      .map(([count, unit]) => withUnit(String(count), unit))
      .join(NBSP);
  };
  if (low === high) return inHours(low);
  return high < 60 ? spans.short(low, inHours(high)) : spans.long(inHours(low), inHours(high));
}
