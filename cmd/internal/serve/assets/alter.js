// What an alteration makes of a size: before and after over each other, the altered one with its
// measurements, and every number that changes.

import { post } from "./ask.js";
import { by, make } from "./dom.js";

const pause = 150; // ms without a key before it is asked for

export class Alter {
  #fields = { own: new Map(), parts: new Map() }; // inputs by name of the body, and by piece
  #shown = ""; // what is asked was asked with
  #asked = null;
  #rest = 0;
  #told = { body: [], piece: [], sizes: [], size: "" };

  // question gives the pattern and what is chosen beside it.
  constructor(question) {
    this.question = question;
    for (const id of ["alter-body", "alter-sleeve", "alter-gauge"]) by(id).addEventListener("input", () => this.show());
    by("alter-clear").onclick = () => {
      for (const i of by("panel-alter").querySelectorAll("input, select")) i.value = "";
      this.show();
    };
  }

  // chosen is what is altered.
  chosen() {
    const filled = (fields) => Object.fromEntries([...fields].map(([n, e]) => [n, e.value.trim()]).filter(([, v]) => v !== ""));
    return { body: by("alter-body").value.trim(), sleeve: by("alter-sleeve").value.trim(), gauge: by("alter-gauge").value.trim(),
      own: filled(this.#fields.own), parts: filled(this.#fields.parts) };
  }

  // names takes what can be asked for: measurements of the body that the pattern is worked out of, pieces and sizes.
  names(names, sizes, size) {
    this.#told = { body: names?.body ?? [], piece: names?.piece ?? [], sizes, size };
    by("alter-size").textContent = size;
    this.#list(by("alter-own"), this.#fields.own, this.#told.body, (name, k) => {
      const i = make("input", { id: `alter-own-${k}`, size: 6, autocomplete: "off", oninput: () => this.show() });
      return [i, make("label", {}, `Own ${name} `, i)];
    });
    by("alter-no-body").hidden = this.#told.body.length > 0;
    const others = sizes.filter((s) => s !== size);
    this.#list(by("alter-parts"), this.#fields.parts, others.length ? this.#told.piece : [], (name) => {
      const s = make("select", { onchange: () => this.show() });
      return [s, make("label", {}, `${name} `, s)];
    });
    for (const s of this.#fields.parts.values()) {
      if (s.dataset.of === others.join("\n")) continue;
      s.dataset.of = others.join("\n");
      const was = s.value;
      s.replaceChildren(make("option", { value: "" }, "as the rest"), ...others.map((o) => make("option", { value: o }, o)));
      s.value = others.includes(was) ? was : "";
    }
    by("alter-parts").parentElement.hidden = this.#fields.parts.size === 0;
  }

  #list(box, fields, names, field) {
    if (box.dataset.of === names.join("\n")) return;
    box.dataset.of = names.join("\n");
    const old = new Map(fields);
    fields.clear();
    box.replaceChildren(...names.map((name, k) => {
      const [input, label] = field(name, k);
      if (old.has(name)) input.value = old.get(name).value;
      fields.set(name, input);
      return label;
    }));
  }

  // show asks for the picture once the hand rests, if it is looked at.
  show() {
    clearTimeout(this.#rest);
    if (!by("panel-alter").hidden) this.#rest = setTimeout(() => this.#ask(), pause);
  }

  async #ask() {
    const q = { ...this.question(), ...this.chosen() };
    const key = JSON.stringify(q);
    if (key === this.#shown) return;
    this.#asked?.abort();
    const { body, sleeve, gauge, own, parts } = q;
    if (!body && !sleeve && !gauge && Object.keys(own).length + Object.keys(parts).length === 0) {
      this.#shown = key;
      this.#asked = null;
      by("alter-why").classList.remove("wrong");
      this.#say("Nothing is altered yet.");
      for (const id of ["alter-both", "alter-now", "alter-changes", "alter-told"]) by(id).replaceChildren();
      by("altered").hidden = true;
      return;
    }
    const mine = (this.#asked = new AbortController());
    const slow = setTimeout(() => this.#say("Drawing…"), 1000);
    try {
      const a = await post("/api/alter", q, mine.signal);
      if (mine !== this.#asked) return;
      this.#shown = key;
      this.#put(a, q.size);
    } catch (e) {
      if (e.name !== "AbortError") this.#say(e.message);
    } finally {
      clearTimeout(slow);
    }
  }

  #put(a, size) {
    by("alter-why").classList.toggle("wrong", Boolean(a.why));
    this.#say(a.why ? `It can’t be altered so: ${a.why}` : a.changes.length ? "" : "Nothing changes by this.");
    by("altered").classList.toggle("old", Boolean(a.why));
    if (a.why) return;
    by("altered").hidden = false;
    by("alter-both").replaceChildren(...a.both.map(sheet));
    by("alter-now").replaceChildren(...a.now.map(sheet));
    by("alter-told").replaceChildren(...a.told.map((f) => make("li", { class: f.severity },
      make("span", { class: "severity" }, f.severity), ` ${f.piece ? `${f.piece}: ` : ""}${f.message}`,
      ...[["found", f.have], ["expected", f.want], ["fix", f.fix]].filter(([, t]) => t).map(([k, t]) => `; ${k} ${t}`))));
    const pieces = [...new Set(a.changes.map((c) => c.piece))];
    by("alter-changes").replaceChildren(...(a.changes.length ? [make("table", {},
      make("caption", {}, `What changes in size ${size}`),
      make("thead", {}, make("tr", {}, ["Number", "as published", "altered", "unit"].map((h) => make("th", { scope: "col" }, h)))),
      pieces.map((p) => make("tbody", {}, make("tr", { class: "group" }, make("th", { scope: "rowgroup", colspan: 4 }, p)),
        a.changes.filter((c) => c.piece === p).map((c) => make("tr", {}, make("th", { scope: "row" }, c.what), make("td", {}, c.was), make("td", { class: "chosen" }, c.now), make("td", {}, c.unit))))))] : []));
  }

  #say(text) {
    if (by("alter-why").textContent !== text) by("alter-why").textContent = text;
  }
}

// sheet is one drawing with a root of its own, so that the ids of two do not meet.
export function sheet(svg) {
  const e = make("div", { class: "chart" });
  const root = e.attachShadow({ mode: "open" });
  const t = document.createElement("template");
  // from the program's own writer, which lets no text of a pattern be anything but text
  t.innerHTML = `<div class="sheets"><div class="page">${svg}</div></div>`;
  root.append(make("link", { rel: "stylesheet", href: "/assets/drawing.css" }), t.content);
  return e;
}
