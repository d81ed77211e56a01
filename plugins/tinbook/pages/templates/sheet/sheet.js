// Ticks stay when the sheet is closed, where the device allows it.
(() => {
  const key = `tinbook sheet ${document.documentElement.dataset.sheet}`;
  const boxes = [...document.querySelectorAll("input[type=checkbox]")];
  let ticked = [];
  try { ticked = JSON.parse(localStorage.getItem(key)) || []; } catch { /* the ticks then last as long as the page */ }
  boxes.forEach((box, at) => {
    box.checked = ticked.includes(at);
    box.addEventListener("change", () => {
      try {
        localStorage.setItem(key, JSON.stringify(boxes.flatMap((each, place) => each.checked ? [place] : [])));
      } catch { /* the same */ }
    });
  });
})();
