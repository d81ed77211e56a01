// The foot of a mixture or technique: pencil notes. What its buttons do is fetched when one is touched.
import { all, find } from "./dom.js";
import { read, write } from "./keep.js";

export function tail(slug, clear) {
  const holder = find(".tb-tail");
  if (!holder) return;
  const pencil = pencilNotes(find("textarea", holder), `notes ${slug}`);
  const stays = find("[data-act=stays]", holder);
  if (!("wakeLock" in navigator)) {
    stays.textContent = stays.dataset.unable;
    stays.disabled = true;
  }
  const parts = { slug, pencil, stays, clear };
  for (const button of all("[data-act]", holder)) {
    button.addEventListener("click", () => {
      import("./tail_acts.js").then(({ acts }) => acts[button.dataset.act](parts, button));
    });
  }
}

// Also on paper, where a page has a place for them.
function pencilNotes(pencil, key) {
  const paper = find(".tb-pencil");
  const copy = () => {
    if (paper) paper.textContent = pencil.value;
  };
  pencil.value = read(key, "");
  pencil.addEventListener("input", () => {
    write(key, pencil.value);
    copy();
  });
  copy();
  return pencil;
}
