// Small helpers for making and finding elements.
export const find = (selector, root = document) => root.querySelector(selector);
export const all = (selector, root = document) => [...root.querySelectorAll(selector)];

// make("button", { class: "x", onclick }, "text", child): text is always text, never markup.
export function make(tag, attributes = {}, ...children) {
  const element = /^(svg|path)$/.test(tag)
    ? document.createElementNS("http://www.w3.org/2000/svg", tag)
    : document.createElement(tag);
  if (tag === "button") element.type = tag;
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === "function") element.addEventListener(name.slice(2), value);
    else if (value === true) element.setAttribute(name, "");
    else if (value !== false && value !== null && value !== undefined) element.setAttribute(name, value);
  }
  element.append(...children.filter(child => child !== null && child !== undefined));
  return element;
}

// What a page hands over. Many alike come as `heads` and `rows`, so that names are not told again for each.
export const unfold = (name, told) =>
  told?.heads ? told.rows.map(row => Object.fromEntries(told.heads.map((head, at) => [head, row[at]]))) : told;

export const json = id => {
  const holder = document.getElementById(id);
  return holder ? JSON.parse(holder.textContent, unfold) : null;
};

// Joined cells, one of them chosen: a setting.
export function choice(label, options, chosen, chose) {
  const group = make("div", { class: "tb-switch", role: "group", "aria-label": label });
  for (const [value, text] of options) {
    group.append(
      make(
        "button",
        {
          "data-value": value,
          "aria-pressed": String(value === chosen),
          onclick: () => {
            press(group, value);
            chose(value);
          },
        },
        text,
      ),
    );
  }
  return group;
}

export function press(group, value) {
  for (const button of all("button", group))
    button.setAttribute("aria-pressed", String(button.dataset.value === String(value)));
}

// A tin seen from above, so many `unit`s for a mm; what width and length do not tell by its paths.
export function plan(tin, scale, unit, kind = "") {
  if (tin.drawn) {
    const [width, height, ...paths] = tin.drawn;
    return make(
      "svg",
      {
        class: `tb-drawn${kind}`,
        viewBox: `0 0 ${width} ${height}`,
        style: `width:${width * scale}${unit};height:${height * scale}${unit}`,
        "aria-hidden": "true",
      },
      ...paths.map(d => make("path", { d })),
    );
  }
  const [short, long] = [tin.width_mm, tin.length_mm].sort((one, other) => one - other);
  const round = ["round", "ring", "cups"].includes(tin.shape) ? " tb-round" : "",
    tube = tin.shape === "ring" ? " tb-tube" : "";
  return make("span", {
    class: `tb-plan${kind}${round}${tube}`,
    style: `width:${long * scale}${unit};height:${short * scale}${unit}`,
    "aria-hidden": "true",
  });
}

// Says something to who cannot see it. The region stands empty from the start, or the first words would go unheard.
export function announce(text) {
  let region = document.getElementById("tb-said");
  if (!region) {
    region = make("div", { id: "tb-said", class: "tb-unseen", "aria-live": "polite", role: "status" });
    document.body.append(region);
  }
  region.textContent = text;
}
