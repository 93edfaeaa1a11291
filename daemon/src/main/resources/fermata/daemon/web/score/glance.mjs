// What a sign says when it is pointed at or tapped: its doubt, its causes. By keyboard the line under the cursor says it.

import { html, px } from "../page/dom.mjs";

/** A line of words that stands by the sign under the pointer; give it a place in the page, and it follows the staves. */
export function glanceOver(staves) {
  const glance = html("p", { class: "glance", hidden: true, "aria-hidden": "true" });
  const show = (event) => {
    const sign = event.target.closest?.("[data-says]");
    glance.hidden = !sign || event.buttons === 1;
    if (glance.hidden) return;
    glance.textContent = sign.dataset.says;
    const box = sign.getBoundingClientRect();
    const frame = glance.offsetParent.getBoundingClientRect();
    const middle = box.left + Math.min(box.width, 60) / 2 - frame.left;
    glance.style.setProperty("--x", `${px(Math.max(0, Math.min(middle - glance.offsetWidth / 2, frame.width - glance.offsetWidth)))}px`);
    glance.style.setProperty("--y", `${px(box.bottom - frame.top + 6)}px`);
  };
  staves.addEventListener("pointerover", show);
  staves.addEventListener("click", show);
  staves.addEventListener("pointerleave", () => { glance.hidden = true; });
  addEventListener("keydown", () => { glance.hidden = true; });
  return glance;
}
