// Links to moments: from a sentence or a case to where it can be seen in a score.

import { html } from "./dom.mjs";
import { isKept } from "./reader.mjs";
import { seconds } from "./words.mjs";

/** The address of a moment of a solve. */
const momentAddress = ({ id, at_us: at }) => `/solves/${encodeURIComponent(id)}#t=${seconds(at)}`;

/** The address of a span of a solve, {id, from_us, to_us}. */
export const spanAddress = ({ id, from_us: from, to_us: to }) => `/solves/${encodeURIComponent(id)}#t=${seconds(from)}-${seconds(to)}`;

/** "see it at 3.21 s, 12.40 s", each a link; nothing if there are no examples. */
export function momentLinks(examples) {
  // A page that is a file of its own has no scores to open.
  if (examples.length === 0 || isKept) return null;
  const links = examples.map((example) => html("a", { href: momentAddress(example), "aria-label": `Score of ${example.id} at ${seconds(example.at_us)} s` }, `${seconds(example.at_us)} s`));
  return html("p", { class: "moments" }, "see it at ", ...links.flatMap((link, index) => (index === 0 ? [link] : [", ", link])));
}
