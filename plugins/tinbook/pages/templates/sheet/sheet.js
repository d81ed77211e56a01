// Ticks and the cake in hand stay when the sheet is closed, where the device allows it; else as long as the page.
(() => {
  const key = `tinbook sheet ${document.documentElement.dataset.sheet}`;

  function read(name) {
    try {
      return localStorage.getItem(name);
    } catch {
      return null;
    }
  }

  function write(name, text) {
    try {
      localStorage.setItem(name, text);
    } catch {
      // nothing is kept
    }
  }

  function tickedBefore() {
    try {
      return JSON.parse(read(key)) || [];
    } catch {
      return [];
    }
  }

  function keepTicks() {
    const boxes = [...document.querySelectorAll("input[type=checkbox]")];
    const ticked = tickedBefore();
    const save = () => write(key, JSON.stringify(boxes.flatMap((box, place) => (box.checked ? [place] : []))));
    boxes.forEach((box, place) => {
      box.checked = ticked.includes(place);
      box.addEventListener("change", save);
    });
  }

  // The parts and templates for the cake in hand: all stand ready, those of one show.
  function keepCake(holder) {
    const select = holder.querySelector("select");
    const kept = read(`${key} cake`);
    const show = () => {
      for (const part of document.querySelectorAll("[data-cake]")) part.hidden = part.dataset.cake !== select.value;
    };
    if ([...select.options].some(option => option.value === kept)) select.value = kept;
    select.addEventListener("change", () => {
      show();
      write(`${key} cake`, select.value);
    });
    holder.hidden = false;
    show();
  }

  keepTicks();
  const cakes = document.querySelector(".cakes");
  if (cakes) keepCake(cakes);
})();
