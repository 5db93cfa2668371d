// The page: brings the pattern, its form and text, the drawing and the file together.

import { Alter } from "./alter.js";
import { enter, get, post, tellFault } from "./ask.js";
import { showCharts } from "./chart.js";
import { by, make, showNames } from "./dom.js";
import { Editor } from "./editor.js";
import { File, Notices } from "./file.js";
import { Findings } from "./findings.js";
import { Form } from "./form.js";
import { showDownloads } from "./keep.js";
import { Look, showSizes } from "./look.js";
import { Pattern } from "./pattern.js";
import { Rows } from "./rows.js";
import { showTable } from "./table.js";
import { tabs } from "./tabs.js";

const pattern = new Pattern();
// the drawing is asked for before anything else that a change does
pattern.addEventListener("change", (e) => {
  if (e.detail.fresh) anew();
  look.ask();
});
const notices = new Notices();
const file = new File(pattern, notices);
const editor = new Editor(pattern, by("editor"));

// anew shows nothing of the pattern before, in case this one can't be read.
function anew() {
  size = "";
  look.forget();
  showSizes([], "");
  by("table").replaceChildren();
  by("title").textContent = file.titled ?? "A pattern";
}

let size = ""; // the one that is drawn
let found = [];

const choices = () => ({
  size,
  units: document.querySelector("[name=units]:checked").value,
  labels: by("labels").value,
  paper: by("paper").value,
  large: by("large").checked,
  little: by("little").checked,
});

// beside are choices that the drawing takes no part in.
const beside = () => ({
  leftHanded: by("left-handed").checked,
  squares: by("squares").checked,
  whole: by("whole").checked,
  mistake: Math.max(1, Math.trunc(Number(by("mistake").value)) || 1),
  ...alter.chosen(),
});

const alter = new Alter(() => ({ text: pattern.text, ...choices() }));
const look = new Look(pattern, choices, () => file.draft());
const form = new Form(pattern, look, (line) => inText({ line, col: 1, endCol: 1 }));
const rows = new Rows(pattern, () => size);
const findings = new Findings((f) => {
  side("pattern");
  if (f.rows) {
    left.show("tab-rows");
    if (f.sizes && !f.sizes.includes(rows.chosen)) rows.choose(f.sizes[0]);
    rows.editor.goTo(f.line, f.col, f.endCol);
    return;
  }
  if (left.shown() === "tab-form" && form.show(f.line)) return;
  inText(f);
});

const left = tabs(by("pattern-tabs"), (id) => {
  if (id === "tab-form") form.refresh();
  steps();
  by("here").textContent = "";
  chart();
});
rows.addEventListener("read", () => {
  findings.show([...found, ...rows.found]);
  chart();
});
rows.addEventListener("section", () => chart());
tabs(by("result-tabs"), (id) => {
  by("zoom").hidden = id !== "tab-drawing";
  if (id === "tab-table") table();
  if (id === "tab-chart") chart();
  alter.show();
});

function inText(f) {
  side("pattern");
  left.show("tab-text");
  editor.goTo(f.line, f.col, f.endCol);
}

function table() {
  if (look.last && !by("panel-table").hidden) showTable(look.last, size, choices().units);
}

function chart() {
  if (by("panel-chart").hidden) return;
  const own = !by("panel-rows").hidden && rows.text.text.trim() !== "";
  const { leftHanded, squares, whole } = beside();
  showCharts({ text: pattern.text, ...choices(), leftHanded, squares, whole, ...(own ? { rows: rows.text.text, section: rows.section, size: rows.chosen } : {}) });
}

const seen = {}; // how far down each side was

// side shows one side where there is no room for both.
function side(name) {
  const was = document.body.dataset.side;
  seen[was] = scrollY;
  document.body.dataset.side = name;
  if (was !== name) scrollTo({ top: seen[name] ?? 0, behavior: "instant" });
  by("show-pattern").setAttribute("aria-pressed", String(name === "pattern"));
  by("show-drawing").setAttribute("aria-pressed", String(name === "drawing"));
}

function pick(s) {
  size = s;
  form.choose(s);
  table();
  alter.names(look.last?.names, look.last?.sizes ?? [], s);
  look.ask();
}

// edited is the text that is shown, which an undo is of.
const edited = () => left.shown() === "tab-rows" ? rows.text : pattern;

function steps() {
  by("undo").disabled = edited().back.length === 0;
  by("redo").disabled = edited().ahead.length === 0;
}
for (const text of [pattern, rows.text]) text.addEventListener("change", steps);

look.addEventListener("look", (e) => {
  const a = e.detail;
  if (a.title && by("title").textContent !== a.title) {
    by("title").textContent = a.title;
    file.show();
  }
  if (a.readable) {
    if (!a.sizes.includes(size)) size = a.sizes.includes(a.drawing) ? a.drawing : a.sample || a.sizes[0];
    showSizes(a.sizes, size, (ev) => pick(ev.target.value));
    form.choose(size);
    alter.names(a.names, a.sizes, size);
  }
  showNames(a.names);
  found = a.findings;
  findings.show([...found, ...rows.found]);
  const here = found.filter((f) => !f.file);
  editor.mark(here);
  form.mark(here);
  // the drawing first, the rest once it is on the screen
  requestAnimationFrame(() => setTimeout(() => {
    table();
    chart();
    alter.show();
    if (left.shown() === "tab-form") form.refresh().catch(tellFault);
  }));
});

