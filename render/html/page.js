// A link opens one size and unit (#size=M&unit=cm), and what is ticked stays ticked.
// Without it the page does all else.
(() => {
  const page = document.getElementById("@");
  if (!page) return;
  const radios = [...page.querySelectorAll("input[type=radio]")];
  const word = (i) => i.name.slice("@-".length);
  const open = () => {
    const q = new URLSearchParams(location.hash.slice(1));
    for (const i of radios) if (q.get(word(i)) === i.value) i.checked = true;
  };
  let ticked = [];
  try { ticked = JSON.parse(localStorage.getItem("@ticks")) || []; } catch {}
  const boxes = [...page.querySelectorAll("input[type=checkbox]")];
  for (const b of boxes) if (ticked.includes(b.id)) b.checked = true;
  page.addEventListener("change", (e) => {
    if (e.target.type === "checkbox") {
      try { localStorage.setItem("@ticks", JSON.stringify(boxes.filter((b) => b.checked).map((b) => b.id))); } catch {}
    } else if (/^#?$|^#(size|unit)=/.test(location.hash)) {
      const q = new URLSearchParams();
      for (const i of radios) if (i.checked && i.value) q.set(word(i), i.value);
      try { history.replaceState(null, "", "#" + q); } catch {}
    }
  });
  // that something goes on to the right is said where it does
  const goesOn = [["on", "figure"], ["more", "section.@-wide"]];
  const fits = () => {
    for (const [said, of] of goesOn) {
      const wide = [...page.querySelectorAll(of)].some((e) => e.scrollWidth > e.clientWidth + 1);
      for (const e of page.querySelectorAll(".@-" + said)) e.classList.toggle("@-fits", !wide);
    }
  };
  addEventListener("resize", fits);
  page.addEventListener("change", fits);
  addEventListener("hashchange", () => { open(); fits(); });
  open();
  fits();
})();
