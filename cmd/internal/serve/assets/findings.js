// What does not agree, heaviest first, then in the order of the file; each leads to its place.

import { by, make, plural } from "./dom.js";

export class Findings {
  list = [];
  #at = -1;

  constructor(goTo) {
    this.goTo = goTo;
  }

  show(found) {
    const weight = { error: 0, warning: 1, note: 2 };
    const list = [...found].sort((a, b) => weight[a.severity] - weight[b.severity]);
    this.list = list;
    this.#at = -1;
    const count = (s) => list.filter((f) => f.severity === s).length;
    const parts = ["error", "warning", "note"].filter((s) => count(s)).map((s) => plural(count(s), s));
    const title = parts.length ? `Findings: ${parts.join(", ")}` : "Findings: none, all numbers agree";
    if (by("findings-title").textContent !== title) by("findings-title").textContent = title;
    by("findings").replaceChildren(...list.map((f, i) => this.#item(f, i)));
    document.querySelector(".findings").classList.toggle("none", list.length === 0);
  }

  #item(f, i) {
    const detail = [["found", f.have], ["expected", f.want], ["fix", f.fix]].filter(([, t]) => t);
    const where = [f.file, f.line > 0 && `line ${f.line}`, f.piece, f.section, f.sizes?.length && f.sizes.join(", ")].filter(Boolean).join(" · ");
    return make("li", { class: f.severity },
      make("button", { type: "button", class: "finding", onclick: () => this.choose(i) },
        make("span", { class: "severity" }, f.severity), " ", make("span", { class: "message" }, f.message),
        make("span", { class: "where" }, where)),
      detail.length ? make("dl", {}, detail.flatMap(([k, t]) => [make("dt", {}, k), make("dd", {}, t)])) : null);
  }

  choose(i) {
    this.#at = i;
    const f = this.list[i];
    if (!f) return;
    if (f.line > 0 && (!f.file || f.rows)) this.goTo(f);
    else by("findings").children[i].querySelector("button").focus();
  }

  step(by_) {
    if (this.list.length === 0) return;
    const next = this.#at < 0 && by_ < 0 ? this.list.length - 1 : this.#at + by_;
    this.choose((next + this.list.length) % this.list.length);
  }
}
