// The page of one solve: its score, the cube at the cursor, its stages and turns.

import { html, px, reducedMotion, svg } from "./dom.mjs";
import { here, isKept, readSolve, readSolvesOf } from "./reader.mjs";
import { engrave } from "./score-engraving.mjs";
import { layOut, systemAt, systemShowing } from "./score-layout.mjs";
import { fermata, gap, note, rest, slur, specimen, tie } from "./score-marks.mjs";
import { spoken, stagePlace } from "./score-stage.mjs";
import { momentHash, stageTable, turnTable } from "./score-table.mjs";
import { readScore, timeOf } from "./solve.mjs";
import { keyAction, transportOf } from "./transport.mjs";
import { clockTime, count, derivedWord, duration, handWord, longDay, outcomeWord, percent, scrambleEndWord, seconds } from "./words.mjs";

const content = document.getElementById("content");
const SHORT_GAP_BETWEEN_KEYS_MILLIS = 150;

open().catch((error) => {
  const unknown = error.status === 404;
  content.replaceChildren(html("h1", {}, unknown ? "There is no such solve" : "The solve cannot be shown"),
    html("div", { class: "message" }, html("p", {}, error.message), html("p", {}, html("a", { href: "/" }, "To the latest night"))));
});

async function open() {
  const id = decodeURIComponent(here.split("/").pop());
  const shown = await readSolve(id);
  const score = readScore(shown);
  turnover(shown);
  document.title = `${titleOf(shown)}${shown.day ? `, ${longDay(shown.day)}` : ""} - fermata`;
  if (score.turns.length === 0) {
    content.replaceChildren(html("h1", {}, titleOf(shown)), html("p", { class: "message" }, "No turn of this solve was recorded, so there is nothing to draw."));
    return;
  }
  const transport = transportOf(score);
  const place = stagePlace(score, transport);
  const staves = html("div", {
    id: "staves", class: "staves", role: "slider", tabindex: 0, "aria-label": "Score: the moment in the solve", "aria-orientation": "horizontal",
    "aria-valuemin": 0, "aria-valuemax": transport.last, "aria-describedby": "keys",
  });
  content.replaceChildren(
    html("h1", {}, titleOf(shown)), html("p", { class: "under" }, summary(score)),
    ...(score.timed ? [] : [html("p", { class: "under" }, "This solve has no clock: its turns stand evenly apart, and nothing tells how long they took.")]),
    staves, place.element, keysHelp(), ...below(score),
  );
  drawStaves(staves, score, transport, place);
  followHash(score, transport);
  // For whoever measures: from here on the page answers to keys and touches.
  performance.mark("interactive");
}

function titleOf(shown) {
  return shown.number ? `Solve ${shown.number}` : `Solve ${shown.id}`;
}

function summary(score) {
  const { shown } = score;
  const rested = score.rests.reduce((sum, one) => sum + one.length_us, 0);
  const facts = [
    shown.day ? `${longDay(shown.day)}${shown.started_at ? `, ${clockTime(shown.started_at)}` : ""}` : null,
    [score.timed && shown.time_us !== null ? duration(shown.time_us) : "no clock", count(score.turns.length, "turn"),
      score.timed && score.end > 0 ? `${(score.turns.length / (score.end / 1e6)).toFixed(1)} a second` : null,
      score.timed && score.end > 0 ? `${percent(rested / score.end)} rest` : null].filter(Boolean).join(", "),
    [shown.method && !["other", "untold"].includes(shown.method) ? shown.method : null, shown.cross_colour ? `${shown.cross_colour} cross` : null, handWord(shown.hand)].filter(Boolean).join(", "),
    outcomeWord(shown),
  ];
  return facts.filter(Boolean).map((fact) => `${fact[0].toUpperCase()}${fact.slice(1)}.`).join(" ");
}

