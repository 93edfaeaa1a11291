// Over which nights a page sums up: one, the week that ends with it, or all.

import { html } from "./dom.mjs";
import { isKept } from "./reader.mjs";
import { UNKNOWN_DAY, longDay, shortDay } from "./words.mjs";

const OVER = [["night", "the night"], ["week", "the week"], ["all", "all nights"]];

/** Links between the three; none in a page that is a file of its own. */
export function overLinks(path, over) {
  if (isKept) return "";
  return html("nav", { "aria-label": "Over which nights" }, html("ul", { class: "turnover over" }, OVER.map(([name, words]) =>
    html("li", {}, html("a", { href: `${path}?over=${name}`, "aria-current": name === over ? "page" : null }, words)))));
}

/** "on Tuesday 24 November 2026", "from 19 to 25 November"; what a document's `from` and `to` say. */
export function overWords(told) {
  if (told.from === null || told.from === undefined) return "no night yet";
  if (told.to === UNKNOWN_DAY) return told.from === told.to ? "on a day not known yet" : `from ${longDay(told.from)} on`;
  return told.from === told.to ? `on ${longDay(told.to)}` : `from ${shortDay(told.from)} to ${longDay(told.to)}`;
}
