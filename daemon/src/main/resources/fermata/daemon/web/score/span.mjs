// A selected span of a score: what it holds in figures, how it is shown on the staves, and the address that names it.

import { turnsInHtm } from "../cube/gestures.mjs";
import { positionAt, timeOf } from "../cube/solve.mjs";
import { px, svg } from "../page/dom.mjs";
import { count, percent, seconds } from "../page/words.mjs";
import { within } from "./layout.mjs";

/** {turns as heard, htm, micros, restShare, perSecond}; the last three null without a clock or a time. */
export function spanFigures(score, { from, to }) {
  const start = timeOf(score, from);
  const end = timeOf(score, to);
  const htm = turnsInHtm(score.gestures.filter((one) => one.first < to && one.last >= from));
  const rested = score.rests.reduce((sum, one) => sum + Math.max(0, Math.min(end, one.start_us + one.length_us) - Math.max(start, one.start_us)), 0);
  const timed = score.timed && end > start;
  return {
    turns: to - from, htm, micros: timed ? end - start : null,
    restShare: timed ? rested / (end - start) : null, perSecond: timed ? htm / ((end - start) / 1e6) : null,
  };
}

/** "turns 9 to 21: 13 turns, 12 in HTM, 3.20 s, 31 % rest, 3.8 turns a second". */
export function spanInWords(score, span) {
  const { turns, htm, micros, restShare, perSecond } = spanFigures(score, span);
  const which = turns === 1 ? `turn ${span.to}` : `turns ${span.from + 1} to ${span.to}`;
  const figures = [turns > 1 || htm !== turns ? `${count(htm, "turn")} in HTM` : count(turns, "turn"),
    micros === null ? null : `${seconds(micros)} s`, restShare === null ? null : `${percent(restShare)} rest`,
    perSecond === null ? null : `${perSecond.toFixed(1)} turns a second`];
  return `${which}: ${figures.filter(Boolean).join(", ")}`;
}

/** Shows the span on the systems that it touches. */
export function drawSpan(score, layout, systems, span) {
  systems.forEach(({ span: group, top, bottom }, index) => {
    const system = layout.systems[index];
    const start = span && (span.from === 0 ? 0 : timeOf(score, span.from));
    const part = span && within(system, start, Math.max(timeOf(score, span.to), start + 1));
    if (!part) {
      group.replaceChildren();
      return;
    }
    const left = span.from === 0 && part.begins ? system.left : system.x(part.start) - (part.begins ? 0 : 16);
    const right = Math.min(system.right, system.x(part.end));
    const end = (x, is) => (is ? `M${px(x)} ${px(top - 10)}V${px(bottom + 10)}` : "");
    group.replaceChildren(
      svg("rect", { class: "chosen", x: px(left), y: px(top - 10), width: px(Math.max(1, right - left)), height: px(bottom - top + 20) }),
      svg("path", { class: "edge", d: end(left, part.begins) + end(right, part.ends) }));
  });
}

/** The address of a moment or a span: #t=12.34, #t=3.20-5.60; by turns where there is no clock. */
export function momentHash(score, position, span = null) {
  const name = (at) => (score.timed ? seconds(timeOf(score, at)) : String(at));
  const place = span === null ? name(position) : `${name(span.from)}-${name(span.to)}`;
  return `#${score.timed ? "t" : "turn"}=${place}`;
}

/** Goes where an address says; to the start if it says nothing that can be understood. */
export function followAddress(score, transport, hash) {
  const [, name, from, to] = hash.match(/^#(t|turn)=(\d+(?:\.\d+)?)(?:-(\d+(?:\.\d+)?))?$/) ?? [];
  // An address is cut to the hundredth of a second.
  const position = (value) => (name === "turn" ? Math.round(Number(value)) : positionAt(score, Number(value) * 1e6 + 9999));
  if (from === undefined) transport.goTo(0);
  else if (to === undefined) transport.goTo(position(from));
  else transport.select(spanStart(score, name, from, position), position(to));
}

/** Zero seconds begin before the first turn, not after it. */
const spanStart = (score, name, from, position) => (name === "t" && Number(from) === 0 ? 0 : position(from));
