// Reading the practice from the server that served this page.

async function read(path) {
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

/** One day's summary. */
export function readNight(day) {
  return read(`/api/nights/${encodeURIComponent(day)}`);
}

/** One day's solves, oldest first. */
export async function readSolvesOf(day) {
  return (await read(`/api/solves?day=${encodeURIComponent(day)}`)).solves;
}

/** One solve in full. */
export function readSolve(id) {
  return read(`/api/solves/${encodeURIComponent(id)}`);
}