/** Draws the systems for the width there is, again whenever that changes, and keeps cursor and slider in step. */
function drawStaves(staves, score, transport, place) {
  let layout = null;
  let systems = [];
  const cursor = svg("g", {}, svg("circle", { class: "halo", r: 10 }), svg("path", { class: "line" }), svg("path", { class: "foot" }));
  const redraw = () => {
    const width = Math.floor(staves.clientWidth);
    if (width === 0 || (layout !== null && layout.width === width)) return;
    layout = layOut(score, width);
    systems = engrave(score, layout);
    staves.replaceChildren(...systems.map((system) => system.picture));
    moveCursor(transport.now());
  };
  const moveCursor = ({ position, micros, playing, stepped }) => {
    if (layout === null) return;
    // Under reduced motion the cursor goes from turn to turn instead of gliding.
    const glides = playing && !reducedMotion.matches;
    const showing = glides ? systemAt(layout, micros) : systemShowing(layout, position);
    const at = glides ? micros : timeOf(score, position);
    const system = layout.systems[showing];
    const { cursor: under, top, bottom, picture } = systems[showing];
    const x = position === 0 && at === 0 ? system.left : Math.min(system.right, system.x(at));
    under.replaceChildren(cursor);
    cursor.children[1].setAttribute("d", `M${px(x)} ${px(top - 12)}V${px(bottom + 12)}`);
    cursor.children[2].setAttribute("d", `M${px(x - 5)} ${px(bottom + 20)}h10l-5 -9Z`);
    markNote(position, picture, cursor.children[0]);
    if (stepped) keepInSight(picture, place.element);
    if (playing && staves.dataset.system !== String(showing)) keepInSight(picture, place.element);
    staves.dataset.system = showing;
  };
  const markNote = (position, picture, halo) => {
    staves.querySelector(".note.now")?.classList.remove("now");
    const now = picture.querySelector(`[data-turn="${position - 1}"]`);
    now?.classList.add("now");
    halo.setAttribute("visibility", now ? "visible" : "hidden");
    if (now) halo.setAttribute("transform", now.getAttribute("transform"));
  };
  transport.listen((state) => {
    moveCursor(state);
    place.show(state);
    // While it plays nothing is spoken; where it stops is.
    if (!state.playing) tellSlider(staves, score, state);
  });
  new ResizeObserver(redraw).observe(staves);
  redraw();
  listenToPointer(staves, score, transport, () => ({ layout, systems }));
  listenToKeys(staves, transport);
}

function tellSlider(staves, score, { position }) {
  staves.setAttribute("aria-valuenow", position);
  staves.setAttribute("aria-valuetext", spoken(score, position));
}

/** Scrolls only if the system would be hidden above, or below behind the cube that stays in view. */
function keepInSight(picture, place) {
  const box = picture.getBoundingClientRect();
  const covered = getComputedStyle(place).position === "sticky" ? place.getBoundingClientRect().height : 0;
  const floor = innerHeight - covered;
  if (box.top < 0 || box.bottom > floor) {
    scrollBy({ top: box.top < 0 ? box.top - 8 : Math.min(box.bottom - floor + 8, box.top), behavior: reducedMotion.matches ? "auto" : "smooth" });
  }
}

function listenToPointer(staves, score, transport, drawn) {
  let dragging = false;
  const seek = (event) => {
    const { layout, systems } = drawn();
    const index = systems.findLastIndex(({ picture }) => picture.getBoundingClientRect().top <= event.clientY);
    const system = layout.systems[Math.max(0, index)];
    const x = event.clientX - systems[Math.max(0, index)].picture.getBoundingClientRect().left;
    transport.goTo(nearestPosition(score, system, system.timeAt(x)));
  };
  let byMouse = false;
  staves.addEventListener("pointerdown", (event) => {
    byMouse = event.pointerType === "mouse";
    dragging = byMouse && event.button === 0;
    if (dragging) seek(event);
  });
  // A finger that scrolls also goes down here; only a tap is meant for the score.
  staves.addEventListener("click", (event) => { if (!byMouse) seek(event); });
  staves.addEventListener("pointermove", (event) => { if (dragging && event.buttons === 1) seek(event); });
  addEventListener("pointerup", () => { dragging = false; });
}

/** The position whose note is nearest to a time, among those that the system shows. */
function nearestPosition(score, system, time) {
  let nearest = system.isFirst ? 0 : system.first + 1;
  const from = system.isFirst ? 0 : system.first + 1;
  for (let position = from; position <= system.last; position++) {
    const at = position === 0 ? -120_000 : timeOf(score, position);
    const best = nearest === 0 ? -120_000 : timeOf(score, nearest);
    if (Math.abs(at - time) <= Math.abs(best - time)) nearest = position;
  }
  return nearest;
}

/** Left and right step from anywhere but a control that needs them; the other keys act on the score itself. */
function listenToKeys(staves, transport) {
  addEventListener("keydown", (event) => {
    const action = keyAction(transport, event);
    if (action === null || event.target.closest?.("input, .scroller, select, textarea")) return;
    const onScore = event.target === staves;
    const sideways = event.key === "ArrowLeft" || event.key === "ArrowRight";
    if (!onScore && !sideways) return;
    event.preventDefault();
    action();
  });
}

