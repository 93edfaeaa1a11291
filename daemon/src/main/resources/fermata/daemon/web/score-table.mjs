// The same data as tables: the stages, and every turn.

import { html } from "./dom.mjs";
import { percent, seconds, turnInWords } from "./words.mjs";

/** A table from heads ([text, class]) and rows of cells (text or elements); the first cell names its row. */
export function table(caption, heads, rows) {
  const cell = (content, column) => html(column === 0 ? "th" : "td", { scope: column === 0 ? "row" : null, class: heads[column][1] || null }, content);
  return html("div", { class: "scroller", tabindex: 0, role: "region", "aria-label": caption },
    html("table", {},
      html("caption", { class: "offscreen" }, caption),
      html("thead", {}, html("tr", {}, heads.map(([text, kind]) => html("th", { scope: "col", class: kind || null }, text)))),
      html("tbody", {}, rows.map((row) => html("tr", {}, row.map(cell)))),
    ));
}

/** The link to the moment after a turn. */
export function momentHash(score, position) {
  return score.timed ? `#t=${seconds(position === 0 ? 0 : score.turns[position - 1].at)}` : `#turn=${position}`;
}

/** Stages: turns, time, share of rest, turns a second. */
export function stageTable(score) {
  const placed = score.stages.some((stage) => stage.name.startsWith("pair") && stage.case);
  const heads = [["stage", ""], ...(placed ? [["pieces at", "aside"]] : []), ["turns", "number"], ["time", "number"], ["rested", "number"], ["turns/s", "number"]];
  const rows = score.stages.map((stage) => {
    const turns = stage.to - stage.from;
    const time = score.timed ? stage.end_us - stage.start_us : 0;
    const rested = score.rests.filter((rest) => rest.after_turn + 1 >= stage.from && rest.after_turn + 1 < stage.to).reduce((sum, rest) => sum + rest.length_us, 0);
    const timed = score.timed && time > 0;
    return [
      html("a", { href: momentHash(score, stage.from) }, stage.label),
      ...(placed ? [stage.name.startsWith("pair") && stage.case !== "skip" ? (stage.case ?? "") : ""] : []),
      String(turns),
      timed ? `${seconds(time)} s` : "\u2013",
      timed ? percent(rested / time) : "\u2013",
      timed ? (turns / (time / 1e6)).toFixed(1) : "\u2013",
    ];
  });
  return table("Stages", heads, rows);
}

/** Every turn, with a link to its moment. */
export function turnTable(score) {
  const heads = [["turn", "number"], ["at", "number"], ["layer as shown", ""], ["in words", ""], ["by the centres", ""], ["stage", ""], ["afterwards", ""]];
  const rows = score.turns.map((turn) => {
    const rest = score.restAfter.get(turn.index);
    const gap = score.gaps.find((one) => one.after_turn === turn.index);
    const after = [rest ? `rest ${seconds(rest.length_us)} s` : null, gap ? `${gap.lost ?? "some"} lost` : null, turn.repaired ? "repaired" : null];
    return [
      html("a", { href: momentHash(score, turn.index + 1) }, String(turn.index + 1)),
      score.timed ? seconds(turn.at) : "\u2013",
      turn.seen, turnInWords(turn.seen), turn.core, turn.stage?.label ?? "", after.filter(Boolean).join(", "),
    ];
  });
  return table("Every turn", heads, rows);
}
