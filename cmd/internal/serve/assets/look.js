// The drawing as a person types: asks for it, drops what is stale, shows what comes.

import { post, Refused } from "./ask.js";
import { by, make } from "./dom.js";

const soon = 15; // ms between two questions while one is under way
const long = 1000; // ms after which it is said that it takes a while

export class Look extends EventTarget {
  last = null; // the last answer that had a drawing
  #asked = null;
  #timer = 0;
  #slow = 0;
  #since = 0;
  #width = 0; // of a page in the window's pixels, 0: fits

  constructor(pattern, choices, draft) {
    super();
    this.draft = draft;
    // a root of its own: the drawing has its class names and the page has others
    const root = by("pages").attachShadow({ mode: "open" });
    this.sheets = make("div", { class: "sheets" });
    root.append(make("link", { rel: "stylesheet", href: "/assets/drawing.css" }), this.sheets);
    this.pattern = pattern;
    this.choices = choices;
  }

  // ask asks for a new drawing.
  ask() {
    if (!this.#since) this.#since = performance.now();
    clearTimeout(this.#timer);
    if (!this.#asked) return this.#send();
    this.#timer = setTimeout(() => this.#send(), soon);
  }

  async #send() {
    this.#asked?.abort();
    const mine = (this.#asked = new AbortController());
    const since = this.#since;
    const text = this.pattern.text;
    if (!this.#slow) this.#slow = setTimeout(() => this.#say("Drawing…"), long);
    try {
      const a = await post("/api/look", { text, ...this.choices(), ...this.draft() }, mine.signal);
      if (mine !== this.#asked) return;
      this.#quick();
      this.#since = 0;
      this.#show(a);
      this.dispatchEvent(new CustomEvent("look", { detail: { ...a, text } }));
      requestAnimationFrame(() => performance.measure("key to drawing", { start: since, end: performance.now() }));
    } catch (e) {
      if (mine !== this.#asked || e.name === "AbortError") return;
      this.#quick();
      this.#since = 0;
      this.#say(e instanceof Refused ? e.message : "The program does not answer. What you typed is kept in this browser.");
    } finally {
      if (mine === this.#asked) this.#asked = null;
    }
  }

  #quick() {
    clearTimeout(this.#slow);
    this.#slow = 0;
  }

  #say(text) {
    by("stale").textContent = text;
    by("stale").hidden = text === "";
  }

  #show(a) {
    const pages = by("pages");
    if (a.pages.length > 0) {
      this.last = a;
      const t = document.createElement("template");
      // from the program's own writer, which lets no text of a pattern be anything but text
      t.innerHTML = a.pages.map((p) => `<div class="page">${p}</div>`).join("");
      this.sheets.replaceChildren(t.content);
      this.#say("");
    } else if (!a.readable) {
      this.#say(this.last ? "The pattern can’t be read just now; this is the drawing from before. The findings say what to mend." :
        "The pattern can’t be read yet; the findings say what to mend.");
    } else {
      this.#say(`There is no drawing: ${a.why}`);
    }
    pages.classList.toggle("old", a.pages.length === 0);
    pages.dataset.drawn = String(Number(pages.dataset.drawn ?? 0) + 1);
  }

  // zoom makes the pages larger or smaller; 0 fits them to the window.
  zoom(by_) {
    const now = this.sheets.firstElementChild?.getBoundingClientRect().width ?? 600;
    this.#width = by_ === 0 ? 0 : Math.min(6000, Math.max(160, now * by_));
    by("pages").style.setProperty("--page", this.#width ? `${Math.round(this.#width)}px` : "100%");
    this.sheets.classList.toggle("fixed", this.#width > 0);
  }
}

// sizes shows the sizes to choose from.
export function showSizes(sizes, chosen, onchange) {
  const box = by("sizes");
  const names = sizes.join("\n");
  if (box.dataset.names !== names) {
    box.dataset.names = names;
    box.replaceChildren(...sizes.map((s) => make("label", {},
      make("input", { type: "radio", name: "size", value: s, onchange }), make("span", {}, s))));
  }
  for (const i of box.querySelectorAll("input")) i.checked = i.value === chosen;
}
