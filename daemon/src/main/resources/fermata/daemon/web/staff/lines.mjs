// Two lines of music that are written while the cube is turned: a scramble to read, evenly spaced, and a solve, in true time.

import { px, svg } from "../page/dom.mjs";
import { bar, note, secondAt, staffLine } from "./marks.mjs";

const LAYERS = ["U", "R", "F", "D", "L", "B"];
const NAMES = 24;
const SPACE = 13;
const STAFF = SPACE * (LAYERS.length - 1);
const TOP = 26;
const WORD = 44;
const BELOW = 54;
const OSSIA = 0.78;

const y = (layer) => TOP + SPACE * LAYERS.indexOf(layer);
const picture = (width, height) => svg("svg", { class: "system", width: px(width), height: px(height), viewBox: `0 0 ${px(width)} ${px(height)}`, "aria-hidden": "true" });
const seen = (turn, index) => ({ seen: turn, index, repaired: false });

function staff(right, used) {
  return LAYERS.flatMap((layer) => staffLine(layer, used.has(layer), NAMES, right, y(layer)));
}

const barAt = (x, kind) => bar(x, TOP, TOP + STAFF, kind);

/**
 * A scramble as lines of music.
 *
 * @param scramble {turns, done, half, mending, astray}
 * @returns pictures, one a system; under the one at the cursor the turns that mend
 */
export function scrambleLines(scramble, width) {
  const room = width - NAMES - 22;
  const most = Math.max(4, Math.floor(room / (width < 600 ? 38 : 46)));
  const systems = Math.ceil(scramble.turns.length / most);
  const each = Math.ceil(scramble.turns.length / systems);
  const step = Math.min(58, room / each);
  return Array.from({ length: systems }, (_, index) => {
    const from = index * each;
    const turns = scramble.turns.slice(from, from + each);
    return scrambleSystem(scramble, turns, from, step, width, index === systems - 1);
  });
}

function scrambleSystem(scramble, turns, from, step, width, isLast) {
  const x = (index) => NAMES + 10 + step * (index + 0.5);
  const right = NAMES + 10 + step * turns.length + (isLast ? 8 : 0);
  const at = scramble.done - from;
  const isHere = !scramble.astray && at >= 0 && at < turns.length;
  const mends = isHere && scramble.mending.length > 0;
  const drawn = picture(width, TOP + STAFF + BELOW + (mends ? 89 : 0));
  if (isHere) drawn.append(cursorAt(x(at), y(turns[at][0])));
  drawn.append(...staff(right, new Set(turns.map((turn) => turn[0]))), barAt(NAMES));
  if (isLast) drawn.append(barAt(right - 5), barAt(right, "bar final"));
  turns.forEach((turn, index) => {
    const kind = index < at ? "past" : index === at && isHere ? "now" : "";
    const mark = note(seen(turn, from + index), x(index), y(turn[0]));
    if (kind) mark.classList.add(kind);
    drawn.append(mark, svg("text", { class: `word ${kind}`, x: px(x(index)), y: px(TOP + STAFF + WORD), "text-anchor": "middle" }, turn));
  });
  if (isHere && scramble.half) drawn.append(svg("text", { class: "again", x: px(x(at)), y: px(TOP + STAFF + WORD + 16), "text-anchor": "middle" }, "once more"));
  if (mends) drawn.append(ossia(scramble.mending, x(at), width));
  return drawn;
}

/** A line let down to the next note from above, where no stem reaches: under the staff it would meet stems and words. */
function cursorAt(x, head) {
  return svg("g", { class: "cursor" },
    svg("path", { class: "line", d: `M${px(x)} 4V${px(head - 7)}` }),
    svg("path", { class: "foot", d: `M${px(x - 5)} 0h10l-5 8Z` }));
}

/** A small staff under the line, as music prints another way to play: what takes the wrong turn back. */
function ossia(mending, under, width) {
  const step = 44;
  const length = 14 + step * mending.length;
  // Its first note stands under the cursor, unless the line ends there.
  const left = Math.max(NAMES, Math.min(under - (7 + step / 2) * OSSIA, width - length * OSSIA - 6));
  const group = svg("g", { class: "ossia", transform: `translate(${px(left)} ${px(TOP + STAFF + BELOW - 8)}) scale(${OSSIA})` });
  const own = (layer) => 12 + SPACE * 0.7 * LAYERS.indexOf(layer);
  const bottom = own("B");
  for (const layer of LAYERS) group.append(svg("path", { class: "staff", d: `M0 ${px(own(layer))}H${px(length)}` }));
  group.append(svg("path", { class: "bar", d: `M0 ${px(own("U") - 4)}V${px(bottom + 4)}M${px(length)} ${px(own("U") - 4)}V${px(bottom + 4)}` }));
  mending.forEach((turn, index) => {
    const x = 7 + step * (index + 0.5);
    group.append(note(seen(turn, -1), x, own(turn[0])), svg("text", { class: "word mend", x: px(x), y: px(bottom + 44), "text-anchor": "middle" }, turn));
  });
  return group;
}

/** The solve so far: its last turns in true time, the newest at the right once the line is full. */
export function solveLine(turns, width) {
  const perSecond = width < 600 ? 80 : 110;
  const first = turns[0]?.at_us ?? 0;
  const latest = turns.at(-1)?.at_us ?? 0;
  const room = width - NAMES - 60;
  const from = Math.max(first, latest - (room / perSecond) * 1e6);
  const shown = turns.filter((turn) => turn.at_us >= from);
  const x = (time) => NAMES + 22 + ((time - from) / 1e6) * perSecond;
  const drawn = picture(width, TOP + STAFF + BELOW);
  const right = width - 6;
  drawn.append(...staff(right, new Set(turns.map((turn) => turn.turn[0]))));
  if (from === first) drawn.append(barAt(NAMES));
  shown.forEach((turn, index) => drawn.append(note(seen(turn.turn, index), x(turn.at_us), y(turn.turn[0]))));
  const axis = svg("g", { class: "axis" }, svg("path", { d: `M${NAMES} ${px(TOP + STAFF + 26)}H${px(right)}` }));
  for (let second = Math.ceil((from - first) / 1e6); x(first + second * 1e6) < right - 8; second++) {
    const at = x(first + second * 1e6);
    axis.append(svg("path", { d: `M${px(at)} ${px(TOP + STAFF + 26)}v5` }), secondAt(second, at, TOP + STAFF + 44));
  }
  drawn.append(axis);
  return drawn;
}
