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

export const get = async (path) => answer(await fetch(path));

export const post = async (path, question, signal) =>
  answer(await fetch(path, {
    method: "POST", signal, headers: { "Content-Type": "application/json" }, body: JSON.stringify(question),
  }));
