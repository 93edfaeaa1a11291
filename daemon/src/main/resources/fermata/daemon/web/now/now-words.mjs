// What the page says, in words; the inspection rules are those of the WCA Regulations, Article A3 and A4d.

import { count, duration, seconds, turnInWords } from "../page/words.mjs";

/** Inspection, in seconds: the calls, and what a late start costs. */
export const CALLS = [8, 12];
export const PLUS_TWO_FROM = 15;
export const DNF_FROM = 17;

/** What a start after so many microseconds of inspection costs: "", "+2" or "DNF". */
function penalty(inspectionUs) {
  if (inspectionUs >= DNF_FROM * 1e6) return "DNF";
  return inspectionUs >= PLUS_TWO_FROM * 1e6 ? "+2" : "";
}

/** The solve that ended last, as [time, sentence]. */
export function lastSolve(last, cued) {
  if (!last.whole) return ["no time", `${count(last.turns, "turn")} were heard and some were lost, so a time would be a guess.`];
  const late = cued ? penalty(last.inspection_us) : "";
  const time = late === "DNF" ? "DNF" : late === "+2" ? `${seconds(last.time_us + 2e6)}+` : duration(last.time_us);
  const inspected = cued ? ` Inspection ${seconds(last.inspection_us)} s${late ? `: ${late}` : ""}.` : "";
  const cost = late ? ` Turn time ${duration(last.time_us)}.` : "";
  return [time, `${count(last.turns, "turn")}.${inspected}${cost}`];
}

/** The one finding: the interval that stands out, if one does. */
export function finding(last) {
  const rest = last.longest_rest;
  return rest ? `The longest rest was ${duration(rest.length_us)}, after turn ${rest.after_turn}.` : "No rest stood out.";
}

/** The line over the staff. */
export function whatNow(evening) {
  const { phase, scramble } = evening;
  if (phase === "idle") return "The next scramble is being made.";
  if (phase === "ready") return "Scrambled. The first turn begins the solve.";
  if (phase === "solving") return "Solving";
  if (scramble.astray) return "Solve the cube, and the scramble begins.";
  if (scramble.mending.length > 0) return "A wrong turn: mend it below.";
  return scramble.done === 0 ? "The next scramble" : `Turn ${scramble.done + 1} of ${scramble.turns.length}`;
}

/** What a screen reader is told, and only when it changed: not every turn, since hands and ears are busy. */
export function spoken(evening) {
  const { phase, scramble } = evening;
  if (phase !== "scrambling" || scramble.astray) return whatNow(evening);
  if (scramble.mending.length > 0) return `A wrong turn. Mend it: ${scramble.mending.map(turnInWords).join("; ")}.`;
  return scramble.done === 0 ? `The next scramble: ${scramble.turns.join(" ")}` : "";
}
