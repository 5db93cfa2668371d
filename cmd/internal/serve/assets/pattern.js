// The text of the pattern as it is on the page, with its history. Everything
// that changes it goes through change; everyone who shows it listens.

const together = 700; // ms: a hand that rests longer goes on with another thing, but never within a word

export class Pattern extends EventTarget {
  text = "";
  back = [];
  ahead = [];
  #last = { kind: "" };

  // change sets the text. from says who did, so that it need not show it again; hand, what was typed, of which what is typed in
  // one go is undone together; its late, that it belongs to what was typed before it however long ago.
  change(text, { hand = { kind: "" }, from = "", caret = null } = {}) {
    if (text === this.text) return;
    const was = this.#last;
    const joins = hand.kind !== "" && hand.kind === was.kind && (hand.late || hand.from - was.at < together || oneWord(was, hand)) && this.back.length > 0;
    if (!joins) {
      this.back.push({ text: this.text, caret: this.caret?.() ?? null });
      if (this.back.length > 500) this.back.shift();
    }
    this.#last = { ...hand, grows: was.kind === hand.kind ? hand.caret > was.caret : undefined };
    this.ahead = [];
    this.text = text;
    this.#tell({ from, caret });
  }

  // begin shows another text, and forgets the history.
  begin(text) {
    this.text = text;
    this.back = [];
    this.ahead = [];
    this.#last = { kind: "" };
    this.#tell({ from: "", caret: 0, fresh: true });
  }

  undo() { this.#step(this.back, this.ahead); }
  redo() { this.#step(this.ahead, this.back); }

  #step(from, to) {
    const was = from.pop();
    if (!was) return;
    to.push({ text: this.text, caret: this.caret?.() ?? null });
    this.#last = { kind: "" };
    this.text = was.text;
    this.#tell({ from: "", caret: was.caret });
  }

  #tell(detail) { this.dispatchEvent(new CustomEvent("change", { detail })); }
}

// typed is what a key has just made of an input, and when: from its first key, at its last, if several are taken at once.
export function typed(kind, { value, selectionStart }) {
  const at = performance.now();
  return { kind, value, caret: selectionStart ?? 0, from: at, at };
}

// oneWord reports whether keys go on from where those before left the caret, either way, and begin no other word.
function oneWord(was, is) {
  const grows = is.caret > was.caret;
  if (was.value?.slice(was.caret) !== is.value?.slice(is.caret) || grows !== (was.grows ?? grows)) return false;
  const [short, full] = [was, is].map((h) => h.value.slice(0, h.caret)).sort((a, b) => a.length - b.length);
  return full.startsWith(short) && !/\s\S/.test(full.slice(Math.max(0, short.length - 1)));
}
