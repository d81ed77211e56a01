// A small drawing for each kind of thing, from the same hand as the book's own.
import { make } from "./dom.js";

const SIGNS = {
  mixture: "M4 12h28c0 11-5 18-14 18S4 23 4 12zM18 12L27 3",
  technique: "M6 30L14 8h8L30 30zM9 22h18M11.5 15h13",
  step: "M5 6h9v9H5zM5 21h9v9H5zM19 10.5h12M19 25.5h12",
  fault: "M18 4L33 31H3zM18 13v9M18 25.5v1.5",
  note: "M7 4h22v28H7zM12 11h12M12 17h12M12 23h7",
  ingredient: "M11 4h14v5H11zM9 9h18l2 6v17H7V15zM7 19h22",
  tin: "M3 18a15 15 0 1 0 30 0a15 15 0 1 0-30 0M10 18a8 8 0 1 0 16 0a8 8 0 1 0-16 0",
  colour: "M3 3h30v30H3zM3 15L15 3M3 27L27 3M9 33L33 9M21 33L33 21",
  page: "M2 12h32v12H2zM8 12v5M14 12v7M20 12v5M26 12v7",
};

export function sign(kind) {
  const lines = make("path", { d: SIGNS[kind] || SIGNS.page });
  return make("svg", { class: "tb-sign", viewBox: "0 0 36 36", "aria-hidden": "true" }, lines);
}
