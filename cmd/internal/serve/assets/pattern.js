// The text of the pattern as it is on the page, with its history. Everything
// that changes it goes through change; everyone who shows it listens.

const together = 700; // ms: changes of one kind so soon after each other are undone together

export class Pattern extends EventTarget {
  text = "";
  back = [];
  ahead = [];
  #last = { kind: "", at: 0 };

  // change sets the text. from says who did, so that it need not show it again; late, that it belongs to a change of its kind
  // however long ago that was.
  change(text, { kind = "", late = false, from = "", caret = null } = {}) {
    if (text === this.text) return;
    const now = performance.now();
    const joins = kind !== "" && kind === this.#last.kind && (late || now - this.#last.at < together) && this.back.length > 0;
    if (!joins) {
      this.back.push({ text: this.text, caret: this.caret?.() ?? null });
      if (this.back.length > 500) this.back.shift();
    }
    this.#last = { kind, at: now };
    this.ahead = [];
    this.text = text;
    this.#tell({ from, caret });
  }

  // begin shows another text, and forgets the history.
  begin(text) {
    this.text = text;
    this.back = [];
    this.ahead = [];
    this.#last = { kind: "", at: 0 };
    this.#tell({ from: "", caret: 0, fresh: true });
  }

  undo() { this.#step(this.back, this.ahead); }
  redo() { this.#step(this.ahead, this.back); }

  #step(from, to) {
    const was = from.pop();
    if (!was) return;
    to.push({ text: this.text, caret: this.caret?.() ?? null });
    this.#last = { kind: "", at: 0 };
    this.text = was.text;
    this.#tell({ from: "", caret: was.caret });
  }

  #tell(detail) { this.dispatchEvent(new CustomEvent("change", { detail })); }
}
