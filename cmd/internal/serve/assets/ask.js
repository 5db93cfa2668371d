// Questions to the program that serves the page.

export class Refused extends Error {
  constructor(message, status, body) {
    super(message);
    this.status = status;
    this.body = body;
  }
}

async function answer(response) {
  if (response.headers.get("Content-Type")?.startsWith("application/json")) {
    const body = await response.json();
    if (!response.ok) throw new Refused(body.error || "It did not work.", response.status, body);
    return body;
  }
  if (!response.ok) throw new Refused((await response.text()).trim(), response.status);
  return response;
}

// The key that lets this page in stays in the storage of its own origin, for its other tabs.
const stored = "flatwright-key";
let key = "";

// enter changes the key of the address, which serves once, for the one that the page keeps.
export async function enter() {
  try {
    key = localStorage.getItem(stored) ?? "";
  } catch {
    // a browser that keeps nothing
  }
  const once = location.hash.startsWith("#open=") ? location.hash.slice("#open=".length) : "";
  if (!once) return;
  history.replaceState(null, "", location.pathname);
  try {
    key = (await post("/api/open", { once })).key;
  } catch (e) {
    if (!key || e.status !== 403) throw e; // used already, in another tab
    return;
  }
  try {
    localStorage.setItem(stored, key);
  } catch {
    // then it is this tab's alone
  }
}

const headers = () => ({ "Flatwright-Key": key });

// ask is a fetch whose failure can be told from a fault of the page's own.
async function ask(path, options) {
  try {
    return await fetch(path, options);
  } catch (e) {
    e.unanswered = true;
    throw e;
  }
}

// tellFault tells the browser's console of an error that is the page's own.
export function tellFault(e) {
  if (!e.unanswered && e.name !== "AbortError" && !(e instanceof Refused)) reportError(e);
}

export const get = async (path) => answer(await ask(path, { headers: headers() }));

export const post = async (path, question, signal) =>
  answer(await ask(path, {
    method: "POST", signal, headers: { ...headers(), "Content-Type": "application/json" }, body: JSON.stringify(question),
  }));

// listen calls heard with every event of a stream; opened when it begins, lost when it ends, after
// which it begins anew.
export async function listen(path, { opened, heard, lost }) {
  for (;;) {
    try {
      const response = await answer(await fetch(path, { headers: headers() }));
      opened();
      const reader = response.body.pipeThrough(new TextDecoderStream()).getReader();
      let text = "";
      for (;;) {
        const { done, value } = await reader.read();
        if (done) break;
        const events = (text + value).split("\n\n");
        text = events.pop();
        for (const e of events) if (e.startsWith("data: ")) await heard(JSON.parse(e.slice("data: ".length)));
      }
    } catch {
      // it is asked again
    }
    lost();
    await new Promise((again) => { setTimeout(again, 2000); });
  }
}
