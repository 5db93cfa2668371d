// Tabs after the pattern of the ARIA Authoring Practices: one stop for the Tab key,
// arrows go from one to the next.

export function tabs(list, onshow = () => {}) {
  const all = [...list.querySelectorAll("[role=tab]")];
  const show = (tab, focus = false) => {
    for (const t of all) {
      const on = t === tab;
      t.setAttribute("aria-selected", String(on));
      t.tabIndex = on ? 0 : -1;
      document.getElementById(t.getAttribute("aria-controls")).hidden = !on;
    }
    if (focus) tab.focus();
    onshow(tab.id);
  };
  list.addEventListener("click", (e) => {
    const tab = e.target.closest("[role=tab]");
    if (tab) show(tab);
  });
  list.addEventListener("keydown", (e) => {
    const at = all.indexOf(document.activeElement);
    const to = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: all.length - 1 }[e.key];
    if (at < 0 || to === undefined) return;
    e.preventDefault();
    show(all[(to + all.length) % all.length], true);
  });
  return { show: (id) => show(document.getElementById(id)), shown: () => all.find((t) => t.getAttribute("aria-selected") === "true").id };
}
