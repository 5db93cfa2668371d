// The text with its lines numbered and what is wrong marked where it is. A
// textarea takes the typing; behind it stand the same lines with their marks.

import { by, make } from "./dom.js";
import { typed } from "./pattern.js";

export class Editor {
  #lines = [];
  #marks = new Map(); // findings by line, from 1
  #caret = null; // of a text that is to be shown
  #timer = 0;

  // box is an element with lines and a textarea in it, says what tells of the line of the caret.
  constructor(pattern, box, says) {
    this.pattern = pattern;
    this.says = says;
    this.shown = box.querySelector(".lines");
    const area = (this.area = box.querySelector("textarea"));
    pattern.caret = () => area.selectionStart;
    area.addEventListener("input", () => this.#typed());
    area.addEventListener("keydown", (e) => this.#key(e));
    pattern.addEventListener("change", (e) => {
      if (e.detail.from === "text") return this.paint();
      // where the text is not seen, setting its caret would lay the whole page out before the drawing is asked for
      this.#caret = e.detail.caret ?? Math.min(this.#caret ?? area.selectionStart, pattern.text.length);
      if (!area.closest(".panel").hidden) this.#late();
      else this.#timer ||= setTimeout(() => this.#late());
    });
    document.addEventListener("selectionchange", () => {
      if (document.activeElement === area) this.tell();
    });
  }

  // late shows a text that came from elsewhere.
  #late() {
    clearTimeout(this.#timer);
    this.#timer = 0;
    if (this.#caret === null) return;
    this.area.value = this.pattern.text;
    this.area.setSelectionRange(this.#caret, this.#caret);
    this.#caret = null;
    this.paint();
  }

  #key(e) {
    if (e.key !== "Enter" || e.ctrlKey || e.metaKey || e.altKey || e.isComposing) return;
    const before = this.area.value.slice(0, this.area.selectionStart);
    const indent = /(?:^|\n)( *(?:- )?)[^\n]*$/.exec(before)[1].replace("-", " ");
    if (!indent) return;
    e.preventDefault();
    const at = this.area.selectionStart + 1 + indent.length;
    const text = before + "\n" + indent + this.area.value.slice(this.area.selectionEnd);
    this.area.value = text;
    this.area.setSelectionRange(at, at);
    this.#typed();
  }

  #typed() {
    this.pattern.change(this.area.value, { hand: typed("type", this.area), from: "text" });
  }

  // mark takes the findings and marks their places.
  mark(findings) {
    const old = [...this.#marks.keys()];
    this.#marks = new Map();
    for (const f of findings) {
      if (f.line < 1) continue;
      if (!this.#marks.has(f.line)) this.#marks.set(f.line, []);
      this.#marks.get(f.line).push(f);
    }
    for (const n of new Set([...old, ...this.#marks.keys()])) this.#paintLine(n - 1);
    this.tell();
  }

  // paint shows the lines, those alone anew that have changed.
  paint() {
    const next = this.pattern.text.split("\n");
    const old = this.#lines;
    let a = 0;
    while (a < old.length && a < next.length && old[a] === next[a]) a++;
    let b = 0;
    while (b < old.length - a && b < next.length - a && old[old.length - 1 - b] === next[next.length - 1 - b]) b++;
    for (let i = old.length - b - 1; i >= a && this.shown.children.length > 0; i--) this.shown.children[i]?.remove();
    const before = this.shown.children[a] ?? null;
    this.#lines = next;
    const fresh = document.createDocumentFragment();
    for (let i = a; i < next.length - b; i++) fresh.append(this.#line(i));
    this.shown.insertBefore(fresh, before);
    this.shown.style.setProperty("--digits", String(next.length).length);
    this.area.style.setProperty("--digits", String(next.length).length);
  }

  #paintLine(i) {
    if (i >= 0 && i < this.#lines.length && this.shown.children[i]) this.shown.children[i].replaceWith(this.#line(i));
  }

  #line(i) {
    const text = this.#lines[i];
    const found = this.#marks.get(i + 1) ?? [];
    const e = make("div", { class: found.length ? `line ${worst(found)}` : "line" });
    const points = Array.from(text);
    const cuts = new Set([0, text.length]);
    const ranges = [];
    for (const f of found) {
      const from = points.slice(0, Math.max(0, f.col - 1)).join("").length;
      const to = f.endCol > f.col ? points.slice(0, f.endCol - 1).join("").length : text.length;
      if (f.col > 0 && to > from) {
        ranges.push([from, to, f.severity]);
        cuts.add(from).add(to);
      }
    }
    const spans = colours(text);
    for (const [from, to] of spans) cuts.add(from).add(to);
    const sorted = [...cuts].sort((x, y) => x - y);
    for (let k = 0; k + 1 < sorted.length; k++) {
      const [from, to] = [sorted[k], sorted[k + 1]];
      const kind = spans.find((s) => s[0] <= from && to <= s[1])?.[2] ?? "";
      const bad = ranges.find((s) => s[0] <= from && to <= s[1])?.[2] ?? "";
      const cls = [kind, bad && `mark ${bad}`].filter(Boolean).join(" ");
      e.append(cls ? make("span", { class: cls }, text.slice(from, to)) : text.slice(from, to));
    }
    if (text === "") e.append("\u200b");
    return e;
  }

  // line is the number of the line of the caret.
  get line() { return this.area.value.slice(0, this.area.selectionStart).split("\n").length; }

  // tell says what there is to say of the line of the caret: what is wrong, and what says gives.
  tell() {
    const here = document.activeElement === this.area;
    const found = here ? this.#marks.get(this.line) ?? [] : [];
    const text = found.map((f) => `${f.severity}: ${f.message}${f.fix ? ` — ${f.fix}` : ""}`).concat(here ? this.says?.(this.line) ?? [] : []).join(" · ");
    if (by("here").textContent !== text) by("here").textContent = text;
  }

  // goTo puts the caret on a place, lines and columns counted from 1, and shows it.
  goTo(line, col = 1, endCol = col) {
    const lines = this.#lines;
    const n = Math.min(Math.max(line, 1), lines.length) - 1;
    const start = lines.slice(0, n).reduce((sum, l) => sum + l.length + 1, 0);
    const points = Array.from(lines[n]);
    const at = (c) => start + points.slice(0, Math.max(0, c - 1)).join("").length;
    this.area.focus({ preventScroll: true });
    this.area.setSelectionRange(at(col), at(Math.max(col, endCol)));
    this.shown.children[n]?.scrollIntoView({ block: "center", behavior: "instant" });
    this.tell();
  }
}

const weight = { error: 0, warning: 1, note: 2 };
const worst = (found) => found.map((f) => f.severity).sort((a, b) => weight[a] - weight[b])[0];

// colours are the spans of a line that are keys and comments.
function colours(text) {
  const out = [];
  const key = /^(\s*(?:- +)?)([^\s#'"[{][^:#]*?):(?=\s|$)/.exec(text);
  if (key) out.push([key[1].length, key[1].length + key[2].length, "key"]);
  const hash = /(^|\s)#/.exec(text);
  if (hash && !/["']/.test(text.slice(0, hash.index))) out.push([hash.index, text.length, "comment"]);
  return out;
}
