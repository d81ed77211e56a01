// The shopping list: what is in the basket is kept on the device, and saved as a file for the book.
import { all, find, make, say } from "./dom.js";
import { follow, read, write } from "./keep.js";
import { shopping as words } from "./page_words.js";

const KEY = "basket";
const KEPT_DAYS = 90;
const DAY_MS = 86_400_000;

const two = number => String(number).padStart(2, "0");
const dayOf = date => `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;

// By line of a list: the day on which it was ticked, what it is, and what was bought for which orders.
const basket = () => read(KEY, {});
const boxes = all("[data-line]");
const saves = find(".tb-basket");
const texts = said => (said ? said.split("|") : []);

function keep(line, entry) {
  const oldest = dayOf(new Date(Date.now() - KEPT_DAYS * DAY_MS));
  const kept = Object.entries(basket()).filter(([name, each]) => name !== line && each.day >= oldest);
  write(KEY, Object.fromEntries(entry ? [...kept, [line, entry]] : kept));
}

function tell(place, whole) {
  const here = all("[data-line]", place);
  if (here.length) say(find("[data-left]", place), whole(here.filter(box => !box.checked).length, here.length));
}

function show() {
  const ticked = basket();
  for (const box of boxes) box.checked = Boolean(ticked[box.dataset.line]);
  for (const place of all(".tb-shop section")) tell(place, words.here);
  tell(document, words.left);
  const count = Object.keys(ticked).length;
  saves.hidden = !count;
  say(find("[data-count]", saves), words.count(count));
}

function save() {
  const entries = Object.entries(basket()).map(([line, entry]) => ({ line, ...entry }));
  const file = new Blob([JSON.stringify({ bought: entries }, null, 1)], { type: "application/json" });
  const address = URL.createObjectURL(file);
  make("a", { href: address, download: `${words.file}-${dayOf(new Date())}.json` }).click();
  setTimeout(() => URL.revokeObjectURL(address), DAY_MS / 1440);
}

for (const box of boxes) {
  box.addEventListener("change", () => {
    const { line, of, bought, for: orders } = box.dataset;
    const entry = { day: dayOf(new Date()), of, bought: texts(bought), for: texts(orders) };
    keep(line, box.checked ? entry : null);
    show();
  });
}

if (saves) {
  find("[data-save]", saves).addEventListener("click", save);
  follow(KEY, show);
  show();
}
