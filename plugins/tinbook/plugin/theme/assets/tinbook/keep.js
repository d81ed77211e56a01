// What the device remembers. A full or forbidden store breaks nothing: the page then remembers until you leave it.
const home = new URL(document.querySelector("meta[name=tinbook]")?.content || ".", location.href).pathname;
const memory = new Map();
const nameOf = key => `tinbook ${home} ${key}`;

function store() {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
}

export function read(key, otherwise) {
  const name = nameOf(key);
  if (memory.has(name)) return memory.get(name);
  try {
    const text = store()?.getItem(name);
    return text ? JSON.parse(text) : otherwise;
  } catch {
    return otherwise;
  }
}

export function write(key, value) {
  const name = nameOf(key);
  try {
    store().setItem(name, JSON.stringify(value));
    memory.delete(name);
  } catch {
    memory.set(name, value);
  }
}

// Another page of the book has written: tell the listeners.
export function follow(key, heard) {
  window.addEventListener("storage", event => {
    if (event.key === nameOf(key)) heard();
  });
}
