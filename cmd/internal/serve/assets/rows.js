// Written rows beside the pattern: what does not add up stands at its words, each line says how it
// was read, and the section under the caret is charted.

import { post } from "./ask.js";
import { by, make } from "./dom.js";
import { Editor } from "./editor.js";
import { Pattern } from "./pattern.js";

const kept = "flatwright-rows"; // the text lasts over a reload

export class Rows extends EventTarget {
  name = "rows.txt";
  text = new Pattern(); // with a history of its own
  found = [];
  #read = null;
  #asked = null;
  #line = 0;
  #told = ""; // of which line of which text it is told how it was read

  // pattern is the one beside; size gives the size that is shown.
  constructor(pattern, size) {
    super();
    this.pattern = pattern;
    this.size = size;
    this.editor = new Editor(this.text, by("rows-editor"), (line) => this.#says(line));
    this.text.addEventListener("change", () => this.ask());
    by("rows-against").addEventListener("change", () => this.ask());
    by("rows-us").onclick = () => this.#turn("US");
    by("rows-uk").onclick = () => this.#turn("UK");
    by("rows-printed").onclick = () => this.#printed();
    by("rows-open").onclick = () => by("rows-disk").click();
    document.addEventListener("selectionchange", () => {
      if (document.activeElement !== by("rows") || this.editor.line === this.#line) return;
      this.#line = this.editor.line;
      this.#explain();
      this.dispatchEvent(new Event("section"));
    });
    by("rows-explain").addEventListener("toggle", () => this.#explain());
    by("rows-size").addEventListener("change", () => this.choose(by("rows-size").value));
    try {
      const was = JSON.parse(localStorage.getItem(kept) ?? "null");
      if (was?.text) this.show(was.name, was.text);
    } catch {
      // a browser that keeps nothing begins with nothing
    }
  }

  // show shows another text.
  show(name, text) {
    this.name = name;
    this.text.change(text);
  }

  // chosen is the size that is told and charted: one of the text's own, or the pattern's.
  get chosen() {
    const sizes = this.#read?.sizes ?? [];
    return sizes.length > 0 && !sizes.includes(this.size()) ? by("rows-size").value || sizes[0] : this.size();
  }

  // choose chooses one of the text's own sizes.
  choose(size) {
    if (![...by("rows-size").options].some((o) => o.value === size)) return;
    by("rows-size").value = size;
    this.editor.tell();
    this.dispatchEvent(new Event("section"));
  }

  #sizes() {
    const sizes = this.#read?.sizes ?? [];
    by("rows-sized").hidden = sizes.length < 2 || sizes.includes(this.size());
    const select = by("rows-size");
    if ([...select.options].map((o) => o.value).join("\n") === sizes.join("\n")) return;
    const was = select.value;
    select.replaceChildren(...sizes.map((s) => make("option", {}, s)));
    if (sizes.includes(was)) select.value = was;
  }

  // explain tells stitch by stitch how the line of the caret was read, where someone looks at it.
  async #explain() {
    const line = this.editor.line;
    const rows = this.text.text;
    by("rows-line").textContent = line;
    const of = `${line} ${by("rows-against").checked} ${rows}`;
    if (!by("rows-explain").open || of === this.#told) return;
    this.#told = of;
    let told;
    try {
      told = rows.trim() === "" ? [] : (await post("/api/explain", { rows, name: this.name, text: this.pattern.text, against: by("rows-against").checked, line })).told;
    } catch (e) {
      told = [e.message];
    }
    if (of !== this.#told) return;
    by("rows-told").replaceChildren(...(told.length ? told : ["No instructions stand on this line."]).map((t) => {
      const li = make("li", {}, t.trimStart());
      li.style.setProperty("--deep", String((t.length - t.trimStart().length) / 2));
      return li;
    }));
  }

  // section is the one that the caret stands in, or the first.
  get section() {
    const lines = this.#read?.lines ?? [];
    return (lines.findLast((l) => l.line <= this.editor.line) ?? lines[0])?.section ?? "";
  }

  async ask() {
    try {
      localStorage.setItem(kept, JSON.stringify({ name: this.name, text: this.text.text }));
    } catch {
      // it is still here
    }
    this.#asked?.abort();
    const mine = (this.#asked = new AbortController());
    const rows = this.text.text;
    if (rows.trim() === "") return this.#show(null);
    try {
      const a = await post("/api/rows", { rows, name: this.name, text: this.pattern.text, against: by("rows-against").checked }, mine.signal);
      if (mine === this.#asked) this.#show(a);
    } catch (e) {
      if (e.name !== "AbortError") this.#say(e.message);
    }
  }

  #show(a) {
    this.#read = a;
    this.#sizes();
    this.#explain();
    this.found = (a?.findings ?? []).map((f) => ({ ...f, file: this.name, rows: true }));
    this.editor.mark(this.found);
    if (a) {
      const sizes = a.sizes?.length > 1 ? `, sizes ${a.sizes.map(bare).join(", ")}` : "";
      this.#say([a.why, `${a.whole} of ${a.count} ${a.count === 1 ? "line" : "lines"} of instructions read whole, in ${a.terms} terms${sizes}.`].filter(Boolean).join(" "));
    }
    this.dispatchEvent(new Event("read"));
  }

  #say(text) {
    if (by("rows-said").textContent !== text) by("rows-said").textContent = text;
  }

  // says is how a line was read.
  #says(n) {
    const l = this.#read?.lines.find((x) => x.line === n);
    if (!l) return this.#read ? ["no row: it is not worked"] : [];
    const out = [l.unread?.length ? `not read: ${l.unread.join(", ")}` : "read whole"];
    const sizes = this.#read.sizes ?? [];
    const at = Math.max(0, sizes.indexOf(this.chosen));
    const sts = l.stitches?.[at];
    if (sts >= 0) out.push(`${sts} ${sts === 1 ? "stitch" : "stitches"} after it${sizes.length > 1 ? `, size ${bare(sizes[at])}` : ""}`);
    if (l.section) out.push(`section ${l.section}`);
    return out;
  }

  async #turn(to) {
    try {
      const a = await post("/api/words", { rows: this.text.text, name: this.name, to });
      this.text.change(a.rows);
    } catch (e) {
      this.#say(e.message);
    }
  }

  async #printed() {
    try {
      const r = await post("/api/download", { text: this.pattern.text, what: "rows" });
      this.show("rows.txt", await r.text());
      by("rows-against").checked = true;
      this.ask();
    } catch (e) {
      this.#say(e.message);
    }
  }
}

// bare is the name of a size without the word before it.
const bare = (size) => size.replace(/^size /, "");
