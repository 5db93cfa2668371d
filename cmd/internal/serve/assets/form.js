// The form: what of the pattern changes most, size by size. Each change goes to
// the program, which changes the file's text at the bytes meant.

import { post, Refused, tellFault } from "./ask.js";
import { adder } from "./adder.js";
import { by, listOf, make } from "./dom.js";
import { graft } from "./graft.js";
import { typed } from "./pattern.js";

const open = new Set(["pieces", "pieces/0"]); // paths of groups that are unfolded
const adders = { widen: "Add a size after", narrow: "Take out a size" }; // what changes the sizes

export class Form {
  #shape = "";
  #text = null; // for which the form was made
  #queue = Promise.resolve();
  #waiting = new Map(); // the changes of fields that wait for their turn, by path and cell
  #anew = false; // the text came from elsewhere: a field shows it even while it has the focus
  #found = [];
  size = "";
  entries = {};
  #ahead = new Ahead();
  #released = Promise.resolve(); // when nothing of the form is being pressed
  #next = ""; // path of the entry to go to when the form is made anew
  #opens = []; // paths of what is unfolded then
  #begun = false; // that entry is a new one
  #visits = 0; // how often the focus came to a field
  sizes = [];
  groups = [];

  constructor(pattern, look, goTo) {
    this.pattern = pattern;
    this.look = look;
    this.goTo = goTo;
    pattern.addEventListener("change", (e) => {
      this.#anew = e.detail.from !== "form";
      if (e.detail.fresh) {
        this.#shape = "";
        by("form").replaceChildren(); // it shows the pattern before
      }
      if (this.#anew && !by("panel-form").hidden) this.refresh().catch(tellFault); // not when all else is drawn
    });
    by("form").addEventListener("focusin", () => { this.#visits++; });
    by("form").addEventListener("focusout", (e) => {
      const field = e.target.closest(".field, .more");
      setTimeout(() => this.#released.then(() => {
        if (field?.kept) this.after(() => this.#asItIs(field)); // what was typed in it may be on its way
        else if (this.pattern.text === this.#text) this.#again();
      }));
    });
    // what is pressed stands there until it has had its click
    by("form").addEventListener("pointerdown", () => {
      this.#released = new Promise((done) => {
        for (const end of ["pointerup", "pointercancel"]) addEventListener(end, () => setTimeout(done), { once: true });
      });
    });
  }

  // refresh shows the pattern as it is now.
  async refresh() {
    const text = this.pattern.text;
    if (text === this.#text) return this.#again();
    const a = await post("/api/form", { text });
    await this.#released;
    if (text !== this.pattern.text) return;
    this.#text = text;
    by("form-broken").hidden = a.readable;
    by("form").toggleAttribute("inert", !a.readable);
    by("form").classList.toggle("old", !a.readable);
    if (!a.readable) return;
    this.sizes = a.sizes ?? [];
    this.groups = a.groups ?? [];
    const shape = shapeOf(a.form) + this.sizes.join();
    if (shape !== this.#shape) this.#build(a.form);
    this.#shape = shape;
    this.#fill(a.form);
    this.#mark();
  }

  // asItIs shows a field anew that was kept for someone who typed in it.
  async #asItIs(field) {
    await this.refresh();
    if (field.isConnected && field.kept) this.#build(this.form);
  }

  // again shows what the form was made for in fields that show other than that.
  #again() {
    if (!by("form-broken").hidden) return;
    this.#fill(this.form);
    this.#mark();
  }

  // mark shows which fields have findings.
  mark(found) {
    this.#found = found;
    this.#mark();
  }

  #mark() {
    const lines = new Map();
    for (const f of this.#found) if (f.line > 0 && f.severity !== "note") lines.set(f.line, f);
    for (const e of by("form").querySelectorAll(".field")) {
      const f = lines.get(Number(e.dataset.line));
      e.classList.toggle("marked", Boolean(f));
      const said = e.querySelector(".marked-why");
      const why = f ? `${f.severity}: ${f.message}` : "";
      if (said && said.textContent !== why) said.textContent = why;
    }
  }

  // show unfolds the field that stands in a line, and goes to it. It reports whether there is one.
  show(line) {
    const way = [];
    const find = (g) => {
      way.push(g);
      if (g.fields?.some((f) => f.line === line && !f.fixed)) return true;
      for (const h of g.groups ?? []) if (find(h)) return true;
      way.pop();
      return false;
    };
    if (!this.form || !find(this.form)) return false;
    for (const g of way) {
      const d = by("form").querySelector(`details[data-path="${CSS.escape(g.path)}"]`);
      if (d) {
        this.#unfold(d);
        d.open = true;
      }
    }
    const input = by("form").querySelector(`.field[data-line="${line}"] :is(input, select)`);
    if (!input) return false;
    input.focus({ preventScroll: true });
    input.scrollIntoView({ block: "center" });
    return true;
  }

  // choose marks the cells of the size that is drawn.
  choose(size) {
    this.size = size;
    for (const e of by("form").querySelectorAll("[data-size]")) e.classList.toggle("chosen", e.dataset.size === size);
  }

  // build makes the form anew around the field in which someone types: that one stays as
  // it is, with its caret and what it holds.
  #build(form) {
    const focused = document.activeElement;
    const scroll = by("panel-form").scrollTop;
    for (const d of by("form").querySelectorAll("details[data-path]")) this.#unfolded(d); // a click may have had no time to tell
    if (this.#shape) unfoldAlike(this.form, form);
    for (const path of this.#opens) open.add(path);
    this.#opens = [];
    this.form = form;
    const top = { ...form, groups: [] };
    const fresh = make("div", {},
      this.#details("about", make("h2", {}, "About the pattern"), () => this.#fields(top, "")),
      ...(form.groups ?? []).map((g) => this.#part(g)));
    if (!this.#next && by("form").contains(focused) && graft(by("form"), fresh, focused)) {
      by("panel-form").scrollTop = scroll;
      return;
    }
    const places = by("form").contains(focused) ? placesOf(focused) : [];
    by("form").replaceChildren(...fresh.childNodes);
    by("panel-form").scrollTop = scroll;
    if (places.length > 0) (places.map((q) => by("form").querySelector(q)).find(Boolean) ?? by("panel-form")).focus({ preventScroll: true });
    if (this.#next) {
      const input = goInto(this.#next);
      const begun = this.#begun;
      this.#next = "";
      if (input?.matches("input")) {
        if (begun) input.select(); // what is typed takes the place of what it began with
        this.#ahead.into(input);
      }
    }
  }

  // details is a part that unfolds; what is in it is made when it is first seen.
  #details(path, title, content, extra = []) {
    const d = make("details", { "data-path": path }, make("summary", {}, title, ...extra));
    d.fill = content;
    if (open.has(path)) {
      d.open = true;
      this.#unfold(d);
    }
    d.addEventListener("toggle", () => {
      this.#unfolded(d);
      this.#unfold(d);
    });
    return d;
  }

  // unfolded remembers whether a part is unfolded, for when the form is made anew.
  #unfolded(d) {
    if (!d.isConnected) return;
    if (d.open) open.add(d.dataset.path);
    else open.delete(d.dataset.path);
  }

  #unfold(d) {
    if (!d.fill) return;
    const fill = d.fill;
    d.fill = null;
    d.append(...[fill()].flat().filter((c) => c != null));
    this.choose(this.size);
    this.#mark();
  }

  // part is a list or mapping right below the pattern.
  #part(g) {
    if (g.key === "pieces") {
      return make("section", { class: "pieces" }, make("h2", {}, "Pieces"), (g.groups ?? []).map((p) =>
        this.#details(p.path, p.title, () => this.#piece(p), [make("span", { class: "kind" }, " ", count(p))])));
    }
    return this.#details(g.path, make("h2", {}, capital(g.title)), () => [
      ...this.#fields(g, g.title),
      ...(g.groups ?? []).map((h) => make("section", { class: "entry", "data-path": h.path }, make("h3", {}, capital(h.title)), this.#entry(h, g, h.title), this.#inside(h, h.title))),
    ]);
  }

  #piece(p) {
    return [
      this.#entry(p, { list: "piece" }, p.title),
      ...this.#fields(p, p.title),
      ...(p.groups ?? []).flatMap((g) => g.key === "sections" ? [this.#sections(g, p.title)] : [make("section", { class: "entry", "data-path": g.path }, make("h3", {}, capital(g.title)), this.#inside(g, p.title))]),
    ];
  }

  #inside(g, of) {
    const numbered = counter();
    return [...this.#fields(g, of), ...(g.groups ?? []).map((h) => this.#group(h, of, g, numbered(nameOf(h))))];
  }

  // lead is the list that a section is, such as the parts of a division: it is not named twice.
  #lead(g, of) {
    return make("section", { "data-path": g.path }, this.#inside(g, of));
  }

  #group(g, of, list, name) {
    if (g.key === "sections") return this.#sections(g, of);
    if (g.list && list.key === g.key) return this.#lead(g, of);
    return make("section", { class: "entry", "data-path": g.path },
      make("h4", {}, g.entry ? name : capital(g.title)), g.entry ? this.#entry(g, list, `${of}, ${name}`) : null, this.#inside(g, `${of}, ${name}`));
  }

  // entry is what can be done with an entry of a list: one put behind it, or it taken out.
  #entry(g, list, name) {
    if (!g.entry || !list?.list || !this.entries[list.list]) return null;
    const said = alerting();
    const mirror = list.list !== "piece" ? null : make("button", { type: "button", class: "quiet", "aria-label": `mirror: ${name}`,
      onclick: () => this.#edit({ act: "insert", path: g.path, key: "mirror of", value: g.title }, said) }, "mirror");
    return make("div", { class: "tools" }, this.#insert(g.path, list.list, name, said), this.#copy(g.path, name, said), mirror, this.#takeOut(g.path, name, said), said);
  }

  // copy puts a copy behind an entry, to be changed.
  #copy(path, name, said) {
    return make("button", { type: "button", class: "quiet", "aria-label": `copy: ${name}`, onclick: () => this.#edit({ act: "copy", path }, said) }, "copy");
  }

  // resize adds a size by copying its neighbour, or takes one out.
  #resize(said) {
    const all = (ask) => this.sizes.map((s) => ({ name: s, what: "", ask, none: !ask }));
    const at = (k) => this.sizes.indexOf(k.name);
    return [
      adder("add a size after…", adders.widen, all("name of the new size, with the numbers of the one before"), (k, value) => this.#edit({ act: "widen", path: "sizes", cell: at(k), value }, said)),
      this.sizes.length < 2 ? null : adder("take out a size…", adders.narrow, all(""), (k) => this.#edit({ act: "narrow", path: "sizes", cell: at(k) }, said)),
    ];
  }

  #takeOut(path, name, said) {
    return make("button", { type: "button", class: "quiet", "aria-label": `take out: ${name}`, onclick: () => this.#edit({ act: "take", path }, said) }, "take out");
  }

  #insert(path, list, name, said) {
    const word = list === "section" ? "a section" : list === "line" || list === "material" ? "a line" : "an entry";
    return adder("add after…", `Add ${list === "piece" ? "a piece" : word} after ${name}`, this.entries[list], (k, value) => this.#edit({ act: "insert", path, key: k.name, value }, said));
  }

  #sections(g, of) {
    const numbered = counter();
    return make("ol", { class: "sections", "aria-label": `What is worked: ${of}` }, (g.groups ?? []).map((s, i) => {
      const said = alerting();
      const name = numbered(s.title === s.key ? s.key : `${s.key} (${s.title})`);
      return make("li", { "data-path": s.path },
        make("div", { class: "section-head" },
          make("h3", {}, make("span", { class: "lead" }, s.key), s.title === s.key ? "" : ` ${s.title}`),
          make("span", { class: "tools" },
            make("button", { type: "button", class: "quiet", "aria-label": `in the text: ${of}, ${name}`, onclick: () => this.goTo(s.line) }, "in the text"),
            g.starts && i === 0 ? adder("begin with…", `Begin ${of} otherwise than with ${name}`, this.entries["first section"].filter((k) => k.name !== s.key),
              (k) => this.#edit({ act: "begin", path: s.path, key: k.name }, said)) : null,
            this.#insert(s.path, "section", `${of}, ${name}`, said),
            this.#copy(s.path, `${of}, ${name}`, said),
            this.#takeOut(s.path, `${of}, ${name}`, said))), said,
        this.#inside(s, `${of}, ${name}`));
    }));
  }

  #fields(g, of) {
    const said = alerting();
    const lines = g.list === "line" || g.list === "material";
    const rows = (g.fields ?? []).map((f) => this.#field(f, of, lines));
    const can = (g.can ?? []).length > 0 ? this.#more(g, of, said) : null;
    return [...rows, can, this.#further(g, of, said), said];
  }

  #field(f, of, line = false) {
    const label = of ? `${of}, ${f.key}` : f.key;
    const said = alerting();
    const why = make("span", { class: "marked-why" });
    const content = f.fixed ? make("button", { type: "button", class: "quiet", "aria-label": `change it in the text: ${label}`, onclick: () => this.goTo(f.line) }, "change it in the text") :
      f.pick?.length ? this.#select(f, label, said) :
        f.cells?.length > 1 ? this.#cells(f, label, said) : this.#single(f, label, said);
    const id = content.id || content.querySelector?.("input")?.id;
    return make("div", { class: "field", "data-line": f.line, "data-field": f.path, "data-how": howOf(f, line) },
      make("label", { class: "key", for: id, title: f.what }, f.key),
      make("div", { class: "value" }, content, line ? this.#takeOut(f.path, label, said) : null, f.path === "sizes" ? this.#resize(said) : null, why, said));
  }

  #select(f, label, said) {
    const words = f.pick.includes(f.value) ? f.pick : [f.value, ...f.pick];
    const s = make("select", { id: fresh(), "aria-label": label, onchange: () => this.#set(f, -1, s.value, said, s) },
      words.map((w) => make("option", { value: w }, w)), f.need ? null : make("option", { value: "" }, "(take it out)"));
    s.value = f.value;
    s.read = (g) => g.value;
    return s;
  }

  #single(f, label, said) {
    const i = make("input", { id: fresh(), "aria-label": label, value: f.value, title: f.what, list: listOf(f.names), size: Math.min(48, Math.max(8, f.value.length + 2)) });
    this.#live(i, f, -1, said);
    i.read = (g) => g.value;
    if (!f.sized || f.cells?.length !== 1 || this.sizes.length < 2) return i;
    return make("span", { class: "one" }, i, " ", make("button", { type: "button", class: "quiet", "aria-label": `by size: ${label}`,
      onclick: () => this.#set(f, -1, this.#bySize(f, i.value), said, i) }, "by size"));
  }

  // bySize is one number for all sizes as a line of the trade.
  #bySize(f, value) {
    const t = Array.from(value);
    const c = value === f.value ? f.cells[0] : { text: value, from: 0, to: t.length };
    const parts = this.groups.map((n, k) => {
      const list = Array(n).fill(c.text).join(", ");
      return k === 0 && n === 1 ? list : `(${list})`;
    });
    return t.slice(0, c.from).join("") + parts.join(" ") + t.slice(c.to).join("");
  }

  #cells(f, label, said) {
    const tail = Array.from(f.value).slice(f.cells.at(-1).to).join("").replace(/[)\]]/g, "").trim();
    const box = make("span", { class: "cells", role: "group", "aria-label": label }, f.cells.map((c, i) => {
      const input = make("input", { id: i === 0 ? fresh() : undefined, "aria-label": `${label}, ${c.size}`, value: c.text, size: 4, inputmode: "text" });
      this.#live(input, f, i, said);
      input.read = (g) => g.cells?.[i]?.text ?? "";
      return make("span", { class: "cell-of", "data-size": c.size }, make("span", { class: "size", "aria-hidden": "true" }, c.size), input);
    }), tail ? make("span", { class: "tail" }, tail) : null);
    box.style.setProperty("--wide-as", String(Math.max(3, ...f.cells.map((c) => c.text.length))));
    return box;
  }

  // live takes each stroke, but an empty value only when the field is left.
  #live(input, f, cell, said) {
    input.addEventListener("input", () => { if (input.value.trim() !== "") this.#set(f, cell, input.value, said, input); });
    input.addEventListener("change", () => { if (input.value.trim() === "") this.#set(f, cell, "", said, input); });
    if (f.path === "sizes") this.#renames(input, said);
    input.addEventListener("keydown", (e) => {
      if (e.key !== "ArrowUp" && e.key !== "ArrowDown" || !/^\d+$/.test(input.value)) return;
      e.preventDefault();
      input.value = String(Math.max(0, Number(input.value) + (e.key === "ArrowUp" ? 1 : -1)));
      this.#set(f, cell, input.value, said, input);
    });
  }

  // renames calls the sizes by their new names wherever the file calls them, if as many have other names when the field is left.
  #renames(input, said) {
    let was = [];
    input.addEventListener("focus", () => { was = this.sizes; });
    input.addEventListener("change", () => {
      const hand = { ...this.#hand("sizes -1", input), late: true };
      this.after(async () => {
        await this.refresh();
        const value = was.join(", ");
        const other = was.length === this.sizes.length && value !== this.sizes.join(", ");
        was = this.sizes;
        if (other) this.#edit({ act: "rename", path: "sizes", value, hand }, said, input);
      });
    });
  }

  #more(g, of, said) {
    return adder("add…", `Add to ${of || "the pattern"}`, g.can, (k, value, name, input) =>
      this.#edit({ act: "put", path: g.path, key: k.name, value, name }, said, input));
  }

  // further puts a line, or a name, behind the last of a list that has no other place for it.
  #further(g, of, said) {
    if (g.named) {
      return adder("add…", `Add to ${of || g.key}`, [{ name: "a further one", what: "", named: true, names: g.names }], (k, value, name, input) =>
        this.#edit({ act: "put", path: g.path, key: name, value }, said, input));
    }
    const last = g.fields?.at(-1);
    if (g.list !== "line" && g.list !== "material" || !last) return null;
    return make("div", { class: "tools" }, this.#insert(last.path, g.list, `${of}, ${last.key}`, said));
  }

  // set gives a field a value. Of values typed faster than they are taken, the last one counts.
  #set(f, cell, value, said, input) {
    const at = `${f.path} ${cell}`;
    const change = { act: "set", path: f.path, cell, value, hand: this.#hand(at, input) };
    const waits = this.#waiting.get(at);
    if (waits) return Object.assign(waits, change, { hand: { ...change.hand, from: waits.hand.from } });
    this.#waiting.set(at, change);
    this.#edit(change, said, input, () => this.#waiting.delete(at));
  }

  // hand is what was typed at a place while the focus is where it is, for what is undone together.
  #hand(at, input) { return typed(`form ${at} ${this.#visits}`, input); }

  // edit makes a change; changes are made one behind the other.
  #edit(change, said, input, begun) {
    const set = change.act === "set" || change.act === "rename";
    if (!set) this.#ahead.begin();
    if (input) input.waits = (input.waits ?? 0) + 1;
    this.after(async () => {
      begun?.();
      try {
        const a = await this.#changed(change);
        if (said) said.textContent = "";
        input?.removeAttribute("aria-invalid");
        this.#opens = unfolds(change);
        this.#next = this.#opens[0] ?? goesTo(change);
        this.#begun = change.act !== "take";
        this.look.take(a.text, a.look);
        this.pattern.change(a.text, { hand: change.hand, from: "form" });
        if (!set) await this.refresh(); // the place that it made is there before its drawing
      } catch (e) {
        if (!(e instanceof Refused)) tellFault(e);
        if (said) said.textContent = e.message;
        else by("form-broken").textContent = e.message;
        input?.setAttribute("aria-invalid", "true");
      }
      if (!set) this.#ahead.end(input);
      if (input) input.waits--;
    });
  }

  // takeBack gives a field in which something stands that could not be taken what the file has. It
  // reports whether it is one.
  takeBack(input) {
    const field = input.closest?.("#form [data-field]");
    const f = input.read && input.hasAttribute("aria-invalid") && fieldsOf(this.form).get(field.dataset.field);
    if (!f) return false;
    input.value = input.read(f);
    input.removeAttribute("aria-invalid");
    for (const e of field.querySelectorAll("[role=alert]")) e.textContent = "";
    return true;
  }

  // after does something once the changes before it are made.
  after(does) { this.#queue = this.#queue.then(does).catch(tellFault); }

  // changed is the pattern with the change, made anew if the text becomes another meanwhile.
  async #changed(change) {
    for (;;) {
      const { text } = this.pattern;
      const a = await post("/api/edit", { text, ...change, hand: undefined, look: this.look.glance() });
      if (text === this.pattern.text) return a;
    }
  }

  // fill shows the values of the text as it is now. What is not in the text yet stays, and so does what
  // someone types at the moment, and what could not be taken, unless the text came from elsewhere.
  #fill(form) {
    this.form = form;
    const fields = fieldsOf(form);
    for (const e of by("form").querySelectorAll("[data-field]")) {
      const f = fields.get(e.dataset.field);
      if (!f) continue;
      e.dataset.line = f.line;
      if (e.kept && !this.#anew) continue;
      for (const i of e.querySelectorAll("input, select")) {
        if (!i.read || i.waits > 0 || !this.#anew && (i === document.activeElement || i.hasAttribute("aria-invalid"))) continue;
        const value = i.read(f);
        if (i.value !== value) i.value = value;
        i.removeAttribute("aria-invalid");
      }
    }
    this.#anew = false;
  }
}

// fieldsOf are all fields of a form by their paths.
function fieldsOf(form) {
  const fields = new Map();
  const walk = (g) => {
    for (const f of g.fields ?? []) fields.set(f.path, f);
    (g.groups ?? []).forEach(walk);
  };
  walk(form);
  return fields;
}

// Ahead keeps what someone types who does not wait for the field that is about to be there.
class Ahead {
  #text = null;
  #taken = false; // the key that is down was kept: what it would write is not written once more

  constructor() {
    for (const kind of ["keydown", "keypress"]) document.addEventListener(kind, (e) => this.#key(e), true);
  }

  #key(e) {
    if (e.type === "keypress" && this.#taken) {
      e.preventDefault(); // its field may have come between the two events of one key
      return e.stopPropagation();
    }
    if (e.type === "keydown") this.#taken = false;
    if (this.#text === null || e.ctrlKey || e.metaKey || e.altKey || e.target.matches("input, textarea") && !e.target.closest(".more")) return;
    if (e.key.length > 1 && e.key !== "Backspace") return;
    e.preventDefault(); // a list would go to the entry that begins so
    e.stopPropagation();
    if (e.type !== "keydown") return;
    this.#taken = true;
    this.#text = e.key.length === 1 ? this.#text + e.key : this.#text.slice(0, -1);
  }

  begin() { this.#text = ""; }

  // end gives what was typed back to the field that was refused.
  end(input) {
    if (this.#text && input?.isConnected) input.value += this.#text;
    this.#text = null;
  }

  // into puts what was typed into the field, over what is in it.
  into(input) {
    const text = this.#text;
    this.#text = null;
    if (!text) return;
    input.value = text;
    input.setSelectionRange(text.length, text.length);
    input.dispatchEvent(new Event("input"));
  }
}

// unfolds are the paths of what a change has made and of what that stands in, for the focus to go to the first.
function unfolds(c) {
  const [list, n] = placed(c.path);
  if (c.act === "insert" || c.act === "copy") return [`${list}${n + 1}`];
  if (c.act !== "put") return [];
  return c.path ? [`${c.path}/${c.key}`, c.path] : [c.key, "about"];
}

// goesTo is where the focus goes after a change that has unfolded nothing.
function goesTo(c) {
  const [list, n] = placed(c.path);
  return { begin: c.path, take: `${list}${Math.max(0, n - 1)}`, widen: adders.widen, narrow: adders.narrow }[c.act] ?? "";
}

// goInto gives the focus to the entry at a path, or to the nearest around it where that one is no more or folded
// away, and returns what has it.
function goInto(path) {
  for (let p = path; p; p = p.slice(0, Math.max(0, p.lastIndexOf("/")))) {
    const q = CSS.escape(p);
    const at = by("form").querySelector(`[data-path="${q}"], [data-field="${q}"], [data-adder="${q}"]`);
    const input = at?.querySelector(".field input, .field select, .value input, .value select") ?? at?.querySelector("button, summary, select");
    input?.focus({ preventScroll: true });
    if (!input || document.activeElement !== input) continue;
    at.scrollIntoView({ block: "nearest" });
    return input;
  }
  if (document.activeElement === document.body) by("panel-form").focus({ preventScroll: true });
  return null;
}

// placed is the path of a list, and the place in it.
function placed(path) {
  const at = path.lastIndexOf("/") + 1;
  return [path.slice(0, at), Number(path.slice(at))];
}

// unfoldAlike unfolds the pieces of a form that are unfolded in the one before, where others stand between them now.
function unfoldAlike(before, form) {
  const [was, is] = [before, form].map((f) => f?.groups?.find((g) => g.key === "pieces")?.groups ?? []);
  if (was.length === is.length) return;
  const unfolded = new Set(was.filter((p) => open.has(p.path)).map((p) => p.title));
  if (was.length > 0) for (const p of is) open[unfolded.has(p.title) ? "add" : "delete"](p.path);
}

// counter tells things of one name apart: even, even 2.
function counter() {
  const seen = new Map();
  return (name) => {
    const n = (seen.get(name) ?? 0) + 1;
    seen.set(name, n);
    return n === 1 ? name : `${name} ${n}`;
  };
}

// placesOf are selectors for an element of the form when the form is made anew, the nearest first: what
// has its name, what stands first in the field or part that it is in, and what stood before it.
function placesOf(e) {
  const out = e.hasAttribute("aria-label") ? [named(e)] : [];
  for (let at = e.closest("[data-field], [data-path]"); at; at = at.parentElement.closest("[data-field], [data-path]")) {
    const q = at.dataset.field === undefined ? `[data-path="${CSS.escape(at.dataset.path)}"]` : `[data-field="${CSS.escape(at.dataset.field)}"]`;
    out.push(`${q} > summary`, `${q} :is(input, select, button, summary)`);
  }
  const before = [...by("form").querySelectorAll("[aria-label]:is(input, select, button)")];
  return [...out, ...before.slice(0, before.findLastIndex((b) => b.compareDocumentPosition(e) & Node.DOCUMENT_POSITION_FOLLOWING) + 1).reverse().map(named)];
}

const named = (e) => `[aria-label="${CSS.escape(e.getAttribute("aria-label"))}"]`;

const alerting = () => make("p", { class: "wrong", role: "alert" });

// howOf tells the ways of showing a field apart.
const howOf = (f, line) => [f.fixed, line, f.cells?.length ?? 0, ...(f.pick ?? [])].join();

let last = 0;
const fresh = () => `f${++last}`;

const capital = (s) => s.charAt(0).toUpperCase() + s.slice(1);

const nameOf = (g) => (g.title === g.key ? g.key : `${g.key} ${g.title}`);

// shapeOf tells one form from another that has other fields.
function shapeOf(g) {
  return `${g.path}(${(g.fields ?? []).map((f) => `${f.path}:${f.cells?.length ?? 0}${f.fixed ? "!" : ""}`).join(";")}|${(g.can ?? []).length}|${(g.groups ?? []).map(shapeOf).join("")})${g.title}`;
}

function count(p) {
  const make_ = p.fields?.find((f) => f.key === "make")?.value;
  return [p.fields?.find((f) => f.key === "mirror of") && "mirrored", make_ && `make ${make_}`].filter(Boolean).join(", ");
}
