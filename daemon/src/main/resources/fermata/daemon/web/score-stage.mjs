// The place under the score where the cube stands: the cube at the cursor, the turn in words, and the controls.

import { centresInWords, cubeView } from "./cube-view.mjs";
import { html, reducedMotion, svg } from "./dom.mjs";
import { count, duration, seconds, turnInWords } from "./words.mjs";

const ICONS = {
  start: "M5 4V16M16 4L7 10L16 16Z",
  backStage: "M10 4L3 10L10 16ZM17 4L10 10L17 16Z",
  backTurn: "M14 4L5 10L14 16Z",
  play: "M5 3L17 10L5 17Z",
  pause: "M5 3H8.5V17H5ZM11.5 3H15V17H11.5Z",
  turn: "M6 4L15 10L6 16Z",
  stage: "M10 4L17 10L10 16ZM3 4L10 10L3 16Z",
  rest: "M2 5V15M18 5V15M2 10H13M10 6.5L14.5 10L10 13.5",
  backRest: "M2 5V15M18 5V15M18 10H7M10 6.5L5.5 10L10 13.5",
};

/** Builds the place; returns {element, show(state)} and wires its controls to the transport. */
export function stagePlace(score, transport) {
  const view = cubeView();
  const words = html("p", { class: "moment" });
  const live = html("p", { class: "offscreen", "aria-live": "polite" });
  const playButton = button("play", "Play", () => transport.toggle());
  const element = html("section", { class: "place", "aria-label": "The cube at the cursor" },
    html("div", { class: "cube-frame", role: "img", id: "cube" }, view.picture),
    html("div", { class: "desk" }, words, live, controls(score, transport, playButton), speeds(transport)),
  );
  const turnCube = animator(score, view);
  let worded = null;
  const describe = (state) => element.querySelector("#cube").setAttribute("aria-label", cubeInWords(score, state.position));
  return {
    element,
    show(state) {
      turnCube(state);
      if (state.position !== worded) {
        worded = state.position;
        const { title, detail } = momentInWords(score, state.position);
        words.replaceChildren(html("strong", {}, title), " ", html("span", { class: "quiet" }, detail));
      }
      if (state.stepped) live.textContent = spoken(score, state.position);
      if (!state.playing) describe(state);
      setIcon(playButton, state.playing ? "pause" : "play", state.playing ? "Pause" : "Play");
    },
  };
}

/** The slider's value in words: "turn 14 of 61, right, quarter, clockwise, 5.20 s, pair 2, then a rest of 0.80 s". */
export function spoken(score, position) {
  const { title, detail } = momentInWords(score, position);
  return detail ? `${title}, ${detail}` : title;
}

function momentInWords(score, position) {
  const total = score.turns.length;
  if (position === 0) return { title: `Before the first of ${count(total, "turn")}`, detail: "" };
  const turn = score.turns[position - 1];
  const rest = score.restAfter.get(turn.index);
  const gap = score.gaps.find((one) => one.after_turn === turn.index);
  const details = [
    turnInWords(turn.seen),
    score.timed ? `${seconds(turn.at)} s` : null,
    turn.stage?.label,
    turn.repaired ? "repaired from what the cube repeated" : null,
    rest ? `then a ${rest.fermata === true ? "fermata" : "rest"} of ${duration(rest.length_us)}` : null,
    gap ? (typeof gap.lost === "number" ? `then ${count(gap.lost, "turn")} lost` : "then turns lost") : null,
  ];
  return { title: `Turn ${position} of ${total}`, detail: details.filter(Boolean).join(", ") };
}

function cubeInWords(score, position) {
  const letters = score.hold.look(score.states[position]);
  return `The cube after ${count(position, "turn")}, ${centresInWords(letters, score.colours)}`;
}

function controls(score, transport, playButton) {
  const rests = score.rests.length > 0;
  return html("div", { class: "controls", role: "group", "aria-label": "Step and play" },
    button("backStage", "To the stage before", () => transport.stepStage(false)),
    button("backRest", "To the rest before", () => transport.stepRest(false), !rests),
    button("backTurn", "One turn back", () => transport.stepTurn(-1)),
    playButton,
    button("turn", "One turn on", () => transport.stepTurn(1)),
    button("rest", "To the next rest", () => transport.stepRest(true), !rests),
    button("stage", "To the next stage", () => transport.stepStage(true)),
  );
}

function button(icon, name, act, disabled = false) {
  const made = html("button", { type: "button", disabled });
  setIcon(made, icon, name);
  made.addEventListener("click", act);
  return made;
}

function setIcon(target, icon, name) {
  if (target.getAttribute("aria-label") === name) return;
  target.setAttribute("aria-label", name);
  target.setAttribute("title", name);
  const drawn = icon === "rest" || icon === "backRest" ? "drawn" : "filled";
  target.replaceChildren(svg("svg", { viewBox: "0 0 20 20", class: drawn, "aria-hidden": "true" }, svg("path", { d: ICONS[icon] })));
}

function speeds(transport) {
  const choices = [[1, "1", "full speed"], [0.5, "\u00bd", "half speed"], [0.25, "\u00bc", "quarter speed"]];
  const group = html("fieldset", { class: "speeds" }, html("legend", {}, "speed"));
  for (const [share, sign, name] of choices) {
    const radio = html("input", { type: "radio", name: "speed", value: share, checked: share === 1, "aria-label": name });
    radio.addEventListener("change", () => transport.setSpeed(share));
    group.append(html("label", {}, radio, html("span", { "aria-hidden": "true" }, sign)));
  }
  return group;
}

/** Shows each state; a single step on or back is turned in sight unless less motion is asked for. */
function animator(score, view) {
  const turnMillis = Number(getComputedStyle(document.documentElement).getPropertyValue("--turn-ms"));
  let shown = null;
  let running = null;
  const letters = (position) => score.hold.look(score.states[position]);
  return ({ position }) => {
    if (position === shown) return;
    const step = shown === null ? 0 : position - shown;
    const from = shown;
    shown = position;
    cancelAnimationFrame(running);
    if (Math.abs(step) !== 1 || reducedMotion.matches) {
      view.draw(letters(position), score.colours);
      return;
    }
    const turn = score.turns[Math.min(from, position)].seen;
    const start = performance.now();
    const frame = (now) => {
      const done = Math.min(1, Math.max(0, now - start) / turnMillis);
      const share = step > 0 ? done : 1 - done;
      if (done < 1) {
        view.draw(letters(Math.min(from, position)), score.colours, { turn, share });
        running = requestAnimationFrame(frame);
      } else {
        view.draw(letters(position), score.colours);
      }
    };
    running = requestAnimationFrame(frame);
  };
}
