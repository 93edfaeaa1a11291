// Asking the board to change something: a POST that names the token which only a page of the board can read.

let token = null;

/** Sends a POST and gives the answer's document; `attempt` names this browser's attempt to be paired. */
export async function post(path, attempt = "") {
  token ??= (await (await fetch("/api/session", { cache: "no-store" })).json()).token;
  const response = await fetch(path, { method: "POST", headers: { "X-Fermata-Token": token, "X-Fermata-Attempt": attempt } });
  const document = await response.json();
  // The board was started anew, or this browser's pairing changed: the next try asks again.
  if (response.status === 403) token = null;
  if (!response.ok) throw new Error(document.error ?? `The board answered ${response.status}.`);
  return document;
}
