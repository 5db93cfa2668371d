// Downloads of everything.

import { post } from "./ask.js";
import { by, make, plural } from "./dom.js";

export function showDownloads(groups, question) {
  by("downloads").replaceChildren(...groups.map((g) => make("section", {}, make("h2", {}, g.title),
    make("ul", {}, g.all.map((d) => item(d, question))))));
}

function item(d, question) {
  const said = make("span", { role: "status", class: "said" });
  const button = make("button", { type: "button", "data-what": d.name, onclick: () => fetchIt(d, button, said, question()) }, d.title);
  return make("li", {}, button, " ", make("span", { class: "what" }, d.what), " ", said);
}

async function fetchIt(d, button, said, q) {
  if (button.getAttribute("aria-disabled") === "true") return;
  button.setAttribute("aria-disabled", "true");
  const slow = setTimeout(() => { said.textContent = "working…"; }, 300);
  said.className = "said";
  try {
    const r = await post("/api/download", { ...q, what: d.name });
    const name = fileName(r.headers.get("Content-Disposition")) || d.name;
    const url = URL.createObjectURL(await r.blob());
    const a = make("a", { href: url, download: name });
    document.body.append(a);
    a.click();
    a.remove();
    setTimeout(() => URL.revokeObjectURL(url), 60000);
    clearTimeout(slow);
    const wrong = Number(r.headers.get("Flatwright-Errors") ?? 0);
    said.textContent = `${name} is downloaded${wrong ? `, as far as it goes: the pattern has ${plural(wrong, "error")}, see the findings` : ""}.`;
  } catch (e) {
    clearTimeout(slow);
    said.className = "said wrong";
    said.textContent = e.message;
  } finally {
    button.removeAttribute("aria-disabled");
  }
}

function fileName(header) {
  const m = /filename\*=utf-8''([^;]+)|filename="?([^";]+)"?/i.exec(header ?? "");
  return m ? (m[1] ? decodeURIComponent(m[1]) : m[2]) : "";
}
