// The page of one night: how it went, where the seconds went, and its solves.

import { html } from "../page/dom.mjs";
import { overLinks, overWords } from "../page/over.mjs";
import { asked, here, isKept, readNight, readNights, readSolves, readSolvesOf } from "../page/reader.mjs";
import { UNKNOWN_DAY, clockTime, count, derivedWord, duration, handWord, longDay, nearest, outcomeWord, percent, shortDay } from "../page/words.mjs";
import { distribution, spanBar } from "./charts.mjs";
import { figures, hotspotSentences, loadSentences, noneOnThisDay, nothingYet, otherSeries, trendSentences } from "./sentences.mjs";
import { stageShares } from "./stage-shares.mjs";

const content = document.getElementById("content");

open().catch((error) => content.replaceChildren(html("h1", {}, "The night cannot be shown"), html("div", { class: "message" }, html("p", {}, error.message))));

async function open() {
  const nights = await readNights();
  const day = here.match(/^\/nights\/(.+)$/)?.[1] ?? nights[0]?.day;
  const over = asked("over") ?? "night";
  turnover(nights, day, over);
  if (day === undefined) {
    content.replaceChildren(html("h1", {}, "Nothing to read yet"), nothingYet());
    return;
  }
  document.title = `${longDay(day)} - fermata`;
  if (!nights.some((night) => night.day === day)) {
    content.replaceChildren(html("h1", {}, longDay(day)), noneOnThisDay(day, nights[0]?.day));
    return;
  }
  const night = await readNight(day, over);
  show(night, await solvesOver(night, nights), nights, day);
}

/** The solves that a summary is over, oldest first. */
async function solvesOver(night, nights) {
  if (isOneNight(night)) return readSolvesOf(night.day);
  if (night.over === "all") return (await readSolves()).filter((solve) => solve.day <= night.to);
  const days = nights.map((one) => one.day).filter((day) => day >= night.from && day <= night.to).sort();
  return (await Promise.all(days.map(readSolvesOf))).flat();
}

