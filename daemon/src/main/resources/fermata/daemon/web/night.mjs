// The page of one night: how it went, where the seconds went, and its solves.

import { html } from "./dom.mjs";
import { distribution, spanBar, stageShares } from "./night-charts.mjs";
import { figures, hotspotSentences, noneOnThisDay, nothingYet } from "./night-sentences.mjs";
import { here, readNight, readNights, readSolvesOf } from "./reader.mjs";
import { clockTime, count, derivedWord, duration, longDay, outcomeWord, percent, shortDay } from "./words.mjs";

const content = document.getElementById("content");

open().catch((error) => content.replaceChildren(html("h1", {}, "The night cannot be shown"), html("div", { class: "message" }, html("p", {}, error.message))));

async function open() {
  const asked = here.match(/^\/nights\/(.+)$/)?.[1];
  const nights = await readNights();
  const day = asked ?? nights[0]?.day;
  turnover(nights, day);
  if (day === undefined) {
    content.replaceChildren(html("h1", {}, "Nothing to read yet"), nothingYet());
    return;
  }
  document.title = `${longDay(day)} - fermata`;
  if (!nights.some((night) => night.day === day)) {
    content.replaceChildren(html("h1", {}, longDay(day)), noneOnThisDay(day, nights[0]?.day));
    return;
  }
  const [night, solves] = await Promise.all([readNight(day), readSolvesOf(day)]);
  show(night, solves, nights);
}

function show(night, solves, nights) {
  const frame = html("div", { class: "times-frame" });
  content.replaceChildren(
    html("h1", {}, longDay(night.day)),
    html("p", { class: "under" }, summary(night, solves)),
    html("dl", { class: "figures" }, figures(night).map(([name, value, remark]) => html("div", {}, html("dt", {}, name), html("dd", {}, html("span", { class: "value" }, value), remark ? html("span", { class: "quiet small" }, remark) : null)))),
    html("section", { "aria-labelledby": "times" }, html("h2", { id: "times" }, "Times"), frame),
    html("div", { class: "columns" },
      html("section", { "aria-labelledby": "rests" }, html("h2", { id: "rests" }, "Where time went"), hotspotSentences(night.hotspots, night.too_few)),
      html("section", { "aria-labelledby": "stages" }, html("h2", { id: "stages" }, "Stages"), ...stageShares(solves))),
    html("section", { "aria-labelledby": "solves" }, html("h2", { id: "solves" }, "Solves"), solveTable(solves, night)),
    otherNights(nights, night.day),
    html("p", { class: "derived quiet small" }, derivedWord(night.derived) ?? ""),
  );
  const draw = () => {
    const width = Math.floor(frame.clientWidth);
    if (width > 0 && frame.dataset.width !== String(width)) {
      frame.dataset.width = width;
      frame.replaceChildren(distribution(solves, night, width));
    }
  };
  new ResizeObserver(draw).observe(frame);
  draw();
}

function summary(night, solves) {
  const from = clockTime(solves[0]?.started_at);
  const to = clockTime(solves.at(-1)?.started_at);
  const uncounted = solves.length - night.solves - (night.abandoned ?? 0);
  return [
    count(night.solves, "solve"),
    night.abandoned ? `${night.abandoned} abandoned` : null,
    uncounted > 0 ? `${uncounted} without a time` : null,
    from && to ? (from === to ? `at ${from}` : `from ${from} to ${to}`) : null,
  ].filter(Boolean).join(", ") + ".";
}

function solveTable(solves, night) {
  const heads = [["solve", ""], ["began", "began"], ["time", "number"], ["turns", "number"], ["turns/s", "number pace"], ["rest", "number"], ["method", ""], ["", ""], ["turning, then rest", "spans"]];
  const longest = Math.max(1, ...solves.map((solve) => solve.time_us ?? 0));
  const row = (solve) => {
    const timed = typeof solve.time_us === "number" && solve.time_us > 0;
    const remarks = [outcomeWord(solve), solve.lost ? `${count(solve.lost, "turn")} lost` : null, solve.solved && solve.time_us === night.best_us ? "best" : null];
    return html("tr", {},
      html("th", { scope: "row" }, html("a", { href: `/solves/${encodeURIComponent(solve.id)}`, "aria-label": `Score of solve ${solve.number}` }, String(solve.number))),
      html("td", { class: "began" }, clockTime(solve.started_at)),
      html("td", { class: "number" }, timed ? duration(solve.time_us) : "\u2013"),
      html("td", { class: "number" }, String(solve.turns)),
      html("td", { class: "number pace" }, timed ? (solve.turns / (solve.time_us / 1e6)).toFixed(1) : "\u2013"),
      html("td", { class: "number" }, timed && typeof solve.rest_us === "number" ? percent(solve.rest_us / solve.time_us) : "\u2013"),
      html("td", {}, solve.method === "untold" ? "\u2013" : solve.method),
      html("td", { class: "quiet" }, remarks.filter(Boolean).join(", ")),
      html("td", { class: "spans" }, timed ? spanBar(solve, longest) : ""));
  };
  return html("div", { class: "scroller solves", tabindex: 0, role: "region", "aria-label": "Solves of the night" },
    html("table", {}, html("thead", {}, html("tr", {}, heads.map(([text, kind]) => (text ? html("th", { scope: "col", class: kind || null }, text) : html("td", {}))))),
      html("tbody", {}, solves.map(row))));
}

function turnover(nights, day) {
  const list = document.getElementById("turnover");
  const earlier = nights.find((night) => night.day < day);
  const later = [...nights].reverse().find((night) => night.day > day);
  const item = (night, word) => html("li", {}, night ? html("a", { href: `/nights/${night.day}`, "aria-label": `${word}, ${shortDay(night.day)}` }, word) : html("span", { class: "quiet" }, word));
  if (nights.length > 0) list.replaceChildren(item(earlier, "earlier night"), item(later, "later night"));
}

function otherNights(nights, day) {
  if (nights.length < 2) return "";
  return html("details", { class: "all" }, html("summary", {}, `All nights (${nights.length})`),
    html("ul", { class: "nights" }, nights.map((night) => html("li", {},
      html("a", { href: `/nights/${night.day}`, "aria-current": night.day === day ? "page" : null }, longDay(night.day)),
      html("span", { class: "quiet" }, ` ${count(night.solves, "solve")}${typeof night.mean_us === "number" ? `, mean ${duration(night.mean_us)}` : ""}`)))));
}
