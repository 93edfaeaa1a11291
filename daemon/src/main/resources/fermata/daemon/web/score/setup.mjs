// 'Set me up here': the turns that bring a solved cube to this very position.

import { html } from "../page/dom.mjs";
import { readSetup } from "../page/reader.mjs";
import { count } from "../page/words.mjs";
import { holdInWords } from "./score-words.mjs";

/** A button, and the place where its answer stands until the cursor moves on. */
export function setupHere(score, transport) {
  const words = html("p", { class: "setup", "aria-live": "polite" });
  const ask = html("button", { type: "button", class: "plain" }, "set me up here");
  let asked = null;
  ask.addEventListener("click", async () => {
    transport.pause();
    const { position } = transport.now();
    asked = position;
    words.replaceChildren("Working it out \u2026");
    try {
      const { setup } = await readSetup(score.shown.id, position);
      if (asked === position) words.replaceChildren(...answer(score, position, setup));
    } catch (error) {
      words.replaceChildren(error.message);
    }
  });
  transport.listen(({ position }) => {
    if (asked === null || position === asked) return;
    asked = null;
    words.replaceChildren();
  });
  return { ask, words };
}

function answer(score, position, setup) {
  const { U, F } = score.colours;
  if (setup === "") return ["The cube is solved here."];
  const turns = html("code", { class: "turns", tabindex: 0 }, setup);
  const copy = html("button", { type: "button", class: "plain" }, "copy");
  copy.addEventListener("click", () => copied(turns, setup, copy));
  return [`After ${count(position, "turn")}. Solved, ${U} up, ${F} in front: `, turns, ` then hold ${holdInWords(score, position)}. `, copy];
}

/** Where the clipboard is closed to plain addresses the turns are selected, so that they can be copied by hand. */
async function copied(turns, setup, button) {
  try {
    await navigator.clipboard.writeText(setup);
    button.textContent = "copied";
  } catch {
    getSelection().selectAllChildren(turns);
    button.textContent = "selected: copy it";
  }
}
