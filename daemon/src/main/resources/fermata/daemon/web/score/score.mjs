// The page of one solve: its score, the cube at the cursor, its stages and turns.

import { showLetters } from "../cube/letters.mjs";
import { readScore } from "../cube/solve.mjs";
import { html } from "../page/dom.mjs";
import { here, isKept, readSolve, readSolvesOf } from "../page/reader.mjs";
import { derivedWord, longDay, scrambleEndWord } from "../page/words.mjs";
import { cubePlace } from "./cube-place.mjs";
import { glanceOver } from "./glance.mjs";
import { keeping } from "./keep.mjs";
import { legend } from "./legend.mjs";
import { setupHere } from "./setup.mjs";
import { followAddress, momentHash } from "./span.mjs";
import { liveStaves, makeStaves } from "./staves.mjs";
import { summaryOf, titleOf } from "./summary.mjs";
import { stageTable, turnTable } from "./tables.mjs";
import { transportOf } from "./transport.mjs";

const content = document.getElementById("content");
const SHORT_GAP_BETWEEN_KEYS_MILLIS = 150;

open().catch((error) => {
  const unknown = error.status === 404;
  content.replaceChildren(html("h1", {}, unknown ? "There is no such solve" : "The solve cannot be shown"),
    html("div", { class: "message" }, html("p", {}, unknown && !isKept ? "No solve has this address. Each night lists its own." : error.message), isKept ? null : html("p", {}, html("a", { href: "/nights" }, "To the latest night"))));
});

async function open() {
  showLetters();
  const shown = await readSolve(decodeURIComponent(here.split("/").pop()));
  document.title = `${titleOf(shown)}${shown.day ? `, ${longDay(shown.day)}` : ""} - fermata`;
  if (shown.turns.length === 0) {
    content.replaceChildren(html("h1", {}, titleOf(shown)), html("p", { class: "message" }, "No turn of this solve was recorded, so there is nothing to draw."));
  } else {
    const page = html("div", {});
    content.replaceChildren(page);
    showReading(page, shown, "hand", location.hash);
    skipToScore();
  }
  // For whoever measures: from here on the page answers to keys and touches.
  performance.mark("interactive");
  turnover(shown);
}

/** Only a solve that is drawn has a score to skip to. */
function skipToScore() {
  const skip = document.querySelector(".skip");
  skip.href = "#staves";
  skip.textContent = "To the score";
}

/** Fills the page by one reading of the hand, at the moment that an address names; another reading fills it anew. */
function showReading(page, shown, name, hash) {
  const score = readScore(shown, name);
  const transport = transportOf(score);
  const setup = setupHere(score, transport);
  const place = cubePlace(score, transport, isKept ? null : [setup.ask, setup.words]);
  const staves = makeStaves(transport.last);
  const glance = glanceOver(staves);
  const turns = html("details", {}, html("summary", {}, `Every turn as a table (${score.turns.length})`));
  turns.addEventListener("toggle", () => { if (turns.children.length === 1) turns.append(turnTable(score)); });
  page.replaceChildren(
    html("h1", {}, titleOf(shown)), html("p", { class: "under" }, summaryOf(score)),
    ...(score.timed ? [] : [html("p", { class: "under" }, "This solve has no clock: its turns stand evenly apart, and nothing tells how long they took.")]),
    readingChoice(score, (other) => {
      const at = momentHash(score, transport.now().position, transport.now().span);
      live.end();
      address.abort();
      showReading(page, shown, other, at);
      page.querySelector(`input[value=${other}]`).focus();
    }),
    html("div", { class: "staves-frame" }, staves, glance), place.element, keysHelp(),
    html("div", { class: "columns" },
      html("div", {}, html("h2", {}, "Stages"),
        score.stages.length > 0 ? stageTable(score) : html("p", { class: "quiet" }, "No method could be told for this solve, so it has no stages.")),
      html("div", {},
        shown.scramble ? [html("h2", {}, "Scramble"), html("p", { class: "scramble" }, shown.scramble), said(scrambleEndWord(shown.scramble_end))] : null,
        html("h2", {}, "To keep"), keeping(score, titleOf(shown), summaryOf(score)), said(derivedWord(shown.derived)))),
    html("details", { class: "reading", open: matchMedia("(min-width: 60rem)").matches }, html("summary", {}, "How to read it"), legend(score)),
    turns,
  );
  transport.listen((state) => place.show(state));
  const live = liveStaves(staves, score, transport, place.element);
  const address = keepAddress(score, transport, hash);
}

/** A remark, if there is one. */
const said = (words) => (words ? html("p", { class: "quiet small" }, `${words[0].toUpperCase()}${words.slice(1).replace(/\.$/, "")}.`) : null);

/** By the hand or by the centres; before and after a correction. Where nothing is told of the hand, that is said. */
function readingChoice(score, choose) {
  if (score.readings.length === 1) {
    const why = score.gaps.length > 0 ? "Turns were lost, so nothing" : "Nothing";
    return html("p", { class: "under small" }, `${why} tells what the hand did: layers as the centres felt them.`);
  }
  const group = html("fieldset", { class: "speeds readings" }, html("legend", {}, "read"));
  for (const { name, title } of score.readings) {
    const radio = html("input", { type: "radio", name: "reading", value: name, checked: name === score.reading.name });
    radio.addEventListener("change", () => choose(name));
    group.append(html("label", {}, radio, html("span", {}, title)));
  }
  return html("div", { class: "reading-choice" }, group, html("p", { class: "quiet small" }, score.reading.says));
}

/** #t=12.34, #t=3.20-5.60 (or #turn=14): stepping and selecting keep it in the address without filling the history. */
function keepAddress(score, transport, hash) {
  const stop = new AbortController();
  let waiting = null;
  transport.listen(({ position, playing, span }) => {
    if (playing || stop.signal.aborted) return;
    clearTimeout(waiting);
    // Browsers refuse more than a hundred changes in a few seconds, and a held key makes more.
    waiting = setTimeout(() => history.replaceState(null, "", momentHash(score, position, span)), SHORT_GAP_BETWEEN_KEYS_MILLIS);
  });
  addEventListener("hashchange", () => followAddress(score, transport, location.hash), { signal: stop.signal });
  followAddress(score, transport, hash);
  return stop;
}

function keysHelp() {
  const keys = (...names) => names.flatMap((name) => [html("kbd", {}, name), " "]);
  return html("p", { class: "keys quiet small", id: "keys" },
    ...keys("\u2190", "\u2192"), "turn. On the score also ", ...keys("\u2191", "\u2193"), "rest, ", ...keys("Page \u2191", "Page \u2193"), "stage, ",
    ...keys("Home", "End", "Space"), "play. With ", ...keys("Shift"), "they select, as dragging does; ", ...keys("Esc"), "lets go.");
}

async function turnover(shown) {
  const list = document.getElementById("turnover");
  if (!shown.day || isKept) return;
  const solves = await readSolvesOf(shown.day);
  const at = solves.findIndex((solve) => solve.id === shown.id);
  const item = (solve, word) => html("li", {}, solve ? html("a", { href: `/solves/${encodeURIComponent(solve.id)}`, "aria-label": `${word} solve` }, word) : html("span", { class: "quiet" }, word));
  list.replaceChildren(html("li", {}, html("a", { href: `/nights/${shown.day}` }, "its night")), item(solves[at - 1], "earlier"), item(solves[at + 1], "later"));
}
