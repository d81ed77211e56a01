// The oven at the bench: the time of the chosen tin, the timer of the bake, and its line for the log.
import { all, find } from "./dom.js";
import { words } from "./words.js";

// A tin's time stands in the table of tins. Where none is known the timer keeps what the recipe says.
export function baking({ bake, tins, lines }, slug) {
  if (!bake) return () => {};
  const place = find(".tb-oven"), parts = all("b, span", place), table = find("[data-eggs=whole]");
  const button = all(".tb-steps > li")[bake.step]?.querySelector(".tb-start"), said = button?.previousElementSibling;
  const written = button && [button.dataset.minutes, button.textContent];
  return (choice, { tin, needed, each }, name) => {
    const known = tin && !choice.any && (needed === choice.count || tin.count === choice.count);
    place.hidden = !known;
    let [minutes, span] = written || [], label = span;
    if (known) {
      const at = tins.indexOf(tin), cells = table.rows[at].cells, [wide, deep, nearest] = bake.far[at];
      [minutes, span] = [1, 2].map(after => cells[lines.length + after].textContent);
      [minutes, span, `${words.far(wide, deep)} ${bake.bakes[nearest]}`].forEach((text, part) => { parts[part].textContent = text; });
      label = words.check(minutes); span += "\u00a0min";
    }
    if (!button) return;
    said.textContent = span;
    Object.assign(button.dataset, { minutes, start: label, bake: logged(choice.any ? name.slice(4) : tin.name, each) });
  };

  // What is known when the tin goes in. A tin known by its water alone has no name for the log.
  function logged(tin, grams) {
    const name = tin.replaceAll("\u00a0", " ").replaceAll("×", "x");
    if (name.startsWith(words.own)) return "";
    return `of: ${slug}, tin: ${/^\w[\w .]*$/.test(name) ? name : JSON.stringify(name)}, batter: ${grams} g, oven: ${bake.oven}, done after: `;
  }
}