function show(night, solves, nights, day) {
  const frame = html("div", { class: "times-frame" });
  content.replaceChildren(
    html("h1", {}, title(night, day)),
    html("p", { class: "under" }, summary(night, solves)),
    night.to === UNKNOWN_DAY ? html("p", {}, "The board does not know the date yet. As soon as it does, this practice moves to its day.") : "",
    overLinks(`/nights/${day}`, night.over),
    html("dl", { class: "figures" }, figures(night).map(([name, value, remark]) => html("div", {}, html("dt", {}, name), html("dd", {}, html("span", { class: "value" }, value), remark ? html("span", { class: "quiet small" }, remark) : null)))),
    section("times", "Times", frame),
    html("div", { class: "columns" },
      section("seconds", "Where the seconds went", hotspotSentences(night)),
      html("div", {}, section("stages", "Stages", stageShares(night, solves)), ...aside(night, day))),
    isOneNight(night) ? section("solves", "Solves", solveTable(solves, night)) : section("nights", "Nights", nightTable(nights.filter((one) => one.day >= night.from && one.day <= night.to))),
    isOneNight(night) ? otherNights(nights, day) : "",
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

/** What stands beside the sentences: how the figures move, what the hand did, what counts apart. */
function aside(night, day) {
  return [
    night.trends.length > 0 ? section("trends", "From night to night", trendSentences(night.trends), allNightsLink(night, day)) : null,
    section("hand", "The hand", loadSentences(night.load), html("p", { class: "moments" }, isOneNight(night)
      ? html("a", { href: "#solves" }, "its solves, one by one")
      : html("a", { href: "#nights" }, "its nights, one by one"))),
    night.other_series.length > 0 ? section("apart", "Counted apart", otherSeries(night.other_series)) : null,
  ];
}

/** From what moves to the nights that it moves over. */
function allNightsLink(night, day) {
  if (night.over === "all" || isKept) return "";
  return html("p", { class: "moments" }, html("a", { href: `/nights/${day}?over=all` }, "all nights, one by one"));
}

const isOneNight = (night) => night.over === "night";

function section(name, words, ...children) {
  return html("section", { "aria-labelledby": name }, html("h2", { id: name }, words), ...children);
}

function title(night, day) {
  return { night: longDay(day), week: `The week to ${longDay(day)}`, all: `All nights to ${longDay(day)}` }[night.over];
}

function summary(night, solves) {
  const from = clockTime(solves[0]?.started_at);
  const to = clockTime(solves.at(-1)?.started_at);
  const uncounted = solves.length - night.solves - night.abandoned - night.other_series.reduce((sum, one) => sum + one.solves, 0);
  return [
    count(night.solves, "solve"),
    [handWord(night.series.hand), night.series.method].filter(Boolean).join(", ") || null,
    night.abandoned ? `${night.abandoned} abandoned` : null,
    uncounted > 0 ? `${uncounted} without a time` : null,
    !isOneNight(night) ? overWords(night) : from && to ? (from === to ? `at ${from}` : `from ${from} to ${to}`) : null,
  ].filter(Boolean).join(", ") + ".";
}

function solveTable(solves, night) {
  const heads = [["solve", ""], ["began", "began"], ["time", "number"], ["turns", "number"], ["turns/s", "number pace"], ["rest", "number"], ["method", ""], ["", ""], ["turning, then rest", "spans"]];
  // What was given up or set aside may have lasted for ever, and no time that counts should shrink for it.
  const longest = Math.max(1, ...solves.filter((solve) => solve.solved && !solve.set_aside).map((solve) => solve.time_us ?? 0));
  const row = (solve) => {
    const timed = typeof solve.time_us === "number" && solve.time_us > 0;
    const remarks = [outcomeWord(solve), solve.lost ? `${count(solve.lost, "turn")} lost` : null, solve.solved && solve.time_us === night.best_us ? "best" : null];
    return html("tr", {},
      html("th", { scope: "row" }, isKept ? String(solve.number) : html("a", { href: `/solves/${encodeURIComponent(solve.id)}`, "aria-label": `Score of solve ${solve.number}` }, String(solve.number))),
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

function nightTable(nights) {
  const heads = [["night", ""], ["solves", "number"], ["mean", "number"], ["best", "number"]];
  return html("div", { class: "scroller", tabindex: 0, role: "region", "aria-label": "Nights, one by one" }, html("table", {},
    html("thead", {}, html("tr", {}, heads.map(([words, kind]) => html("th", { scope: "col", class: kind || null }, words)))),
    html("tbody", {}, nights.map((one) => html("tr", {},
      html("th", { scope: "row" }, isKept ? longDay(one.day) : html("a", { href: `/nights/${one.day}` }, longDay(one.day))),
      html("td", { class: "number" }, String(one.solves)),
      html("td", { class: "number" }, duration(nearest(one.mean_us))),
      html("td", { class: "number" }, duration(one.best_us)))))));
}

function turnover(nights, day, over) {
  if (nights.length === 0 || isKept) return;
  const dated = nights.filter((night) => night.day !== UNKNOWN_DAY);
  const earlier = dated.find((night) => night.day < day);
  const later = [...dated].reverse().find((night) => night.day > day);
  const query = over === "night" ? "" : `?over=${over}`;
  const item = (night, word) => html("li", {}, night ? html("a", { href: `/nights/${night.day}${query}`, "aria-label": `${word}, ${shortDay(night.day)}` }, word) : html("span", { class: "quiet" }, word));
  document.getElementById("turnover").replaceChildren(item(earlier, "earlier night"), item(later, "later night"));
}

function otherNights(nights, day) {
  if (nights.length < 2 || isKept) return "";
  return html("details", { class: "all" }, html("summary", {}, `All nights (${nights.length})`),
    html("ul", { class: "nights" }, nights.map((night) => html("li", {},
      html("a", { href: `/nights/${night.day}`, "aria-current": night.day === day ? "page" : null }, longDay(night.day)),
      html("span", { class: "quiet" }, ` ${count(night.solves, "solve")}${typeof night.mean_us === "number" ? `, mean ${duration(nearest(night.mean_us))}` : ""}`)))));
}
