// What was chosen stands in the address, after #for?, so that a page can be passed on as it is.
const START = "#for?";

export const isAsked = () => location.hash.startsWith(START);
export const asked = () => new URLSearchParams(isAsked() ? location.hash.slice(START.length) : "");
// The cake a bench was opened for stays in it, for the way back.
const cake = () => [...asked()].filter(([name]) => name === "cake" || name === "size");
export const tell = chosen =>
  history.replaceState(history.state, "", START + new URLSearchParams({ ...Object.fromEntries(cake()), ...chosen }));
