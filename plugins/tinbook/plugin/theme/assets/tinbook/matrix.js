// The matrices of tins: their heads and cells are touched to choose, and show what is chosen.
import { all, find, make } from "./dom.js";
import { glance as words } from "./page_words.js";

// Makes the page's matrices controls: `mark` marks the tins of these names in them, `figure` puts other figures in.
export function matrix(choose) {
  const tables = all(".tb-matrix").map(table => control(table, choose));
  return {
    mark: (from, to) => {
      for (const table of tables) table.mark(from, to);
    },
    figure: factorOf => {
      for (const table of tables) table.figure(factorOf);
    },
  };
}

function control(table, choose) {
  const heads = all("thead [data-tin]", table);
  const rows = all("tbody tr", table).map(row => ({ row, head: find("[data-tin]", row), cells: all("td", row) }));
  const nameOf = head => head.dataset.tin;
  for (const head of heads) touch(head, words.toTin(nameOf(head)), () => choose.to(nameOf(head)));
  for (const { head } of rows) touch(head, words.fromTin(nameOf(head)), () => choose.from(nameOf(head)));
  for (const { head, cells } of rows) {
    cells.forEach((cell, place) => {
      cell.addEventListener("click", () => choose.both(nameOf(head), nameOf(heads[place])));
    });
  }

  function mark(from, to) {
    const column = heads.findIndex(head => nameOf(head) === to);
    heads.forEach((head, place) => {
      show(head, "tb-to", place === column);
    });
    for (const { row, head, cells } of rows) {
      const isFrom = nameOf(head) === from;
      row.classList.toggle("tb-from", isFrom);
      show(head, "tb-is-from", isFrom);
      cells.forEach((cell, place) => {
        cell.classList.toggle("tb-way", place === column || isFrom);
        cell.classList.toggle("tb-chosen", isFrom && place === column);
      });
    }
  }

  function figure(factorOf) {
    for (const { head, cells } of rows) {
      cells.forEach((cell, place) => {
        const { text, isMore } = factorOf(nameOf(head), nameOf(heads[place]));
        cell.replaceChildren(isMore ? make("b", {}, text) : text);
      });
    }
  }

  return { mark, figure };
}

function show(head, name, isChosen) {
  head.classList.toggle(name, isChosen);
  find("button", head).setAttribute("aria-pressed", String(isChosen));
}

// What is in a head becomes a button, and stays where it was.
function touch(head, label, onclick) {
  const place = find(".tb-touch", head);
  const button = make("button", { class: "tb-touch", "aria-label": label, onclick });
  button.append(...place.childNodes);
  place.replaceWith(button);
}
