// A list of what can be added. What needs a value, or a name and a value, asks for it
// where it stands.

import { listOf, make } from "./dom.js";

let last = 0;

// adder calls add(kind, value, name, input) for the kind that was chosen.
export function adder(title, label, kinds, add) {
  const box = make("span", { class: "more", "data-adder": label });
  let keyed = false; // keys walk through a list: what they pass is not yet chosen
  const choose = make("select", { class: "quiet", "aria-label": label,
    onpointerdown: () => { keyed = false; },
    onkeydown: (e) => {
      keyed = e.key !== "Tab";
      if (e.key === "Enter" && choose.value !== "") {
        e.preventDefault();
        take();
      }
    },
    onchange: () => {
      const k = kinds.find((c) => c.name === choose.value);
      if (!keyed) return take();
      go.hidden = !k;
      go.setAttribute("aria-label", `${label}: ${k?.name}`);
    } }, make("option", { value: "" }, title), kinds.map((k) => make("option", { value: k.name, title: k.what }, k.name)));

  const go = make("button", { type: "button", class: "quiet", hidden: true, onclick: () => take() }, "add");

  function take() {
    const k = kinds.find((c) => c.name === choose.value);
    choose.value = "";
    go.hidden = true;
    if (k) pick(k);
  }

  function pick(k) {
    if (k.none) return add(k, "", "");
    let given = ""; // what Enter chose: leaving the list reports it a second time
    const put = () => {
      const v = value.value.trim();
      const n = named?.value.trim() ?? "";
      if (v === given && value.matches("select")) return;
      given = v;
      if (v !== "" && (!named || n !== "")) add(k, v, n, value);
      else if (n !== "") value.focus(); // Enter in the name asks for the value
    };
    const named = k.named ? field("name", [], put, k.names) : null;
    const value = field(k.named ? "value" : k.ask || k.name, k.pick ?? [], put, k.named ? null : k.names);
    box.replaceChildren(choose, go, ...(named ? [named.row] : []), value.row, make("span", { class: "what" }, k.what));
    (named ?? value).focus();
  }

  // field is a labelled input, or a list of words, that calls done when it has a value.
  function field(name, words, done, names) {
    const id = `a${++last}`;
    const input = words.length ? make("select", { id }, make("option", { value: "" }, "choose…"), words.map((w) => make("option", {}, w))) : make("input", { id, size: 24, list: listOf(names) });
    input.addEventListener("change", done);
    if (words.length) input.addEventListener("keydown", (e) => { if (e.key === "Enter") { e.preventDefault(); done(); } });
    input.row = make("span", { class: "field" }, make("label", { class: "key", for: id }, name), make("span", { class: "value" }, input));
    return input;
  }

  box.append(choose, go);
  return box;
}
