// A solve in a line: its title, and its figures.

import { clockTime, count, duration, handWord, longDay, outcomeWord, percent } from "../page/words.mjs";
import { spanFigures } from "./span.mjs";

export function titleOf(shown) {
  return shown.number ? `Solve ${shown.number}` : `Solve ${shown.id}`;
}

export function summaryOf(score) {
  const { shown } = score;
  const { htm, turns, restShare, perSecond } = spanFigures(score, { from: 0, to: score.turns.length });
  const facts = [
    shown.day ? `${longDay(shown.day)}${shown.started_at ? `, ${clockTime(shown.started_at)}` : ""}` : null,
    [score.timed && shown.time_us !== null ? duration(shown.time_us) : "no clock", count(turns, "turn"), htm === turns ? null : `${htm} in HTM`,
      perSecond === null ? null : `${perSecond.toFixed(1)} a second`, restShare === null ? null : `${percent(restShare)} rest`].filter(Boolean).join(", "),
    [shown.method && !["other", "untold"].includes(shown.method) ? shown.method : null, shown.cross_colour ? `${shown.cross_colour} cross` : null, handWord(shown.hand)].filter(Boolean).join(", "),
    outcomeWord(shown),
  ];
  return facts.filter(Boolean).map((fact) => `${fact[0].toUpperCase()}${fact.slice(1)}.`).join(" ");
}
