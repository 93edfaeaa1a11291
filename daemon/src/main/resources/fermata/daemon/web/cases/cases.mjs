// The page of cases: each last-layer and pair case met, dearest first, with its picture and this solver's times.

import { html, px, svg } from "../page/dom.mjs";
import { momentLinks } from "../page/moments.mjs";
import { overLinks, overWords } from "../page/over.mjs";
import { asked, readCases } from "../page/reader.mjs";
import { count, duration, nearest, seconds, stageWord } from "../page/words.mjs";
import { caseInWords, caseName } from "./case-words.mjs";
import { casePicture } from "./pictures.mjs";

const KINDS = [["all", "all", () => true], ["last-layer", "last layer", (row) => row.stage !== "pair"], ["pairs", "pairs", (row) => row.stage === "pair"]];

// Two rows of the plate on a wide page; what was met more rarely waits until it is asked for.
const FEW_AT_ONCE = 20;

const content = document.getElementById("content");

open().catch((error) => content.replaceChildren(html("h1", {}, "The cases cannot be shown"), html("div", { class: "message" }, html("p", {}, error.message))));

async function open() {
  const told = await readCases(asked("over") ?? "all");
  content.replaceChildren(...page(told));
}

function page(told) {
  const head = [html("h1", {}, "Cases"), html("p", { class: "under" }, summary(told)), overLinks("/cases", told.over)];
  if (told.cases.length === 0) return [...head, html("div", { class: "message" }, html("p", {}, "No case was met with a time. The cases of a solve are known when it was solved by cross, pairs and last layer, and its turns have times."))];
  const list = html("div", { class: "case-list" });
  const choose = html("fieldset", { class: "kinds" }, html("legend", { class: "offscreen" }, "Which cases"), ...KINDS.map(([name, words, chosen], index) => {
    const box = html("input", { type: "radio", name: "kind", value: name, checked: index === 0 });
    box.addEventListener("change", () => list.replaceChildren(...rows(told.cases.filter(chosen))));
    return told.cases.some(chosen) ? html("label", {}, box, html("span", {}, words)) : null;
  }));
  list.append(...rows(told.cases));
  return [...head, choose, list, method()];
}

function summary(told) {
  const met = told.cases.reduce((sum, row) => sum + row.met, 0);
  return `${count(told.cases.length, "case")} met ${count(met, "time")} in ${count(told.solves, "solve")}, ${overWords(told)}.`;
}

function rows(cases) {
  const told = cases.filter((row) => !row.few);
  const few = cases.filter((row) => row.few);
  const longest = Math.max(1, ...told.map((row) => Math.max(row.recognition_us + row.execution_us, row.usual_us)));
  return [
    told.length === 0 ? html("p", { class: "quiet" }, "None was met five times yet, so nothing is ranked.") : html("ol", { class: "cases" }, told.map((row) => caseRow(row, longest))),
    few.length === 0 ? null : html("section", { "aria-labelledby": "few" }, html("h2", { id: "few" }, "Too few to say"),
      html("p", { class: "quiet" }, "Met fewer than five times; how often stands beside each."),
      html("ul", { class: "plate" }, few.slice(0, FEW_AT_ONCE).map(small)),
      few.length <= FEW_AT_ONCE ? null : html("details", {}, html("summary", {}, `Further cases (${few.length - FEW_AT_ONCE})`), html("ul", { class: "plate" }, few.slice(FEW_AT_ONCE).map(small)))),
  ].filter(Boolean);
}

function caseRow(row, longest) {
  const words = caseInWords(row.stage, row.case, row.picture);
  return html("li", { class: "case" },
    picture(row, words),
    html("div", { class: "called" },
      html("h2", {}, caseName(row.stage, row.case), row.picture ? html("span", { class: "quiet small" }, ` ${stageWord(row.stage)}`) : null),
      row.stage === "pair" ? html("p", { class: "quiet small" }, words) : null,
      html("p", { class: "gain" }, ...gain(row)),
      html("p", { class: "sequence" }, html("span", { class: "offscreen" }, "Your sequence: "), row.sequence)),
    html("div", { class: "times" }, measure(row, longest),
      html("dl", {}, ...[
        ["recognised in", duration(nearest(row.recognition_us))], ["turned in", duration(nearest(row.execution_us))], ["turns a second", row.turns_per_second.toFixed(1)],
        ["met", count(row.met, "time")],
      ].map(([name, value]) => html("div", {}, html("dt", {}, name), html("dd", {}, value)))),
      momentLinks(row.examples)));
}

function picture(row, words) {
  return row.picture ? casePicture(row.stage, row.picture, `${caseName(row.stage, row.case)}: ${words}`) : html("span", { class: "case-picture" });
}

function gain(row) {
  const figure = html("strong", {}, `${seconds(nearest(Math.abs(row.cost_us)))} s`);
  if (Math.abs(row.cost_us) < 5000) return ["As quick as your usual case."];
  return row.cost_us > 0 ? [figure, " a solve over your usual."] : [figure, " a solve under your usual."];
}

/** Recognising as an outline, turning in ink; a rule where the usual case of the stage ends. */
function measure(row, longest) {
  const at = (micros) => (100 * micros) / longest;
  const [recognised, whole, usual] = [at(row.recognition_us), at(row.recognition_us + row.execution_us), at(row.usual_us)];
  return svg("svg", { class: "measure", viewBox: "0 0 100 16", preserveAspectRatio: "none", role: "img" },
    svg("title", {}, `${duration(nearest(row.recognition_us + row.execution_us))}; your usual is ${duration(nearest(row.usual_us))}`),
    svg("rect", { class: "resting", x: 0, y: 5, width: px(recognised), height: 6 }),
    svg("rect", { class: "turning", x: px(recognised), y: 5, width: px(whole - recognised), height: 6 }),
    svg("path", { class: "usual", d: `M${px(usual)} 0V16` }));
}

function small(row) {
  const words = caseInWords(row.stage, row.case, row.picture);
  return html("li", {}, picture(row, words), html("span", {}, caseName(row.stage, row.case)), html("span", { class: "quiet" }, ` (${row.met})`));
}

function method() {
  return html("details", { class: "counted" }, html("summary", {}, "How this is counted"),
    html("p", {}, "A case is recognised from the end of the stage before to the first turn of its sequence; a turn of the last layer before that belongs to recognising. All times are medians of your own; medians of parts need not add up to that of the whole. What a case costs is how likely it is, times how much longer it takes than your median case of that stage: so it is what you would save a solve if the case went as your usual one does."),
    html("p", {}, "Filled squares show the last layer\u2019s colour; arrows show where pieces go. A pair is seen from its own corner of the cube, whatever its colours: the cross\u2019s colour is filled, the left of the two sides is ruled, the right one carries a ring, and what looks away is drawn outside, as in a mirror. The place to fill is outlined. A pair\u2019s name says what is seen: the corner\u2019s place with the face of the cross\u2019s colour first, then the edge\u2019s place with the face of the front colour first."));
}