by("units").addEventListener("change", () => { table(); look.ask(); });
for (const id of ["labels", "paper", "large"]) by(id).addEventListener("change", () => look.ask());
for (const id of ["left-handed", "squares", "whole"]) by(id).addEventListener("change", () => chart());
by("zoom-in").onclick = () => look.zoom(1.25);
by("zoom-out").onclick = () => look.zoom(0.8);
by("zoom-fit").onclick = () => look.zoom(0);
by("undo").onclick = () => form.after(() => edited().undo());
by("redo").onclick = () => form.after(() => edited().redo());
by("save").onclick = () => file.save();
by("show-pattern").onclick = () => side("pattern");
by("show-drawing").onclick = () => side("drawing");
by("name-cancel").onclick = () => by("name-dialog").close();
by("name-over").onclick = () => file.saveAs(by("name").value, true);
by("name-form").addEventListener("submit", (e) => {
  e.preventDefault();
  file.saveAs(by("name").value);
});

document.addEventListener("keydown", (e) => {
  const control = e.ctrlKey || e.metaKey;
  const low = e.key.toLowerCase();
  if (control && low === "s") {
    e.preventDefault();
    file.save();
  } else if (e.key === "F8") {
    e.preventDefault();
    findings.step(e.shiftKey ? -1 : 1);
  } else if (control && (low === "z" || low === "y") && !by("name-dialog").open) {
    e.preventDefault();
    form.after(() => {
      const of = edited();
      if (low === "y" || e.shiftKey) of.redo();
      else if (!form.takeBack(document.activeElement)) of.undo();
    });
  }
});

function opening(a) {
  const item = (m) => make("li", {}, make("button", { type: "button", "data-model": m.name, onclick: async () => {
    by("open-dialog").close();
    await file.openModel(m.name);
  } }, make("span", { class: "picture", "aria-hidden": "true", "data-of": m.name }), make("span", {}, m.title)));
  by("starters").replaceChildren(...a.starters.map(item));
  by("examples").replaceChildren(...a.examples.map(item));
  by("open").onclick = () => {
    by("open-hint").textContent = file.unsaved ? "What is not saved stays in this browser, and is back when you open this pattern again." : "";
    by("own-file").replaceChildren(...(!file.state.name && own ? [make("p", {}, make("button", { type: "button", onclick: async () => {
      by("open-dialog").close();
      await file.openFile();
    } }, `Back to ${own}`))] : []));
    by("open-dialog").showModal();
    pictures();
  };
  let own = a.state.name;
  // pictures draws what there is to begin with, one after the other, once the list is looked at
  let drawn = false;
  const pictures = async () => {
    if (drawn) return;
    drawn = true;
    for (const e of document.querySelectorAll("#open-dialog [data-of]")) {
      try {
        const { svg } = await get(`/api/picture/${encodeURIComponent(e.dataset.of)}`);
        const t = document.createElement("template");
        // from the program's own writer, which lets no text of a pattern be anything but text
        t.innerHTML = `<div class="sheets"><div class="page">${svg}</div></div>`;
        e.attachShadow({ mode: "open" }).append(make("link", { rel: "stylesheet", href: "/assets/drawing.css" }), t.content);
      } catch {
        e.remove(); // a picture more or less
      }
    }
  };
  by("from-disk").addEventListener("change", async (e) => {
    const [f] = e.target.files;
    if (!f) return;
    for (const name of ["large", "encoding"]) notices.drop(name);
    if (f.size > 1 << 20) {
      notices.tell("large", `${f.name} is larger than 1 MiB, the most for a pattern.`, "error");
    } else {
      try {
        const words = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(await f.arrayBuffer());
        const like = (words.startsWith("\ufeff") ? "\ufeff" : "") + (/\r\n|\r|\n/.exec(words)?.[0] ?? "");
        if ((await post("/api/kind", { name: f.name, rows: words })).rows) return openRows(f.name, words);
        await file.openText(f.name, words.replace(/^\ufeff/, "").replace(/\r\n?/g, "\n"), like);
      } catch (err) {
        if (!(err instanceof TypeError)) throw err;
        notices.tell("encoding", `${f.name} is not UTF-8 text, and was not opened: letters would be lost. Save it as UTF-8 where it was written.`, "error");
      }
    }
    e.target.value = "";
    by("open-dialog").close();
  });
  const openRows = (name, words) => {
    by("from-disk").value = "";
    by("open-dialog").close();
    side("pattern");
    left.show("tab-rows");
    rows.show(name, words.replace(/^\ufeff/, "").replace(/\r\n?/g, "\n"));
  };
  by("rows-disk").addEventListener("change", async (e) => {
    const [f] = e.target.files;
    if (!f) return;
    try {
      openRows(f.name, new TextDecoder("utf-8", { fatal: true }).decode(await f.arrayBuffer()));
    } catch {
      notices.tell("encoding", `${f.name} is not UTF-8 text, and was not opened: letters would be lost.`, "error");
    }
    e.target.value = "";
  });
}

try {
  await enter();
  const a = await get("/api/start");
  form.entries = a.entries;
  showDownloads(a.downloads, () => ({ text: pattern.text, ...choices(), ...beside() }));
  opening(a);
  side("pattern");
  await file.begin(a);
  document.body.dataset.ready = "yes";
} catch (e) {
  notices.tell("start", `The pattern could not be opened: ${e.message}`, "error");
}
