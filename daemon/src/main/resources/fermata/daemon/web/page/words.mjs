// Numbers, times, turns and stages in words.

const FACE_WORDS = { U: "up", R: "right", F: "front", D: "down", L: "left", B: "back" };
const MONTHS = "January February March April May June July August September October November December".split(" ");
const WEEKDAYS = "Sunday Monday Tuesday Wednesday Thursday Friday Saturday".split(" ");

// Our word for a stage, then the trade's where it has another.
const STAGES = {
  cross: ["cross"], align: ["align"],
  pair1: ["pair 1"], pair2: ["pair 2"], pair3: ["pair 3"], pair4: ["pair 4"],
  orient: ["orient", "OLL"], orient_edges: ["orient edges", "OLL"], orient_corners: ["orient corners", "OLL"],
  permute: ["permute", "PLL"], permute_corners: ["permute corners", "PLL"], permute_edges: ["permute edges", "PLL"],
  auf: ["last turn", "AUF"],
  eo: ["edges oriented", "EO"], line: ["line"],
  block1: ["first block"], block2: ["second block"],
  last_layer: ["last layer", "LL"], corners: ["corners", "CMLL"], last_edges: ["last six edges", "LSE"],
};

/** A time that was measured, as seconds, "15.54": cut to the hundredth, not rounded (WCA 9f1); "-" if unknown. */
export function seconds(micros) {
  return micros === null || micros === undefined ? "\u2013" : (Math.floor(micros / 1e4) / 100).toFixed(2);
}

/** A figure worked out of several times, to the nearest hundredth, as 9f1 has it for means: to be said as a time is. */
export function nearest(micros) {
  return typeof micros === "number" ? Math.round(micros / 1e4) * 1e4 : micros;
}

/** The same with its unit; from a minute on, minutes too. */
export function duration(micros) {
  if (typeof micros !== "number") return micros === "DNF" ? "DNF" : "\u2013";
  if (micros < 60e6) return `${seconds(micros)} s`;
  const minutes = Math.floor(micros / 60e6);
  return `${minutes} min ${seconds(micros - minutes * 60e6)} s`;
}

/** "1 turn", "2 turns". */
export function count(number, thing) {
  return `${number} ${thing}${number === 1 ? "" : "s"}`;
}

/** A share as whole percent. */
export function percent(share) {
  return `${Math.round(share * 100)} %`;
}

/** How documents write the day of practice whose date nobody knows yet. */
export const UNKNOWN_DAY = "unknown";

/** "Tuesday 24 November 2026". */
export function longDay(day) {
  if (day === UNKNOWN_DAY) return "A day not known yet";
  const [year, month, date] = day.split("-").map(Number);
  const weekday = WEEKDAYS[new Date(Date.UTC(year, month - 1, date)).getUTCDay()];
  return `${weekday} ${date} ${MONTHS[month - 1]} ${year}`;
}

/** "24 November". */
export function shortDay(day) {
  if (day === UNKNOWN_DAY) return "a day not known yet";
  const [, month, date] = day.split("-").map(Number);
  return `${date} ${MONTHS[month - 1]}`;
}

/** "22:04" from a local date and time; empty if there is none. */
export function clockTime(startedAt) {
  return startedAt ? startedAt.slice(11, 16) : "";
}

/** "right, quarter, clockwise" for R. */
export function turnInWords(turn) {
  const layer = FACE_WORDS[turn[0]];
  if (turn[1] === "2") return `${layer}, half`;
  return `${layer}, quarter, ${turn[1] === "'" ? "counter-clockwise" : "clockwise"}`;
}

/** Our word for a stage. */
export function stageWord(name) {
  return STAGES[name]?.[0] ?? name.replaceAll("_", " ");
}

/** A stage with the trade's word and its case: "orient (OLL 27)". */
export function stageInFull(stage) {
  const [word, trade] = STAGES[stage.name] ?? [stageWord(stage.name)];
  if (stage.case === "skip") return trade ? `${word} (${trade} skip)` : `${word} (skip)`;
  const inTrade = [trade, stage.case].filter(Boolean).join(" ");
  return inTrade ? `${word} (${inTrade})` : word;
}

/** A hand: "left hand", "both hands", or nothing. */
export function handWord(hand) {
  return { left: "left hand", right: "right hand", two: "both hands" }[hand] ?? null;
}

/** How an attempt ended, if it did not end solved. */
export function outcomeWord(solve) {
  if (solve.set_aside) return "set aside";
  if (solve.solved) return null;
  return solve.outcome === "unknown_after_gap" ? "end unknown: turns were lost" : "abandoned";
}

/** How it is known where the scramble ended, if that was not simply seen. */
export function scrambleEndWord(end) {
  if (end?.known === "announced_words") return "known by its words, which were turned in a hold of their own";
  if (end?.known === "inferred") return `where it ended is inferred (${percent(end.probability)})`;
  return null;
}

/** By what the numbers were worked out: version and the night's learned parameters. */
export function derivedWord(derived) {
  return derived ? `Worked out by ${derived.code} with the parameters ${derived.snapshot}.` : null;
}
