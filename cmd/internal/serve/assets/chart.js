// The stitch charts of the size, drawn when they are looked at.

import { sheet } from "./alter.js";
import { post } from "./ask.js";
import { by } from "./dom.js";

let shown = ""; // what the charts were drawn from
let asked = null;

export async function showCharts(question) {
  const key = JSON.stringify(question);
  if (key === shown) return;
  asked?.abort();
  const mine = (asked = new AbortController());
  const slow = setTimeout(() => say("Drawing…"), 1000);
  try {
    const a = await post("/api/chart", question, mine.signal);
    if (mine !== asked) return;
    shown = key;
    say(a.pages.length ? "" : a.why || "There are no rows to chart.");
    if (a.pages.length) by("charts").replaceChildren(...a.pages.map(sheet));
    by("charts").classList.toggle("old", a.pages.length === 0);
  } catch (e) {
    if (e.name !== "AbortError") say(e.message);
  } finally {
    clearTimeout(slow);
  }
}

function say(text) {
  if (by("chart-why").textContent !== text) by("chart-why").textContent = text;
}