/** #t=12.34 (or #turn=14 without a clock) names a moment; stepping keeps it in the address without filling the history. */
function followHash(score, transport) {
  const follow = () => {
    const [name, value] = location.hash.slice(1).split("=");
    const number = Number(value);
    if (name === "turn" && Number.isInteger(number)) transport.goTo(number);
    else if (name === "t" && Number.isFinite(number)) transport.goToTime(number * 1e6 + 5000);
    else transport.goTo(0);
  };
  let waiting = null;
  transport.listen(({ position, playing }) => {
    if (playing) return;
    clearTimeout(waiting);
    // Browsers refuse more than a hundred changes in a few seconds, and a held key makes more.
    waiting = setTimeout(() => history.replaceState(null, "", momentHash(score, position)), SHORT_GAP_BETWEEN_KEYS_MILLIS);
  });
  addEventListener("hashchange", follow);
  follow();
}

function keysHelp() {
  const key = (name) => html("kbd", {}, name);
  return html("p", { class: "keys quiet small", id: "keys" },
    key("\u2190"), " ", key("\u2192"), " turn, with ", key("Shift"), " stage. On the score also ", key("\u2191"), " ", key("\u2193"), " rest, ", key("Home"), " ", key("End"), ", ", key("Space"), " play.");
}

function below(score) {
  return [
    html("div", { class: "columns" },
      html("div", {}, html("h2", {}, "Stages"),
        score.stages.length > 0 ? stageTable(score) : html("p", { class: "quiet" }, "No method could be told for this solve, so it has no stages."),
        score.shown.scramble ? html("p", { class: "scramble quiet" }, [`Scramble: ${score.shown.scramble}`, scrambleEndWord(score.shown.scramble_end)].filter(Boolean).join(", ")) : null),
      html("details", { class: "reading", open: matchMedia("(min-width: 60rem)").matches }, html("summary", {}, "How to read it"), legend(score))),
    html("details", {}, html("summary", {}, `Every turn as a table (${score.turns.length})`), turnTable(score)),
    html("p", { class: "quiet small" }, derivedWord(score.shown.derived) ?? ""),
  ];
}

function legend(score) {
  const at = (seen, repaired = false) => ({ seen, repaired, index: "" });
  const sign = (marks, words) => html("li", {}, specimen(...marks), html("span", {}, words));
  const { shown, hold } = score;
  const held = shown.cross_colour ? `with the ${shown.cross_colour} cross down` : "as it was scrambled";
  return html("div", { class: "legend" },
    html("p", {}, `Time runs to the right, ${score.timed ? "equal lengths are equal times" : "evenly, because this solve has no clock"}. Each line is a layer of the cube, as its centres felt it, held ${held}. What the hand did, tilts and wide turns, is not drawn here yet: the command show tells it.`),
    hold.down === "D" ? null : html("p", {}, `So what the scramble calls ${hold.down} is D here; the table of turns gives both.`),
    html("ul", {},
      sign([note(at("R"), 26, 20)], "stem up: a quarter turn clockwise"),
      sign([note(at("R'"), 26, 20)], "stem down: counter-clockwise"),
      sign([note(at("R2"), 26, 20)], "hollow: a half turn"),
      sign([note(at("R"), 16, 20), note(at("R"), 36, 20), tie(16, 36, 20)], "tied: two quarters in one go"),
      sign([note(at("R", true), 26, 20)], "in brackets: lost on the air, repaired from what the cube repeated"),
      sign([rest({ left: 6, right: 46, top: 4, bottom: 36, measureY: 26, labelY: 17 }, "0.84")], "a rest as long as it was, in seconds"),
      score.rests.some((one) => one.fermata === true) ? sign([fermata(26, 24)], "a fermata: what came next could have been seen before the rest") : null,
      sign([slur(6, 46, 18)], "turned without a rest"),
      sign([gap(10, 42, 4, 36, "")], "turns were lost here, and nothing tells which"),
    ),
    html("p", { class: "quiet" }, "Letters on the stickers name their colours: W white, Y yellow, O orange, R red, G green, B blue."),
  );
}

async function turnover(shown) {
  const list = document.getElementById("turnover");
  if (!shown.day || isKept) return;
  const solves = await readSolvesOf(shown.day);
  const here = solves.findIndex((solve) => solve.id === shown.id);
  const item = (solve, word) => html("li", {}, solve ? html("a", { href: `/solves/${encodeURIComponent(solve.id)}`, "aria-label": `${word} solve` }, word) : html("span", { class: "quiet" }, word));
  list.replaceChildren(html("li", {}, html("a", { href: `/nights/${shown.day}` }, "night")), item(solves[here - 1], "earlier"), item(solves[here + 1], "later"));
}
