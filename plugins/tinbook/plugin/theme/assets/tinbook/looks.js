// Light or dark, and more contrast: by the device, or as the reader chose, which the device remembers. A script in the
// page's head has put on what was chosen before anything is drawn; this is fetched where a page is not as it was written,
// or when its switch is touched.
import { all, find, pressOne } from "./dom.js";
import { read, write } from "./keep.js";

const root = document.documentElement;
const moreByDevice = matchMedia("(prefers-contrast: more)");
const darkByDevice = matchMedia("(prefers-color-scheme: dark)");

export function looks() {
  const contrast = find(".tb-looks [data-contrast]");
  takeOver();
  for (const button of all(".tb-looks [data-value]")) {
    button.addEventListener("click", () => wear("look", button.dataset.value));
  }
  contrast.addEventListener("click", () => {
    const more = !isMore();
    const chosen = more ? "more" : "usual";
    wear("contrast", more === moreByDevice.matches ? "" : chosen);
  });
  for (const device of [moreByDevice, darkByDevice]) device.addEventListener("change", show);
  show();
}

const isMore = () => (root.dataset.contrast ? root.dataset.contrast === "more" : moreByDevice.matches);

function wear(what, chosen) {
  if (chosen) root.dataset[what] = chosen;
  else delete root.dataset[what];
  write(what, chosen);
  show();
}

function show() {
  const looks = find(".tb-looks .tb-switch");
  if (looks) pressOne(looks, root.dataset.look || "");
  find(".tb-looks [data-contrast]").setAttribute("aria-pressed", String(isMore()));
  // asked in the same task, the whole page would be styled for the answer
  setTimeout(tint);
}

// The frame of the device has the colour of the paper.
function tint() {
  const paper = getComputedStyle(document.body).getPropertyValue("--paper").trim();
  find("meta[name=theme-color]")?.setAttribute("content", paper);
}

// What was chosen with the theme's switch, which earlier books had, stays chosen.
function takeOver() {
  if (read("look", null) !== null) return;
  const home = new URL(find("meta[name=tinbook]").content, location.href).pathname;
  const kept = localStorage.getItem(`${home}.__palette`);
  const colour = kept ? JSON.parse(kept).color : null;
  if (!colour || colour.media === "(prefers-color-scheme)") return;
  if (colour.scheme === "contrast") wear("contrast", "more");
  else wear("look", colour.scheme === "slate" ? "dark" : "light");
}
