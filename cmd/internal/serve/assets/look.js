// The drawing as a person types: asks for it, drops what is stale, shows what comes.

import { post, Refused } from "./ask.js";
import { by, make } from "./dom.js";

const patience = 1000; // ms that a question may take before a newer one ends it
const behind = 2500; // ms that findings and measurements may be behind someone who types on and on
const pause = 240; // ms without a key, a little more than between the keys of a hand, before everything is asked for
const long = 1000; // ms after which it is said that it takes a while

export class Look extends EventTarget {
  last = null; // the last answer that had a drawing
  #whole = { of: "" }; // the last answer to a question for everything, and what it was asked with
  #due = false; // there is something newer than what is asked for
  #asked = null; // the question that someone waits for
  #running = false;
  #everything = null; // the question for everything that is under way
  #rest = 0; // timer until the hand rests
  #turn = 0; // of the question that was asked last
  #shown = 0; // of the one whose drawing is shown
  #ahead = null; // the drawing that came with a change of the form
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

  // ask asks for a new drawing. One of a size by itself comes at once, and everything once the hand
  // rests, or when it is too far behind: beside the drawings of the keys, which never wait for it. One
  // that takes long is given up for a newer one.
  ask() {
    const now = performance.now();
    if (!this.#since) this.#since = now;
    this.#due = true;
    clearTimeout(this.#rest);
    if (this.#behind() < behind) this.#everything?.abort();
    if (!this.#running) return this.#run();
    if (this.#asked && now - this.#asked.at > patience) this.#asked.control.abort();
  }

  // forget drops the drawings of the pattern before.
  forget() {
    for (const control of [this.#asked?.control, this.#everything]) control?.abort();
    this.last = null;
    this.#whole = { of: "" };
    this.sheets.replaceChildren();
  }

  async #run() {
    this.#running = true;
    while (this.#due) {
      this.#due = false;
      if (!this.#glances()) await this.#send(true);
      else if (await this.#send(false)) this.#later();
    }
    this.#running = false;
  }

  // behind is how old findings and measurements are.
  #behind() { return performance.now() - (this.#whole.at ?? 0); }

  // later asks for everything when no key comes any more.
  #later() {
    clearTimeout(this.#rest);
    if (!this.#everything) this.#rest = setTimeout(() => this.#send(true, false), this.#behind() < behind ? pause : 0);
  }

  // glance is how a drawing of the pattern with a change in it is asked for, or null if it can't come before the rest.
  glance() { return this.#glances() ? { ...this.choices(), glance: this.#whole.scale } : null; }

  // take takes the drawing of a text that the pattern is about to have.
  take(text, answer) { this.#ahead = answer ? { text, answer } : null; }

  // glances reports whether the drawing can come before the rest: of a size by itself, with
  // nothing chosen anew but the size.
  #glances() { return this.choices().labels === "one" && Object.values(this.#whole.scale ?? {}).some((n) => n > 0) && this.#whole.of === this.#kind(); }

  #kind() {
    const { size, ...other } = this.choices();
    return JSON.stringify([other, this.draft().draft.id]);
  }

  // send asks for everything, or for the drawing alone, and shows what comes; awaited is what a person
  // waits for. It reports whether there is more to ask for.
  async #send(whole, awaited = true) {
    const control = new AbortController();
    const mine = { control, at: performance.now() };
    if (awaited) this.#asked = mine;
    if (whole) {
      this.#everything?.abort();
      this.#everything = control;
    }
    const turn = ++this.#turn;
    const [since, text, of] = [awaited ? this.#since : 0, this.pattern.text, this.#kind()];
    if (awaited) this.#slow ||= setTimeout(() => this.#say("Drawing…"), long);
    try {
      const a = !whole && this.#ahead?.text === text ? this.#ahead.answer : await post("/api/look", { text, ...this.choices(), ...this.draft(), ...(whole ? {} : { glance: this.#whole.scale }) }, control.signal);
      if (!a.glance) this.#whole = { of, scale: a.readable ? a.scale : this.#whole.scale, at: performance.now() };
      if (awaited && !this.#due) this.#since = 0;
      if (turn > this.#shown) {
        this.#shown = turn;
        this.#show(a);
      } else if (a.pages.length > 0) {
        this.last = { ...a, pages: this.last.pages }; // a key was drawn meanwhile
      }
      if (!a.glance) this.dispatchEvent(new CustomEvent("look", { detail: { ...a, text } }));
      if (since) requestAnimationFrame(() => performance.measure("key to drawing", { start: since, end: performance.now() }));
      return a.glance;
    } catch (e) {
      if (e.name === "AbortError") return false;
      if (awaited) this.#since = 0;
      this.#say(e instanceof Refused ? e.message : "The program does not answer. What you typed is kept in this browser.");
      return false;
    } finally {
      if (awaited) this.#quick();
      if (mine === this.#asked) this.#asked = null;
      if (this.#everything === control) {
        this.#everything = null;
        if (text !== this.pattern.text && !this.#running) this.#later();
      }
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
      this.last = a.glance ? { ...this.last, pages: a.pages } : a;
      this.#put(a.pages);
      this.#say("");
    } else if (!a.readable) {
      this.#say(this.last ? "The pattern has an error; this is the last drawing without it. The findings say what to fix." :
        "The pattern has an error; the findings say what to fix.");
    } else {
      this.#say(`There is no drawing: ${a.why}`);
    }
    pages.classList.toggle("old", a.pages.length === 0);
    pages.dataset.drawn = String(Number(pages.dataset.drawn ?? 0) + 1);
  }

  // put shows pages, those alone anew that are other than before.
  #put(pages) {
    const old = [...this.sheets.children];
    pages.forEach((svg, i) => {
      if (old[i]?.svg === svg) return;
      const t = document.createElement("template");
      // from the program's own writer, which lets no text of a pattern be anything but text
      t.innerHTML = `<div class="page">${svg}</div>`;
      const page = t.content.firstElementChild;
      page.svg = svg;
      if (old[i]) old[i].replaceWith(page);
      else this.sheets.append(page);
    });
    for (const more of old.slice(pages.length)) more.remove();
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
