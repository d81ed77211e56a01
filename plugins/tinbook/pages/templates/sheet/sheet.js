// Ticks and the cake in hand stay when the sheet is closed, where the device allows it.
(() => {
  const key = `tinbook sheet ${document.documentElement.dataset.sheet}`;
  const boxes = [...document.querySelectorAll("input[type=checkbox]")];
  let ticked = [];
  try {
    ticked = JSON.parse(localStorage.getItem(key)) || [];
  } catch {
    /* the ticks then last as long as the page */
  }
  boxes.forEach((box, at) => {
    box.checked = ticked.includes(at);
    box.addEventListener("change", () => {
      try {
        localStorage.setItem(key, JSON.stringify(boxes.flatMap((each, place) => (each.checked ? [place] : []))));
      } catch {
        /* the same */
      }
    });
  });
  // The parts and templates for the cake in hand: all stand ready, those of one show.
  const cakes = document.querySelector(".cakes");
  if (!cakes) return;
  const select = cakes.querySelector("select");
  const show = () => {
    for (const each of document.querySelectorAll("[data-cake]")) each.hidden = each.dataset.cake !== select.value;
  };
  cakes.hidden = false;
  try {
    const kept = localStorage.getItem(`${key} cake`);
    if ([...select.options].some(each => each.value === kept)) select.value = kept;
  } catch {
    /* then the cake it is written for */
  }
  show();
  select.addEventListener("change", () => {
    show();
    try {
      localStorage.setItem(`${key} cake`, select.value);
    } catch {
      /* the same */
    }
  });
})();
