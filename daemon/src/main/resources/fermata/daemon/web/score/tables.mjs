// The same data as tables: the stages, and every turn.

import { html } from "../page/dom.mjs";
import { nearest, percent, seconds } from "../page/words.mjs";
import { gapInWords, likely, moveInWords, regripInWords, restInWords } from "./score-words.mjs";
import { momentHash, spanFigures } from "./span.mjs";

/** A table from heads ([text, class]) and rows of cells (text or elements); the first cell names its row. */
function table(caption, heads, rows) {
  const cell = (content, column) => html(column === 0 ? "th" : "td", { scope: column === 0 ? "row" : null, class: heads[column][1] || null }, content);
  return html("div", { class: "scroller", tabindex: 0, role: "region", "aria-label": caption },
    html("table", {},
      html("caption", { class: "offscreen" }, caption),
      html("thead", {}, html("tr", {}, heads.map(([text, kind]) => html("th", { scope: "col", class: kind || null }, text)))),
      html("tbody", {}, rows.map((row) => html("tr", {}, row.map(cell)))),
    ));
}

/** Stages: turns, time, what it usually takes, share of rest, turns a second. Each opens as a span. */
export function stageTable(score) {
  const placed = score.stages.some((stage) => stage.name.startsWith("pair") && stage.case);
  const { usual } = score;
  const heads = [["stage", ""], ...(placed ? [["pieces at", "aside"]] : []), ["turns", "number"], ["time", "number"],
    ...(usual ? [["usual", "number aside"]] : []), ["rested", "number"], ["turns/s", "number"]];
  const rows = score.stages.map((stage) => {
    const figures = spanFigures(score, stage);
    const band = usual?.stages.find((one) => one.name === stage.name);
    const link = stage.to > stage.from ? momentHash(score, stage.from, stage) : momentHash(score, stage.from);
    return [
      html("a", { href: link }, stage.label),
      ...(placed ? [stage.name.startsWith("pair") && stage.case !== "skip" ? (stage.case ?? "") : ""] : []),
      String(figures.htm),
      figures.micros === null ? "\u2013" : `${seconds(figures.micros)} s`,
      ...(usual ? [band ? `${seconds(nearest(band.low_us))}\u2013${seconds(nearest(band.high_us))}` : ""] : []),
      figures.restShare === null ? "\u2013" : percent(figures.restShare),
      figures.perSecond === null ? "\u2013" : figures.perSecond.toFixed(1),
    ];
  });
  return table("Stages", heads, rows);
}

/** Every turn as it was heard, with a link to its moment: all that the score shows, in words. */
export function turnTable(score) {
  const heads = [["turn", "number"], ["at", "number"], ["before it", ""], ["as shown", ""], ["in words", ""], ["sure", "number"], ["by the centres", ""], ["stage", ""], ["afterwards", ""]];
  const rows = score.turns.map((turn) => {
    const rotation = score.rotations.find((one) => one.before === turn.index);
    const regrip = score.regrips.find((one) => one.before_turn === turn.index);
    const rest = score.restAfter.get(turn.index);
    const gap = score.gaps.find((one) => one.after_turn === turn.index);
    const before = [regrip ? regripInWords(regrip) : null, rotation ? ["tilted", rotation.word, likely(rotation.p)].filter(Boolean).join(" ") : null];
    const after = [turn.repaired ? "repaired" : null, score.slips.some((slip) => slip.from <= turn.index && turn.index < slip.to) ? "taken back" : null, rest ? restInWords(score, rest) : null, gap ? gapInWords(gap) : null];
    return [
      html("a", { href: momentHash(score, turn.index + 1) }, String(turn.index + 1)),
      score.timed ? seconds(turn.at) : "\u2013",
      before.filter(Boolean).join("; "), turn.word, moveInWords(turn.word), typeof turn.p === "number" ? percent(turn.p) : "\u2013",
      turn.core, turn.stage?.label ?? "", after.filter(Boolean).join("; "),
    ];
  });
  return table("Every turn", heads, rows);
}
