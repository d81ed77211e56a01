// The oven at the bench: the time of the chosen tin, the timer of the bake, and its line for the log.
import { all, find } from "./dom.js";
import { words } from "./words.js";

// A tin's time stands in the table of tins. Where none is known the timer keeps what the recipe says.
export function baking({ bake, tins, lines }, slug) {
  if (!bake) return () => {};
  const place = find(".tb-oven"),
    parts = all("b, span", place),
    table = find("[data-eggs=whole]");
  const button = all(".tb-steps > li")[bake.step]?.querySelector(".tb-start"),
    said = button?.previousElementSibling;
  const written = button && [button.dataset.minutes, button.textContent];
  const told = at => [1, 2].map(after => table.rows[at].cells[lines.length + after].textContent);
  return (choice, { tin, needed, each }, name) => {
    const rows = choice.any
      ? about(choice.any)
      : tin && (needed === choice.count || tin.count === choice.count)
        ? [tins.indexOf(tin)]
        : [];
    const [at, next] = rows,
      known = at >= 0;
    place.hidden = !known;
    let [minutes, span] = written || [],
      label = span;
    if (known) {
      const [wide, deep, nearest] = bake.far[at];
      [minutes, span] = told(at);
      if (next) span = `${span.split("–")[0]}–${told(next)[1].split("–").pop()}`;
      [
        minutes,
        span,
        next ? words.between(rows.map(row => tins[row].name)) : `${words.far(wide, deep)} ${bake.bakes[nearest]}`,
      ].forEach((text, part) => {
        parts[part].textContent = text;
      });
      label = words.check(minutes);
      span += "\u00a0min";
    }
    if (!button) return;
    said.textContent = span;
    Object.assign(button.dataset, { minutes, start: label, bake: logged(choice.any ? name.slice(4) : tin.name, each) });
  };

  // A tin of one's own bakes as a round as wide by its wall does: the rows of the table it lies between.
  function about({ width, length }) {
    const wide = (2 * width * length) / (width + length),
      is = each => each?.shape === "round";
    const at = tins.findIndex(each => is(each) && each.width_mm >= wide);
    return tins[at]?.width_mm === wide ? [at] : is(tins[at - 1]) ? [at - 1, at] : [];
  }

  // What is known when the tin goes in. A tin known by its water alone has no name for the log.
  function logged(tin, grams) {
    const name = tin.replaceAll("\u00a0", " ").replaceAll("×", "x");
    if (name.startsWith(words.own)) return "";
    return `of: ${slug}, tin: ${/^\w[\w .]*$/.test(name) ? name : JSON.stringify(name)}, batter: ${grams} g, oven: ${bake.oven}, done after: `;
  }
}
