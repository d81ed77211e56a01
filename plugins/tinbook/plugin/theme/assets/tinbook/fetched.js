// Files of the book that a page asks for only when they are wanted.
import { find, make } from "./dom.js";

export const home = new URL(find("meta[name=tinbook]").content, location.href);

// A script or a style: settles when it has come, or could not.
export function fetched(tag, name) {
  const address = new URL(`assets/tinbook/${name}`, home);
  const source = tag === "link" ? { rel: "stylesheet", href: address } : { src: address };
  return new Promise((onload, onerror) => {
    document.head.append(make(tag, { ...source, onload, onerror }));
  });
}
