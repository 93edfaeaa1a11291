// What the solver chose on these pages, remembered by this browser alone; the board is told nothing of it.

const PREFIX = "fermata-";

/** What was chosen last, or what is usual where nothing was or where the browser lets no page remember. */
export function kept(name, usually) {
  try {
    const chosen = localStorage.getItem(PREFIX + name);
    return chosen === null ? usually : chosen === "yes";
  } catch {
    return usually;
  }
}

/** Remembers a choice; where the browser forbids it, the choice holds until the page is left. */
export function keep(name, chosen) {
  try {
    localStorage.setItem(PREFIX + name, chosen ? "yes" : "no");
  } catch {
    // A browser that keeps nothing was told to.
  }
}
