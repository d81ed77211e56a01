// A whole cake in the size in hand: every size stands in the page worked out, one of them shows.
import { asked, isAsked, tell } from "./address.js";
import { all, announce, find, say } from "./dom.js";
import { read, write } from "./keep.js";
import { cake as words } from "./page_words.js";

const root = find("#tb-cake");
if (root) sizes(root);

function sizes(root) {
  const chips = all("[data-size]", root);
  const parts = all(".tb-size");
  const form = find("form", root);
  const [guests, top] = all("input", form);
  const answer = find("output", form);
  const key = `size-${root.dataset.slug}`;
  const written = chips.find(chip => chip.getAttribute("aria-pressed") === "true");
  const kept = read(key, {});
  const chipOf = size => chips.find(chip => chip.dataset.size === size);
  let chosen = (isAsked() && chipOf(asked().get("size"))) || chipOf(kept.size) || written;

  function show() {
    for (const chip of chips) chip.setAttribute("aria-pressed", String(chip === chosen));
    for (const part of parts) {
      part.hidden = part.dataset.size !== chosen.dataset.size;
      find(".tb-what", part).classList.toggle("tb-this", !part.hidden);
    }
    // both leaves open in the same size
    for (const leaf of all(".tb-leaves a[href]")) leaf.hash = `#for?size=${encodeURIComponent(chosen.dataset.size)}`;
  }

  function choose(chip) {
    chosen = chip;
    show();
    keep();
    announce(chip.getAttribute("aria-label"));
  }

  function keep() {
    const { size } = chosen.dataset;
    write(key, { size, guests: guests.value, top: Boolean(top?.checked) });
    tell({ size });
  }

  const serves = chip => Number(top?.checked ? chip.dataset.top : chip.dataset.serves);

  // The smallest that serves so many; of two alike the one in tins of the house.
  function forGuests() {
    const count = Number(guests.value.trim());
    const sound = Number.isInteger(count) && count > 0;
    answer.hidden = !guests.value.trim();
    if (!sound) return say(answer, words.bad);
    const lent = chip => ("lent" in chip.dataset ? 1 : 0);
    const [best] = chips
      .filter(chip => serves(chip) >= count)
      .sort((one, other) => serves(one) - serves(other) || lent(one) - lent(other));
    if (!best) return say(answer, words.none(Math.max(...chips.map(serves))));
    choose(best);
    say(answer, words.serves(serves(best), serves(best) - count, Boolean(top?.checked)));
  }

  for (const chip of chips) chip.addEventListener("click", () => choose(chip));
  form.addEventListener("change", () => {
    forGuests();
    keep();
  });
  form.addEventListener("submit", event => event.preventDefault());
  window.addEventListener("hashchange", () => {
    const next = chipOf(asked().get("size"));
    if (next) choose(next);
  });
  guests.value = kept.guests || "";
  if (top) top.checked = kept.top === true;
  show();
  const strip = chosen.parentElement;
  if (strip.scrollWidth > strip.clientWidth) strip.scrollLeft = chosen.offsetLeft - strip.clientWidth / 2;
}
