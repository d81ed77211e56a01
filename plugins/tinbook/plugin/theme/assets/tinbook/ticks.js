// Ticks of one mixture or technique, kept on the device.
import { all, find } from "./dom.js";
import { read, write } from "./keep.js";
import { tail } from "./tail.js";

export function ticks() {
  const root = find("[data-slug]");
  if (!root) return;
  const key = `ticks ${root.dataset.slug}`;
  const boxes = all(".tb-tick:not(.tb-did)");
  const ticked = new Set(read(key, []));
  const save = () => {
    write(key, [...ticked]);
    markNext();
  };
  boxes.forEach((box, place) => {
    box.checked = ticked.has(place);
    box.addEventListener("change", () => {
      if (box.checked) ticked.add(place);
      else ticked.delete(place);
      save();
      import("./awake.js").then(part => part.stayAwake());
    });
    // the whole row takes the finger; a link or a button in it keeps its own
    box.closest("li").addEventListener("click", event => {
      if (!event.target.closest("a, button, input, label")) box.click();
    });
  });
  markNext();
  tail(root.dataset.slug, () => {
    ticked.clear();
    for (const box of boxes) box.checked = false;
    save();
  });
}

// What comes next in a list that has been begun.
function markNext() {
  for (const list of all(".tb-lines, .tb-steps")) {
    const boxes = all(".tb-tick", list);
    const begun = boxes.some(box => box.checked);
    const next = boxes.find(box => !box.checked);
    for (const box of boxes) box.closest("li").classList.toggle("tb-now", begun && box === next);
  }
}
