// A small drawing for each kind of thing, from the same hand as the book's own.
import { make } from "./dom.js";

const SIGNS = {
  mixture: "M4 12h28c0 11-5 18-14 18S4 23 4 12zM18 12L27 3",
  technique: "M6 30L14 8h8L30 30zM9 22h18M11.5 15h13",
  cake: "M2 32h32M6 32V21h24v11M10 21V11h16v10M14 11V4h8v7",
  step: "M5 6h9v9H5zM5 21h9v9H5zM19 10.5h12M19 25.5h12",
  fault: "M18 4L33 31H3zM18 13v9M18 25.5v1.5",
  note: "M7 4h22v28H7zM12 11h12M12 17h12M12 23h7",
  ingredient: "M11 4h14v5H11zM9 9h18l2 6v17H7V15zM7 19h22",
  tin: "M3 18a15 15 0 1 0 30 0a15 15 0 1 0-30 0M6 27L27 6M4 21L21 4M12 31L31 12",
  squareTin: "M4 4h28v28H4zM4 14L14 4M4 24L24 4M4 32L32 4M12 32L32 12M22 32L32 22",
  colour: "M18 3c7 9 11 14 11 19a11 11 0 1 1-22 0c0-5 4-10 11-19zM9 27L27 15M12 31L29 20",
  page: "M2 12h32v12H2zM8 12v5M14 12v7M20 12v5M26 12v7",
};

const ANGULAR = /^(?:square|rectangle|.*sheet|.*loaf)/;

export function sign(kind, tin) {
  const drawn = kind === "tin" && ANGULAR.test(tin) ? "squareTin" : kind;
  const lines = make("path", { d: SIGNS[drawn] || SIGNS.page });
  return make("svg", { class: "tb-sign", viewBox: "0 0 36 36", "aria-hidden": "true" }, lines);
}
