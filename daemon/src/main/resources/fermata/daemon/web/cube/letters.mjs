// Letters on stickers: there, unless whoever reads with this browser has put them away.

import { chosen, remember } from "../page/choices.mjs";
import { html } from "../page/dom.mjs";

/** Shows or hides the letters of every cube of the page, as was chosen. */
export const showLetters = () => document.documentElement.classList.toggle("letterless", !chosen("letters", true));

/** A box to put them away, or back. */
export function lettersChoice() {
  const box = html("input", { type: "checkbox", name: "letters", checked: chosen("letters", true) });
  box.addEventListener("change", () => {
    remember("letters", box.checked);
    showLetters();
  });
  return html("label", { class: "choice" }, box, html("span", {}, "letters on stickers: W white, Y yellow, O orange, R red, G green, B blue"));
}
