// What the buttons at the foot of a mixture or technique do: save the notes, print, keep the screen on, start again.
import { switchAwake } from "./awake.js";
import { find, make } from "./dom.js";
import { tail as words } from "./late_words.js";

export const acts = {
  save: ({ slug, pencil }) => saveAsText(words.file(slug), pencil.value),
  print: () => window.print(),
  stays: switchAwake,
  again: askAgain,
};

function saveAsText(name, notes) {
  const file = new Blob([`${document.title}\n\n${notes}\n`], { type: "text/plain" });
  const link = make("a", { href: URL.createObjectURL(file), download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}

function askAgain({ pencil, clear }, again) {
  const close = () => {
    asked.remove();
    again.hidden = false;
    again.focus();
  };
  const yes = () => {
    clear();
    pencil.value = "";
    pencil.dispatchEvent(new Event("input"));
    close();
  };
  const act = (label, onclick, kind = "") => make("button", { class: `tb-button${kind}`, onclick }, label);
  const answers = [act(words.answers.yes, yes, " tb-on"), " ", act(words.answers.no, close)];
  const asked = make("span", { class: "tb-asked" }, `${words.sure} `, ...answers);
  again.after(asked);
  again.hidden = true;
  find("button", asked).focus();
}
