// Spells numbers the way pages/formats.py does.
const FRACTIONS = { 125: "⅛", 250: "¼", 333: "⅓", 375: "⅜", 500: "½", 625: "⅝", 667: "⅔", 750: "¾", 875: "⅞" };
const NBSP = "\u00a0",
  MINUS = "\u2212";

export function number(value) {
  let text = Math.abs(value)
    .toFixed(4)
    .replace(/\.?0+$/, "");
  const [whole, rest] = text.split(".");
  const far = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, ",") : whole;
  text = rest ? `${far}.${rest}` : far;
  return (value < 0 && text !== "0" ? MINUS : "") + text;
}

export function mixed(value) {
  const whole = Math.trunc(value),
    fraction = FRACTIONS[Math.round((value - whole) * 1000)];
  return fraction ? `${whole || ""}${fraction}` : number(value);
}

export const fixed = (value, places) =>
  (value < 0 && Number(value.toFixed(places)) ? MINUS : "") + Math.abs(value).toFixed(places);
export const withUnit = (text, unit) => (unit ? text + NBSP + unit : text);
export const figure = got => (got.unit === "g" || got.unit === "ml" ? number(got.shown) : mixed(got.shown));

export function ounces(value) {
  const pounds = Math.floor(value / 16),
    rest = value - pounds * 16;
  if (!pounds) return withUnit(mixed(value), "oz");
  return withUnit(String(pounds), "lb") + (rest ? NBSP + withUnit(mixed(rest), "oz") : "");
}

export const cupWord = got => (got.unit === "cup" && got.shown > 1 ? "cups" : got.unit);
export const tinWords = text =>
  text.replaceAll(" x ", `${NBSP}×${NBSP}`).replaceAll(" cm", `${NBSP}cm`).replaceAll(" in", `${NBSP}in`);

export function clock(seconds) {
  const left = Math.max(0, Math.ceil(seconds)),
    hours = Math.floor(left / 3600),
    minutes = Math.floor((left % 3600) / 60);
  const two = value => String(value).padStart(2, "0");
  return hours ? `${hours}:${two(minutes)}:${two(left % 60)}` : `${minutes}:${two(left % 60)}`;
}
