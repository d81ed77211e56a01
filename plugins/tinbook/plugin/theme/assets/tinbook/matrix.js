// The matrix of round and square tins: its heads and cells are touched to choose, and show what is chosen.
import { all, find, make } from "./dom.js";
import { glance as words } from "./page_words.js";

// Makes the page's matrix a control; returns what marks the tins of these names in it.
export function matrix(tins, choose) {
  const table = find(".tb-matrix");
  const names = tins.filter(({ shape }) => shape === "round" || shape === "square").map(tin => tin.name);
  const heads = all("thead th", table).slice(1);
  const rows = all("tbody tr", table);
  const cells = rows.flatMap((row, from) =>
    all("td", row).map((cell, to) => ({ cell, from: names[from], to: names[to] })),
  );
  rows.forEach((row, place) => {
    touch(row.cells[0], `${words.from} ${names[place]}`, () => choose.from(names[place]));
  });
  heads.forEach((head, place) => {
    touch(head, `${words.to} ${names[place]}`, () => choose.to(names[place]));
  });
  for (const { cell, from, to } of cells) cell.addEventListener("click", () => choose.both(from, to));

  return (from, to) => {
    rows.forEach((row, place) => {
      row.classList.toggle("tb-from", names[place] === from);
    });
    heads.forEach((head, place) => {
      head.classList.toggle("tb-to", names[place] === to);
    });
    for (const place of cells) place.cell.classList.toggle("tb-chosen", place.from === from && place.to === to);
  };
}

function touch(cell, label, onclick) {
  const button = make("button", { "aria-label": label, onclick });
  button.append(...cell.childNodes);
  cell.append(button);
}
