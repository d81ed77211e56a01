// The foot of a mixture or technique: pencil notes, printing, the screen, and the fresh start.
import { awake } from "./awake.js";
import { find, make } from "./dom.js";
import { read, write } from "./keep.js";
import { tail as words } from "./words.js";

const act = (label, onclick, kind = "") => make("button", { class: `tb-button${kind}`, onclick }, label);

export function tail(slug, clear) {
  const holder = find(".tb-tail");
  if (!holder) return;
  const pencil = pencilNotes(`notes ${slug}`);
  const stays = act();
  awake(stays);
  const acts = [
    act(words.save, () => saveAsText(words.file(slug), pencil.value)),
    act(words.print, () => window.print()),
    stays,
    ...freshStart(() => {
      clear();
      pencil.value = "";
      pencil.dispatchEvent(new Event("input"));
    }),
  ];
  const label = make("label", { for: "tb-pencil" }, words.notes, make("small", {}, words.notesHint));
  holder.append(label, pencil, make("p", { class: "tb-acts" }, ...acts));
}

// Also on paper, where a page has a place for them.
function pencilNotes(key) {
  const pencil = make("textarea", { id: "tb-pencil", rows: 4 });
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

function saveAsText(name, notes) {
  const file = new Blob([`${document.title}\n\n${notes}\n`], { type: "text/plain" });
  const link = make("a", { href: URL.createObjectURL(file), download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}

function freshStart(start) {
  const close = () => {
    asked.hidden = true;
    again.hidden = false;
    again.focus();
  };
  const yes = () => {
    start();
    close();
  };
  const ask = () => {
    asked.hidden = false;
    again.hidden = true;
    find("button", asked).focus();
  };
  const answers = [act(words.answers.yes, yes, " tb-on"), " ", act(words.answers.no, close)];
  const asked = make("span", { class: "tb-asked", hidden: true }, `${words.sure} `, ...answers);
  const again = act(words.again, ask);
  return [again, asked];
}
