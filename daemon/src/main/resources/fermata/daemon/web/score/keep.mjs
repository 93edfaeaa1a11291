// Keeping a score: as a page in one file, and as one plain picture. What leaves is said before it does.

import { html } from "../page/dom.mjs";
import { isKept } from "../page/reader.mjs";
import { engrave } from "./engraving.mjs";
import { layOut } from "./layout.mjs";
import { plainSvg } from "./plain-svg.mjs";

/** Wide enough for a printed page, whatever the window is. */
const PICTURE_WIDTH = 1180;

/** The picture as text. It is engraved anew out of sight, because looks are known only inside a document. */
export function scorePicture(score, title, subtitle) {
  const hidden = html("div", { class: "unseen", "aria-hidden": "true" });
  document.body.append(hidden);
  try {
    const systems = engrave(score, layOut(score, PICTURE_WIDTH));
    hidden.append(...systems.map(({ picture }) => picture));
    return plainSvg(systems, title, subtitle);
  } finally {
    hidden.remove();
  }
}

export function keeping(score, title, subtitle) {
  const name = `solve-${score.shown.id}`;
  const picture = html("button", { type: "button", class: "plain" }, "as a picture (SVG)");
  picture.addEventListener("click", () => {
    const address = URL.createObjectURL(new Blob([scorePicture(score, title, subtitle)], { type: "image/svg+xml" }));
    html("a", { href: address, download: `${name}.svg` }).click();
    setTimeout(() => URL.revokeObjectURL(address), 10_000);
  });
  const file = isKept ? null : html("a", { href: `/kept/${encodeURIComponent(score.shown.id)}.html`, download: `${name}.html` }, "as a page in one file (HTML)");
  return html("div", { class: "keeping" },
    html("p", {}, "This score ", file, file ? " or " : "", picture, "."),
    html("p", { class: "quiet small" }, "It holds this solve: its turns and times, the date, the hand and the scramble; no device's address and no notes."));
}
