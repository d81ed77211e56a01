// Small helpers for making and finding elements.
export const find = (selector, root = document) => root.querySelector(selector);
export const all = (selector, root = document) => [...root.querySelectorAll(selector)];

// make("button", { class: "x", onclick }, "text", child): text is always text, never markup.
export function make(tag, attributes = {}, ...children) {
  const drawn = tag === "svg" || tag === "path";
  const element = drawn ? document.createElementNS("http://www.w3.org/2000/svg", tag) : document.createElement(tag);
  if (tag === "button") element.type = tag;
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === "function") element.addEventListener(name.slice(2), value);
    else if (value === true) element.setAttribute(name, "");
    else if (value !== false && value !== null && value !== undefined) element.setAttribute(name, value);
  }
  element.append(...children.filter(child => child !== null && child !== undefined));
  return element;
}

// Of joined cells one is pressed: a setting.
export function pressOne(group, value) {
  for (const button of all("button", group)) {
    button.setAttribute("aria-pressed", String(button.dataset.value === String(value)));
  }
}

// New words for a place. Where they are not new nothing is touched, and the browser has nothing to lay out.
export function say(place, text) {
  if (place.textContent !== text) place.textContent = text;
}

// A figure with its unit beside it, or both as one text where the page has no place for the unit.
export function put(place, text, unit, together) {
  const unitPlace = find("i", place);
  if (!unitPlace) {
    say(place, together(text, unit));
    return;
  }
  say(find("b", place), text);
  say(unitPlace, unit);
}

// For readers who cannot see the page. The region is there, empty, from the start, or the first words go unheard.
export function announce(text) {
  let region = document.getElementById("tb-said");
  if (!region) {
    region = make("div", { id: "tb-said", class: "tb-unseen", "aria-live": "polite", role: "status" });
    document.body.append(region);
  }
  region.textContent = text;
}
