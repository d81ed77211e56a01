// Passes the page on by the device's own share sheet, if there is one: its title and its address, nothing else.
import { find, make } from "./dom.js";
import { technique as words } from "./page_words.js";

export function share() {
  const acts = find(".tb-acts");
  if (!acts || !navigator.share) return;
  const title = find("h1").firstChild.textContent.trim();
  const onclick = () => {
    // closing the sheet without choosing is not an error
    navigator.share({ title, url: location.href }).catch(() => {});
  };
  acts.prepend(make("button", { class: "tb-button", onclick }, words.handOn));
}
