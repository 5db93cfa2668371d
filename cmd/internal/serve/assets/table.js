// The measurements of all sizes, with the chosen one marked.

import { by, make } from "./dom.js";

export function showTable(a, size, units) {
  const box = by("table");
  if (a.sizes.length === 0) return;
  const order = units === "both" ? (a.units === "in" ? ["in", "cm"] : ["cm", "in"]) : [units];
  const chosen = a.sizes.indexOf(size);
  const cell = (row, i) => order.map((u, k) => make("span", { class: k === 0 ? "first" : "second" }, row[u][i]));
  const at = box.scrollLeft;
  box.replaceChildren(make("table", {},
    make("caption", {}, `What the counts make at the gauge, in ${order.map((u) => ({ cm: "cm", in: "inches" })[u]).join(" and ")}`),
    make("thead", {}, make("tr", {}, make("th", { scope: "col" }, "Measurement"),
      a.sizes.map((s, i) => make("th", { scope: "col", class: i === chosen && "chosen", "aria-current": i === chosen && "true" }, s)))),
    a.table.map((g) => make("tbody", {},
      make("tr", { class: "group" }, make("th", { scope: "rowgroup", colspan: a.sizes.length + 1 }, g.name)),
      g.rows.map((r) => make("tr", {}, make("th", { scope: "row" }, r.name),
        a.sizes.map((_, i) => make("td", { class: i === chosen && "chosen" }, cell(r, i)))))))));
  box.scrollLeft = at;
}
