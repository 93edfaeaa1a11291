// Reading the practice: from the server that served this page, or, in a page kept as one file, from the file itself.

const kept = JSON.parse(document.getElementById("kept")?.textContent ?? "null");

/** Whether this page is a file of its own, which has no board to ask and no other pages to link to. */
export const isKept = kept !== null;

const address = new URL(kept?.path ?? location.pathname + location.search, "http://board");

/** The address by which the server knows this page. */
export const here = address.pathname;

/** What the address asks for under this name after its question mark, or null. */
export const asked = (name) => address.searchParams.get(name);

async function read(path) {
  if (kept !== null) {
    if (kept.documents[path]) return kept.documents[path];
    throw Object.assign(new Error("This file was kept without that."), { status: 404 });
  }
  let response;
  try {
    response = await fetch(path);
  } catch (failure) {
    throw new Error("The board does not answer. Is fermata still running there?", { cause: failure });
  }
  const document = await response.json();
  if (!response.ok) {
    const error = new Error(document.error ?? `The board answered ${response.status}.`);
    error.status = response.status;
    throw error;
  }
  return document;
}

/** The practice days, newest first: [{day, solves, best_us, mean_us}]. */
export async function readNights() {
  return (await read("/api/nights")).nights;
}

/** One day's summary, or that of the week or of all nights up to it. */
export function readNight(day, over) {
  return read(`/api/nights/${encodeURIComponent(day)}${over === "night" ? "" : `?over=${over}`}`);
}

/** The cases met over the latest night, the week to it, or all nights. */
export function readCases(over) {
  return read(`/api/cases?over=${over}`);
}

/** One day's solves, oldest first. */
export async function readSolvesOf(day) {
  return (await read(`/api/solves?day=${encodeURIComponent(day)}`)).solves;
}

/** All solves, oldest first. */
export async function readSolves() {
  return (await read("/api/solves")).solves;
}

/** One solve in full. */
export function readSolve(id) {
  return read(`/api/solves/${encodeURIComponent(id)}`);
}

/** The turns that bring a solved cube to where a solve is after so many turns: {id, turn, setup}. */
export function readSetup(id, turn) {
  return read(`/api/solves/${encodeURIComponent(id)}/setup?turn=${turn}`);
}
