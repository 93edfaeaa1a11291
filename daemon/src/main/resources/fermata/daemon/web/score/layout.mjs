// Where everything of a score stands: pure numbers from a solve and a width, nothing drawn.
//
// One scale holds for the whole score, so equal lengths are equal times. Systems (lines) are broken as a book breaks
// lines: all ways are weighed at once, and the way with the least white at the line ends and the fewest cut stages wins.
// Several scales are tried, since a little more or less makes the last system as full as the others.

/** Pixels, as an engraver's rule: white for layer names, before the first note, at the end, and around a note. */
export const MARGIN = { names: 24, lead: 16, end: 6, note: 10, finalBar: 24 };

// A stage's end is the natural place to break; then a rest; least good is the midst of running turns.
const BREAK_AFTER_STAGE = 0;
const BREAK_AFTER_GAP = 2;
const BREAK_BEFORE_REST = 6;
const BREAK_IN_RUN = 24;
const BREAK_IN_REST = 25;

// A line that could be a third longer is left ragged: notes would stand farther apart than they are read together.
const MOST_FILLED = 1.35;

/** Lays a score out: {pxPerSecond, width, systems: [{from, to, first, last, x(time)}], barAfter(turn)}. */
export function layOut(score, width) {
  const ideal = idealScale(score, width);
  // On a phone every stretch is more to scroll, on a laptop there is room to let the notes breathe.
  const widest = width < 600 ? 1.16 : 1.75;
  let best = null;
  for (let stretch = 0.84; stretch <= widest; stretch += 0.04) {
    const tried = breakIntoSystems(score, width, ideal * stretch);
    const cost = tried.cost + (stretch < 1 ? 150 : 20) * Math.abs(Math.log(stretch));
    if (best === null || cost < best.cost) best = { ...tried, cost };
  }
  return filled(score, width, best);
}

/** The same systems on a scale by which the longest ends where the page does; a short score is not blown up for that. */
function filled(score, width, { pxPerSecond, breaks }) {
  const origin = MARGIN.names + MARGIN.lead;
  const longest = Math.max(...systemsOf(score, width, pxPerSecond, breaks).systems.map((system) => system.right)) - origin;
  const wider = Math.min(MOST_FILLED, (width - MARGIN.end - origin) / longest);
  return systemsOf(score, width, pxPerSecond * Math.max(1, wider), breaks);
}

/** Pixels per second at which neighbouring notes are just apart, within what the eye and the width bear. */
function idealScale(score, width) {
  const steps = score.turns.slice(1).map((turn, index) => turn.at - score.turns[index].at).sort((a, b) => a - b);
  const close = steps[Math.floor(steps.length * 0.25)] || 200_000;
  return Math.min(width < 600 ? 105 : 140, Math.max(88, 14 / (close / 1e6)));
}

/** The time at which the bar after a turn stands: behind the note's head, but never past the middle to the next. */
function barTimes(score, pxPerSecond) {
  const clear = (MARGIN.note / pxPerSecond) * 1e6;
  return score.turns.map((turn, index) => {
    const next = score.turns[index + 1];
    return turn.at + (next ? Math.min(clear, (next.at - turn.at) / 2) : (MARGIN.finalBar / pxPerSecond) * 1e6);
  });
}

/** The breaks on a scale that cost least, by the system. */
function breakIntoSystems(score, width, pxPerSecond) {
  const bars = barTimes(score, pxPerSecond);
  const room = ((width - MARGIN.names - MARGIN.lead - MARGIN.end) / pxPerSecond) * 1e6;
  const places = breakPlaces(score, bars, room);
  const { ends, cost } = cheapestBreaks(places, room);
  return { breaks: ends.map((end) => places[end]), cost: cost / Math.max(1, ends.length), pxPerSecond };
}

function systemsOf(score, width, pxPerSecond, breaks) {
  const bars = barTimes(score, pxPerSecond);
  // A bar keeps its distance from the note in pixels, so its time is another on each scale; a place in a rest stays.
  const edges = [{ time: 0, turns: 0 }, ...breaks.map((one) => (one.inRest ? one : { ...one, time: bars[one.turns - 1] }))];
  const systems = breaks.map((one, index) => systemOf(edges[index], edges[index + 1], index === 0, index === breaks.length - 1, pxPerSecond));
  return { systems, pxPerSecond, width, barAfter: (turn) => bars[turn] ?? 0 };
}

