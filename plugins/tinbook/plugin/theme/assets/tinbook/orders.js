// The kitchen's week: what is done is kept on the device, with the minutes it took, and saved as a file for the book.
import { all, find, make, say } from "./dom.js";
import { follow, read, write } from "./keep.js";
import { week as words } from "./page_words.js";

const KEY = "done";
const KEPT_DAYS = 90;
const DAY_MS = 86_400_000;

const two = number => String(number).padStart(2, "0");
const dayOf = date => `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
const stamp = date => `${dayOf(date)} ${two(date.getHours())}:${two(date.getMinutes())}`;

// By task: when it was ticked and, if somebody has said, how many minutes it took.
const done = () => read(KEY, {});
const boxes = all(".tb-did");
const saves = find(".tb-saves");

function keep(task, entry) {
  const oldest = dayOf(new Date(Date.now() - KEPT_DAYS * DAY_MS));
  const kept = Object.entries(done()).filter(([name, each]) => name !== task && each.done >= oldest);
  write(KEY, Object.fromEntries(entry ? [...kept, [task, entry]] : kept));
}

function minutes(box, entry) {
  const field = make("input", { type: "number", min: 1, max: 1440, inputmode: "numeric", value: entry.took ?? "" });
  field.addEventListener("change", () => {
    const took = field.checkValidity() && field.value ? Number(field.value) : undefined;
    keep(box.dataset.task, { ...done()[box.dataset.task], took });
  });
  return make("p", { class: "tb-took tb-noprint" }, make("label", {}, words.took, field, words.minutes));
}

function show() {
  const ticked = done();
  for (const box of boxes) {
    const entry = ticked[box.dataset.task];
    const item = box.closest("li");
    box.checked = Boolean(entry);
    const asks = find(".tb-took", item);
    if (!entry) asks?.remove();
    else if (!asks && box.dataset.said) item.append(minutes(box, entry));
  }
  const count = Object.keys(ticked).length;
  if (saves) {
    saves.hidden = !count;
    say(find("[data-count]", saves), words.count(count));
  }
}

for (const box of boxes) {
  box.addEventListener("change", () => {
    const { task, of, said } = box.dataset;
    keep(task, box.checked ? { done: stamp(new Date()), of, said } : null);
    show();
  });
}

function save() {
  const entries = Object.entries(done()).map(([task, { took, ...rest }]) => ({
    task,
    ...rest,
    took: took && `${took} ${words.minutes}`,
  }));
  const file = new Blob([JSON.stringify({ done: entries }, null, 1)], { type: "application/json" });
  const address = URL.createObjectURL(file);
  make("a", { href: address, download: `${words.file}-${dayOf(new Date())}.json` }).click();
  setTimeout(() => URL.revokeObjectURL(address), DAY_MS / 1440);
}

if (saves) find("[data-save]", saves).addEventListener("click", save);
for (const day of all("[data-day]")) day.classList.toggle("tb-today", day.dataset.day === dayOf(new Date()));
follow(KEY, show);
show();
