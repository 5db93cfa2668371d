// Saving, and keeping every edit: unsaved text stays in the browser, another
// tab or program that changes the file is told, and both texts are kept.

import { get, listen, post, Refused } from "./ask.js";
import { by, make } from "./dom.js";

const prefix = "flatwright-unsaved:";
const tab = crypto.randomUUID();

export class File {
  state = { name: "", path: "", mark: "" };
  model = ""; // the example that is shown, if there is no file
  #onDisk = ""; // the text that was read or saved last
  #saving = null;
  #timer = 0;
  #channel = new BroadcastChannel("flatwright");
  #unlock = null;
  like = ""; // how the bytes of a text from elsewhere begin and its lines end

  constructor(pattern, notices) {
    this.pattern = pattern;
    this.notices = notices;
    pattern.addEventListener("change", () => this.#changed());
    addEventListener("beforeunload", (e) => {
      this.#keep();
      if (this.unsaved && (this.state.name || this.touched)) e.preventDefault();
    });
    addEventListener("pagehide", () => this.#keep());
    document.addEventListener("visibilitychange", () => this.#keep());
    this.#channel.addEventListener("message", (e) => {
      if (e.data.id === this.#id() && e.data.tab !== tab) this.#twoTabs();
    });
  }

  // draft says whose text this is, for the program to keep it too.
  draft() {
    return { draft: { id: this.#id(), tab, mark: this.state.mark, when: Date.now() }, saved: !this.unsaved };
  }

  get unsaved() { return this.pattern.text !== this.#onDisk; }
  get touched() { return this.pattern.back.length > 0; }

  // begin shows what the program has open.
  async begin(a) {
    this.folder = a.folder;
    const shown = read(sessionStorage, "flatwright-shown");
    if (!a.state.name && shown.model) {
      await this.#open(a.state, shown.text, shown.model);
      Object.assign(this, { suggested: shown.suggested, like: shown.like });
    } else {
      await this.#open(a.state, a.text, a.model);
    }
    this.#listen();
  }

  async #open(state, text, model = "") {
    this.state = state;
    this.model = model;
    this.like = "";
    this.suggested = undefined;
    this.#onDisk = state.name ? text : model ? text : "";
    this.#shown(text);
    for (const name of ["conflict", "copied", "encoding", "large", "missing", "moved", "read", "save", "unsaved"]) this.notices.drop(name); // they belong to the file before
    await this.#lock();
    this.pattern.begin(text);
    this.show();
    await this.#restore();
  }

  // shown remembers what this tab shows that has no file, for when the page is loaded again.
  #shown(text) {
    try {
      if (this.model) sessionStorage.setItem("flatwright-shown", JSON.stringify({ model: this.model, text, suggested: this.suggested, like: this.like }));
      else sessionStorage.removeItem("flatwright-shown");
    } catch {
      // it begins as ever
    }
  }

  // openModel shows an example or a beginning, to be saved under a name.
  async openModel(name) {
    const a = await get(`/api/model/${encodeURIComponent(name)}`);
    this.#keep();
    await this.#open({ name: "", path: "", mark: "" }, a.text, name);
  }

  // openText shows a text from elsewhere. like is how its bytes begin and its lines end.
  async openText(name, text, like = "") {
    this.#keep();
    await this.#open({ name: "", path: "", mark: "" }, text, `file ${name}`);
    this.suggested = name;
    this.like = like;
    this.#shown(text);
  }

  // openFile shows the program's own file.
  async openFile() {
    const a = await get("/api/file");
    this.#keep();
    await this.#open(a.state, a.text);
  }

  #id() { return this.state.path || this.model; }

  #key(of = tab) { return `${prefix}${this.#id()}:${of}`; }

  // lock tells other tabs that this one has the file open, for as long as it lives.
  async #lock() {
    this.#unlock?.();
    this.notices.drop("tabs");
    const id = this.#id();
    await new Promise((taken) => {
      navigator.locks.request(`${prefix}${id}:${tab}`, () => {
        taken();
        return new Promise((end) => { this.#unlock = end; });
      });
    });
    const others = (await this.#alive()).filter((n) => n.startsWith(`${prefix}${id}:`) && !n.endsWith(tab));
    this.#channel.postMessage({ id, tab });
    if (others.length > 0) this.#twoTabs();
  }

  async #alive() { return (await navigator.locks.query()).held.map((l) => l.name); }

  #twoTabs() {
    this.notices.tell("tabs", "This pattern is open in another tab too. Each tab gets what the other saves; neither overwrites it.");
  }

  #changed() {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#keep(), 250);
    this.show();
  }

  // keep puts unsaved text into the browser.
  #keep() {
    clearTimeout(this.#timer);
    try {
      if (this.unsaved) {
        localStorage.setItem(this.#key(), JSON.stringify({ text: this.pattern.text, mark: this.state.mark, when: Date.now() }));
      } else {
        localStorage.removeItem(this.#key());
      }
      this.notices.drop("keep");
    } catch {
      this.notices.tell("keep", "This browser can’t keep unsaved text: save often.", "error");
    }
  }

  // forget takes the unsaved text of a tab away, here and where the program keeps it.
  #forget(of) {
    localStorage.removeItem(this.#key(of));
    post("/api/unsaved", { draft: { id: this.#id(), tab: of }, saved: true }).catch(() => {});
  }

  // restore brings back unsaved text of a tab that is not there any more.
  async #restore() {
    const alive = await this.#alive();
    const id = this.#id();
    const left = new Map();
    const here = Object.keys(localStorage).filter((k) => k.startsWith(`${prefix}${id}:`)).map((k) => ({ tab: k.slice(prefix.length + id.length + 1), ...read(localStorage, k) }));
    const there = await get(`/api/unsaved?id=${encodeURIComponent(id)}`).then((a) => a.drafts, () => []);
    for (const d of [...here, ...there]) {
      if (typeof d.text !== "string" || alive.includes(`${prefix}${id}:${d.tab}`)) continue;
      if (d.text === this.#onDisk) this.#forget(d.tab);
      else if (!(left.get(d.tab)?.when > d.when)) left.set(d.tab, d);
    }
    const found = [...left.values()].sort((a, b) => b.when - a.when);
    if (found.length === 0) return;
    const [d] = found;
    const at = new Date(d.when).toLocaleString();
    const use = () => {
      this.pattern.change(d.text);
      this.#forget(d.tab);
      this.#keep();
      this.notices.drop("unsaved");
    };
    const away = () => {
      this.#forget(d.tab);
      this.notices.drop("unsaved");
      this.#restore();
    };
    if (d.mark === this.state.mark && found.length === 1) {
      use();
      this.notices.tell("unsaved", `Your unsaved changes of ${at} are back.`, "", ["Undo it", () => { this.pattern.undo(); this.notices.drop("unsaved"); }]);
    } else {
      this.notices.tell("unsaved", `There are unsaved changes of ${at}, and the file has changed since.`, "", ["Show it", use], ["Throw it away", away]);
    }
  }

  // save saves; without a file it asks for a name.
  async save(both = false) {
    if (!this.state.name) return this.askName();
    if (this.#saving) return this.#saving;
    this.#saving = this.#send({ text: this.pattern.text, mark: this.state.mark, path: this.state.path, both });
    try {
      await this.#saving;
    } finally {
      this.#saving = null;
      this.show();
    }
  }

  async #send(q) {
    try {
      const a = await post("/api/save", q);
      this.#saved(a.state, q.text);
      this.notices.drop("conflict");
      this.notices.drop("save");
      if (a.copied) this.notices.tell("copied", `Saved. The other version is in ${a.copied}, beside it.`);
      return true;
    } catch (e) {
      if (e instanceof Refused && e.status === 409 && e.body.state) this.#conflict(e.body.state, e.body.text);
      else this.notices.tell("save", e instanceof Refused ? `It was not saved: ${e.message}` : "It was not saved: the program does not answer. Your text is kept in this browser.", "error");
      return false;
    }
  }

  #saved(state, text) {
    this.#forget(tab);
    const moved = state.path !== this.state.path;
    this.state = state;
    this.model = "";
    this.#shown();
    this.#onDisk = text;
    if (moved) this.#lock();
    this.#keep();
    this.show();
  }

  #conflict(state, theirs) {
    this.notices.tell("conflict", `${state.name} was changed by another program or tab, and you have changes that are not saved. Nothing is lost:`, "warning",
      ["Save mine, keep theirs as a copy", () => this.save(true)],
      ["Show theirs (Undo brings mine back)", () => this.#take(state, theirs)],
      ["Save mine under another name", () => this.askName()]);
  }

  #take(state, text) {
    this.#onDisk = text;
    this.state = state;
    this.pattern.change(text);
    this.notices.drop("conflict");
    this.show();
  }

  // titled is what the text calls the pattern, whether it can be read or not.
  get titled() { return /^pattern:\s*(.+?)\s*(?:#.*)?$/m.exec(this.pattern.text)?.[1]?.replace(/["']/g, ""); }

  // askName asks for a name, and saves into a new file.
  askName() {
    const d = by("name-dialog");
    const title = this.titled ?? "pattern";
    by("name").value = this.suggested ?? `${title.toLowerCase().normalize("NFKD").replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "") || "pattern"}.yaml`;
    by("name-where").textContent = `It goes into the folder ${this.folder}. Nothing is written over unasked.`;
    by("name-wrong").textContent = "";
    by("name-over").hidden = true;
    d.showModal();
    by("name").select();
    return new Promise((done) => { d.onclose = () => done(); });
  }

  // saveAs saves into the file of that name; with over, in the place of the one that has it.
  async saveAs(name, over = false) {
    const text = this.pattern.text;
    try {
      const a = await post("/api/save", { text, name, over, like: this.like });
      this.#saved(a.state, text);
      this.suggested = undefined;
      this.notices.drop("conflict");
      this.notices.drop("save");
      if (a.copied) this.notices.tell("copied", `Saved. The old ${a.state.name} is now ${a.copied}, beside it.`);
      by("name-dialog").close();
    } catch (e) {
      const taken = e.body?.taken;
      by("name-wrong").textContent = taken ? `There is a file ${taken} already. Take another name, or save over it: what is in it now is kept as a copy.` : e.message;
      by("name-over").hidden = !taken;
    }
  }

  // listen hears of changes on the disk, by way of one tab that all others hear.
  #listen() {
    const hear = async (s) => {
      if (s.silent) return this.notices.tell("gone", "The program does not answer. Go on if you like: your text is kept in this browser. Start Flatwright again and open the address that it prints.", "error");
      this.notices.drop("gone");
      if (this.#saving) await this.#saving;
      if (this.state.name && s.path !== undefined) this.#heard(s);
    };
    // a browser opens six ways to one program: all tabs share one for what is told
    const shared = new BroadcastChannel("flatwright-events");
    shared.onmessage = (e) => hear(e.data);
    const tell = (s) => {
      shared.postMessage(s);
      hear(s);
    };
    navigator.locks.request("flatwright-events", () => listen("/api/events", {
      opened: () => tell({}), lost: () => tell({ silent: true }), heard: tell,
    }));
  }

  async #heard(s) {
    if (s.path !== this.state.path) {
      this.notices.tell("moved", `${s.name} was opened in another tab. Save this pattern under a new name.`, "warning", ["Save under a name", () => this.askName()]);
      return;
    }
    if (s.gone) {
      for (const name of ["conflict", "read"]) this.notices.drop(name);
      this.notices.tell("missing", `${s.name} can’t be found or read any more. Your text is here; Save writes it again.`, "warning");
      return;
    }
    this.notices.drop("missing");
    if (s.mark === this.state.mark) return;
    const a = await get("/api/file");
    if (a.state.mark === this.state.mark) return;
    if (a.text === this.pattern.text) {
      this.#saved(a.state, a.text);
    } else if (!this.unsaved) {
      this.#take(a.state, a.text);
      this.notices.tell("read", `${s.name} was changed by another program or tab, and is shown as it is now. Undo brings back what was here.`);
    } else {
      this.#conflict(a.state, a.text);
    }
  }

  // show says which file this is and whether it is saved.
  show() {
    by("file").textContent = this.state.name || (this.model.startsWith("file ") ? this.model.slice(5) : this.model.startsWith("new-") ? "a new pattern" : "an example");
    by("file").title = this.state.path;
    const said = this.state.name ? (this.unsaved ? "not saved" : "saved") : "not in a file yet";
    if (by("saved").textContent !== said) by("saved").textContent = said;
    by("saved").classList.toggle("not", this.unsaved || !this.state.name);
    document.title = `${this.unsaved && this.state.name ? "● " : ""}${by("title").textContent} – Flatwright`;
  }
}

function read(storage, key) {
  try {
    return JSON.parse(storage.getItem(key)) ?? {};
  } catch {
    return {};
  }
}

// Notices are what a person is told beside her work, each until it does not hold any more.
export class Notices {
  tell(name, text, weight = "", ...buttons) {
    this.drop(name);
    const n = make("div", { class: `notice ${weight}`, "data-name": name }, make("p", {}, text),
      make("div", { class: "does" }, buttons.map(([label, does]) => make("button", { type: "button", onclick: does }, label)),
        make("button", { type: "button", class: "quiet", "aria-label": `Close: ${text}`, onclick: () => n.remove() }, "Close")));
    by("notices").append(n);
  }

  drop(name) {
    by("notices").querySelector(`[data-name="${name}"]`)?.remove();
  }
}
