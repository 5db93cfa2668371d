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

// plural is "1 error", "2 errors".
export const plural = (n, word) => `${n} ${word}${n === 1 ? "" : "s"}`;
