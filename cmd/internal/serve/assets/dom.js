// Small ways of making elements. Text only ever goes in as text.

export const by = (id) => document.getElementById(id);

// make makes an element: make("p", {class: "hint", onclick: f}, "text", child).
export function make(tag, props = {}, ...children) {
  const e = document.createElement(tag);
  for (const [k, v] of Object.entries(props)) {
    if (v === undefined || v === null || v === false) continue;
    if (k.startsWith("on")) e.addEventListener(k.slice(2), v);
    else if (k === "value" || k === "checked") e[k] = v;
    else e.setAttribute(k, v === true ? "" : String(v));
  }
  e.append(...children.flat().filter((c) => c !== null && c !== undefined));
  return e;
}

// listOf is the list of names to choose from for a field that takes what is called so.
export const listOf = (called) => called ? `names-${called}` : undefined;

// showNames fills those lists.
export function showNames(names) {
  for (const [called, all] of Object.entries(names ?? {})) {
    const list = by(listOf(called));
    if (!list || list.dataset.of === all.join("\n")) continue;
    list.dataset.of = all.join("\n");
    list.replaceChildren(...all.map((value) => make("option", { value })));
  }
}

// plural is "1 error", "2 errors".
export const plural = (n, word) => `${n} ${word}${n === 1 ? "" : "s"}`;
