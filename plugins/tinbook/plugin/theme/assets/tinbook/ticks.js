// Ticks, pencil notes and the fresh start of one mixture or technique, kept on the device.

import { awake, stayAwake } from "./awake.js";
import { all, find, make } from "./dom.js";
import { read, write } from "./keep.js";
import { words } from "./words.js";

function now(boxes) {
  const next = boxes.find(box => !box.checked);
  for (const box of boxes)
    box.closest("li").classList.toggle("tb-now", box === next && boxes.some(each => each.checked));
}

export function ticks() {
  const root = find("[data-slug]");
  if (!root) return;
  const key = `ticks ${root.dataset.slug}`,
    boxes = all(".tb-tick");
  const done = new Set(read(key, []));
  boxes.forEach((box, at) => {
    box.checked = done.has(at);
    box.addEventListener("change", () => {
      box.checked ? done.add(at) : done.delete(at);
      write(key, [...done]);
      show();
      stayAwake();
    });
    // the whole row takes the finger; a link or a button in it keeps its own
    const row = box.closest("li");
    row.addEventListener("click", event => {
      if (!event.target.closest("a, button, input, label")) box.click();
    });
  });
  const show = () => {
    for (const list of all(".tb-lines, .tb-steps")) now(all(".tb-tick", list));
  };
  show();
  tail(root.dataset.slug, () => {
    done.clear();
    write(key, []);
    boxes.forEach(box => {
      box.checked = false;
    });
    show();
  });
}

const act = (label, onclick, kind = "") => make("button", { class: `tb-button${kind}`, onclick }, label);

function tail(slug, clear) {
  const holder = find(".tb-tail");
  if (!holder) return;
  const key = `notes ${slug}`,
    pencil = make("textarea", { id: "tb-pencil", rows: 4 });
  const paper = find(".tb-pencil"),
    copy = () => {
      if (paper) paper.textContent = pencil.value;
    };
  pencil.value = read(key, "");
  pencil.addEventListener("input", () => {
    write(key, pencil.value);
    copy();
  });
  copy();
  const save = act(words.save, () => {
    const link = make("a", {
      href: URL.createObjectURL(new Blob([`${document.title}\n\n${pencil.value}\n`], { type: "text/plain" })),
      download: words.noteFile(slug),
    });
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 1000);
  });
  const stays = act();
  awake(stays);
  const asked = make(
    "span",
    { class: "tb-asked", hidden: true },
    `${words.sure} `,
    act(
      words.yes,
      () => {
        clear();
        pencil.value = "";
        write(key, "");
        copy();
        close();
      },
      " tb-on",
    ),
    " ",
    act(words.no, () => close()),
  );
  const close = () => {
    asked.hidden = true;
    again.hidden = false;
    again.focus();
  };
  const again = act(words.again, () => {
    asked.hidden = false;
    again.hidden = true;
    find("button", asked).focus();
  });
  const print = act(words.print, () => window.print());
  holder.append(
    make("label", { for: "tb-pencil" }, words.notes, make("small", {}, words.notesHint)),
    pencil,
    make("p", { class: "tb-acts" }, save, print, stays, again, asked),
  );
}
