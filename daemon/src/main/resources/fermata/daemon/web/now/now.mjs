// The page of what happens now: is the board listening, what to turn next, and how the last solve went.

import { SOLVED } from "../cube/cube.mjs";
import { showLetters } from "../cube/letters.mjs";
import { cubeView } from "../cube/view.mjs";
import { chosen, remember } from "../page/choices.mjs";
import { html } from "../page/dom.mjs";
import { percent } from "../page/words.mjs";
import { scrambleLines, solveLine } from "../staff/lines.mjs";
import { closeSound, keepAwake, openSound, play } from "./cues.mjs";
import { hear } from "./live.mjs";
import { CALLS, DNF_FROM, PLUS_TWO_FROM, finding, lastSolve, spoken, whatNow } from "./now-words.mjs";
import { post } from "./session.mjs";

const LOST = { listening: false, reason: "This page has lost the board. It tries again by itself.", detail: "", battery_percent: null };
const TOLD_EVERY_MS = 100;

const settings = {};
let state = null;
let lost = false;
let cuedAttempt = false;
let called = 0;
let width = 0;
let told = "";
let before = { phase: "", mends: false };

const title = html("h1", { class: "status" }, "Listening for the board");
const under = html("p", { class: "under" });
const task = html("h2", { class: "task" });
const clock = html("p", { class: "inspection", hidden: true });
const lines = html("div", { class: "lines" });
const result = html("div", { class: "result" });
const view = cubeView();
const cubeFrame = html("div", { class: "cube-frame" }, view.picture);
const live = html("p", { class: "offscreen", "aria-live": "polite" });
const evening = html("div", { hidden: true, class: "evening" }, task, clock, lines, html("div", { class: "beneath" }, result, cubeFrame), actions());
document.getElementById("content").replaceChildren(html("div", { class: "heading" }, title, under), desk(), evening, live);

showLetters();

hear((now, kind) => {
  state = now;
  lost = kind === "lost";
  show();
});

new ResizeObserver(() => {
  if (Math.floor(lines.clientWidth) !== width) show();
}).observe(lines);
setInterval(countInspection, TOLD_EVERY_MS);

function show() {
  if (state?.link === undefined || state?.link === null) return;
  showLink(lost ? LOST : state.link);
  evening.hidden = lost || state.evening === null;
  if (!evening.hidden) showEvening(state.evening);
}

function showLink(link) {
  title.textContent = link.listening ? "Listening" : "Not listening";
  document.title = `${title.textContent} - fermata`;
  document.querySelector(".now").classList.toggle("deaf", !link.listening);
  const battery = link.battery_percent === null ? "" : `Battery ${percent(link.battery_percent / 100)}.`;
  under.replaceChildren(...[link.reason, link.detail ? `(${link.detail})` : "", battery, ...(link.warnings ?? [])].filter(Boolean).map((words) => html("span", {}, `${words} `)));
}

function showEvening(now) {
  width = Math.floor(lines.clientWidth);
  task.textContent = whatNow(now);
  cue(now);
  if (now.phase === "scrambling") lines.replaceChildren(...scrambleLines(now.scramble, width));
  else if (now.phase === "ready") lines.replaceChildren(...scrambleLines({ ...now.scramble, done: now.scramble.turns.length }, width));
  else if (now.phase === "solving") lines.replaceChildren(solveLine(state.turns, width));
  else lines.replaceChildren();
  lines.setAttribute("role", "img");
  lines.setAttribute("aria-label", now.phase === "solving" ? "The solve so far" : `Scramble: ${now.scramble?.turns.join(" ") ?? "none yet"}`);
  view.draw(state.cube.facelets ?? SOLVED, state.colours);
  cubeFrame.hidden = state.cube.facelets === null;
  showLast(now);
  say(spoken(now));
}

function showLast(now) {
  // While a solve runs nothing is told of the one before: it would only hurry.
  const shows = now.last !== null && now.phase !== "solving" && now.phase !== "ready";
  result.replaceChildren();
  if (!shows) return;
  const [time, sentence] = lastSolve(now.last, cuedAttempt);
  result.append(html("h2", {}, "The last solve"), html("p", {}, html("strong", { class: "time" }, time), ` ${sentence}`));
  if (now.last.whole && settings.finding.checked) result.append(html("p", { class: "quiet" }, finding(now.last)));
}

function say(words) {
  if (words && words !== told) live.textContent = words;
  told = words || told;
}

function cue(now) {
  const mends = (now.scramble?.mending.length ?? 0) > 0;
  if (now.phase === "ready" && before.phase !== "ready") {
    cuedAttempt = settings.cued.checked;
    called = 0;
    play(660, 880);
  }
  if (mends && !before.mends) play(220);
  if (before.phase === "solving" && now.phase !== "solving") play(880, 1175);
  before = { phase: now.phase, mends };
}

/** Runs only for cued attempts, from the moment the scrambled cube was put down. */
function countInspection() {
  const now = state?.evening;
  const runs = !lost && cuedAttempt && now?.phase === "ready";
  clock.hidden = !runs;
  if (!runs) return;
  const elapsed = (performance.now() - state.offsetMs - now.inspection_from_us / 1000) / 1000;
  if (elapsed < 0) {
    clock.textContent = "Inspection begins when the cube rests.";
    return;
  }
  const late = elapsed >= DNF_FROM ? ": DNF" : elapsed >= PLUS_TWO_FROM ? ": +2" : "";
  const words = `Inspection ${Math.floor(elapsed)} s${late}`;
  if (clock.textContent !== words) clock.textContent = words;
  if (called < CALLS.length && elapsed >= CALLS[called]) {
    play(...Array.from({ length: called + 1 }, () => 990));
    say(`${CALLS[called]} seconds`);
    called++;
  }
}

/** What can be asked of the board: for when the page and the cube in the hand disagree. */
function actions() {
  const asked = (path, words) => {
    const button = html("button", { type: "button" }, words);
    button.addEventListener("click", () => post(path).catch((error) => { live.textContent = error.message; }));
    return button;
  };
  return html("p", { class: "actions" }, asked("/api/now/next", "another scramble"), asked("/api/now/solved", "the cube in my hand is solved"));
}

/** One touch opens the evening; nothing needs to be touched after it. */
function desk() {
  const choice = (name, words, usually, changed) => {
    const box = html("input", { type: "checkbox", name, checked: chosen(name, usually) });
    box.addEventListener("change", () => {
      remember(name, box.checked);
      changed(box.checked);
    });
    settings[name] = box;
    return html("label", { class: "choice" }, box, html("span", {}, words));
  };
  const opened = html("p", { class: "quiet small", hidden: true });
  const open = html("button", { type: "button", class: "open" }, "Open the evening");
  open.addEventListener("click", async () => {
    if (settings.sound.checked) openSound();
    play(880);
    open.hidden = true;
    place.classList.remove("waits");
    place.parentElement.append(place);
    opened.hidden = false;
    const awake = await keepAwake();
    opened.textContent = awake ? "The evening is open; the screen stays awake." : "The evening is open. This browser does not let a page keep the screen awake.";
  });
  const place = html("section", { class: "opening waits", "aria-label": "This evening" }, open, opened,
    html("div", { class: "choices" },
      choice("sound", "sound", true, (on) => { if (open.hidden) (on ? openSound : closeSound)(); }),
      choice("cued", "cued inspection", false, () => {}),
      choice("finding", "one finding a solve", true, () => show())));
  return place;
}
