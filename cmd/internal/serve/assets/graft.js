// Putting a fresh tree in the place of an old one around the field that has the focus.

// graft gives old the children of fresh, but leaves the field of focused in its place, untouched.
// It reports false, and has done nothing, if nothing is typed there or fresh has no place for it.
// A field that fresh shows in another way is marked as kept: it is for the caller to show it anew
// when the focus leaves it.
export function graft(old, fresh, focused) {
  const field = focused.matches("input:not([type=radio], [type=checkbox]), select") ? focused.closest(".more") ?? focused.closest(".field") : null;
  if (!field) return false;
  const way = [];
  for (let e = field; e !== old; e = e.parentElement) way.unshift(e);
  const pairs = [];
  for (let at = fresh, from = old; way.length > pairs.length;) {
    const e = way[pairs.length];
    const like = counterpart(e, from, at);
    if (!like) return false;
    pairs.push([e, like]);
    [at, from] = [like, e];
  }
  field.kept = field.dataset.how !== pairs.at(-1)[1].dataset.how;
  for (const [e, like] of pairs) {
    const [before, after] = [[], []];
    for (let n = like.previousSibling; n; n = n.previousSibling) before.unshift(n);
    for (let n = like.nextSibling; n; n = n.nextSibling) after.push(n);
    while (e.previousSibling) e.previousSibling.remove();
    while (e.nextSibling) e.nextSibling.remove();
    e.before(...before);
    e.after(...after);
    if (e !== field) for (const a of like.attributes) e.setAttribute(a.name, a.value);
  }
  const like = pairs.at(-1)[1];
  if (field.matches(".more") && !field.querySelector(".field")) renew(field, like);
  else if (!field.kept) rename(field, like);
  return true;
}

// renew puts a list of what can be added in the place of one that asks for nothing yet: it may offer other things, elsewhere.
function renew(field, like) {
  const [was, is] = [field, like].map((e) => e.querySelector("select"));
  is.value = was.value;
  field.replaceWith(like);
  is.focus({ preventScroll: true });
}

// rename calls what is in a field what its like calls it.
function rename(field, like) {
  const names = like.querySelectorAll("[aria-label]");
  field.querySelectorAll("[aria-label]").forEach((e, i) => { if (names[i]) e.setAttribute("aria-label", names[i].getAttribute("aria-label")); });
}

// counterpart is the child of fresh that is what e is in old.
function counterpart(e, old, fresh) {
  const like = (c) => c.tagName === e.tagName && ["path", "field", "adder"].every((k) => c.dataset[k] === e.dataset[k]);
  const all = [...fresh.children].filter(like);
  return all[[...old.children].filter(like).indexOf(e)];
}