/** Where a system may end: after each turn, and inside an interval that is longer than a system. */
function breakPlaces(score, bars, room) {
  const stageEnds = new Set(score.stages.map((stage) => stage.to - 1));
  const gapAfter = new Set(score.gaps.map((gap) => gap.after_turn));
  const whole = new Set(score.gestures.map((gesture) => gesture.last));
  const places = [{ time: 0, penalty: 0, turns: 0 }];
  score.turns.forEach((turn, index) => {
    let penalty = BREAK_IN_RUN;
    if (score.restAfter.has(index)) penalty = BREAK_BEFORE_REST;
    if (gapAfter.has(index)) penalty = BREAK_AFTER_GAP;
    if (stageEnds.has(index)) penalty = BREAK_AFTER_STAGE;
    // No line ends in the midst of a half turn or a slice.
    if (!whole.has(index)) return;
    places.push({ time: bars[index], penalty, turns: index + 1 });
    const next = score.turns[index + 1]?.at ?? 0;
    for (let time = bars[index] + room * 0.75; time < next - room * 0.1; time += room * 0.75) {
      places.push({ time, penalty: BREAK_IN_REST, turns: index + 1, inRest: true });
    }
  });
  return places;
}

/** Least total cost over all ways to break, from left to right (as Knuth and Plass broke paragraphs, 1981). */
function cheapestBreaks(places, room) {
  const last = places.length - 1;
  const cost = [0];
  const from = [0];
  for (let end = 1; end <= last; end++) {
    cost[end] = Infinity;
    for (let start = end - 1; start >= 0; start--) {
      const used = (places[end].time - places[start].time) / room;
      if (used > 1 && start < end - 1) break;
      const white = Math.max(0, 1 - used);
      const short = (end === last ? 35 : 100) * white * white;
      const total = cost[start] + short + (end === last ? 0 : places[end].penalty) + 8;
      if (total < cost[end]) {
        cost[end] = total;
        from[end] = start;
      }
    }
  }
  const ends = [];
  for (let end = last; end > 0; end = from[end]) ends.unshift(end);
  return { ends, cost: cost[last] };
}

function systemOf(start, end, isFirst, isLast, pxPerSecond) {
  const origin = MARGIN.names + MARGIN.lead;
  const x = (time) => origin + ((time - start.time) / 1e6) * pxPerSecond;
  return {
    from: start.time, to: end.time, x,
    timeAt: (at) => start.time + ((at - origin) / pxPerSecond) * 1e6,
    left: MARGIN.names,
    right: x(end.time),
    first: start.turns,
    last: end.turns,
    isFirst, isLast,
  };
}

/** The part of a span of time that a system shows, or null. */
export function within(system, from, to) {
  const start = Math.max(from, system.from);
  const end = Math.min(to, system.to);
  return end > start ? { start, end, begins: from >= system.from, ends: to <= system.to } : null;
}

/** The system that shows a time, which may lie in a rest that runs over several. */
export function systemAt(layout, micros) {
  const found = layout.systems.findIndex((system) => micros <= system.to);
  return found < 0 ? layout.systems.length - 1 : found;
}

/** The system that shows a position (turns done). */
export function systemShowing(layout, position) {
  const found = layout.systems.findIndex((system) => position <= system.last && (position > system.first || system.isFirst));
  return Math.max(0, found);
}

/**
 * Sets labels in as few rows as fit, each at its place. Every label hangs on a flag that rises from the staff at
 * its `at`; a label that reaches past later flags stands higher than theirs, so that no flag crosses words.
 *
 * @param labels [{x, at, width}] from left to right; each gets its row, 0 at the bottom, and may be moved left to fit
 * @returns the number of rows
 */
export function setInRows(labels, right) {
  for (let index = labels.length - 1; index >= 0; index--) {
    const label = labels[index];
    label.x = Math.max(0, Math.min(label.x, right - label.width));
    const reached = labels.slice(index + 1).filter((later) => Math.min(later.at, later.x) < label.x + label.width + 8);
    label.row = reached.length === 0 ? 0 : 1 + Math.max(...reached.map((later) => later.row));
  }
  return 1 + Math.max(0, ...labels.map((label) => label.row));
}
