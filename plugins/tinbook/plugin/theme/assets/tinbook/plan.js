// A tin seen from above, in `unit`s for 1 mm; by its paths, if width and length do not describe it.
import { make } from "./dom.js";

const ROUND = ["round", "ring", "cups"];

export function plan(tin, scale, unit, kind = "") {
  const sized = (width, height) => `width:${width * scale}${unit};height:${height * scale}${unit}`;
  if (tin.drawn) {
    const { width, height, paths } = tin.drawn;
    const attributes = { viewBox: `0 0 ${width} ${height}`, style: sized(width, height), "aria-hidden": "true" };
    return make("svg", { class: `tb-drawn${kind}`, ...attributes }, ...paths.map(d => make("path", { d })));
  }
  const short = Math.min(tin.width_mm, tin.length_mm);
  const long = Math.max(tin.width_mm, tin.length_mm);
  const round = ROUND.includes(tin.shape) ? " tb-round" : "";
  const tube = tin.shape === "ring" ? " tb-tube" : "";
  return make("span", { class: `tb-plan${kind}${round}${tube}`, style: sized(long, short), "aria-hidden": "true" });
}
