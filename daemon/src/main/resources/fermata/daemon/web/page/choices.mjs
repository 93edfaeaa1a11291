// What the solver chose on these pages, remembered by this browser alone; the board is told nothing of it.

const PREFIX = "fermata-";

/** What was chosen last, or what is usual where nothing was or where the browser lets no page remember. */
export function chosen(name, usually) {
  try {
    const remembered = localStorage.getItem(PREFIX + name);
    return remembered === null ? usually : remembered === "yes";
  } catch {
    return usually;
  }
}

/** Remembers a choice; where the browser forbids it, the choice holds until the page is left. */
export function remember(name, isChosen) {
  try {
    localStorage.setItem(PREFIX + name, isChosen ? "yes" : "no");
  } catch {
    // A browser that keeps nothing was told to.
  }
}
