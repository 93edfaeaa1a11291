// The place under the score where the cube stands: the cube at the cursor, the turn in words, and the controls.

import { seenAt } from "../cube/solve.mjs";
import { centresInWords, cubeView } from "../cube/view.mjs";
import { html, svg } from "../page/dom.mjs";
import { count } from "../page/words.mjs";
import { cubePlayer } from "./cube-player.mjs";
import { momentInWords, spoken } from "./score-words.mjs";
import { spanInWords } from "./span.mjs";

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

/** Builds the place; returns {element, show(state)} and wires its controls to the transport. `more` stands at its end. */
export function cubePlace(score, transport, more) {
  const view = cubeView();
  const words = html("p", { class: "moment" });
  const live = html("p", { class: "offscreen", "aria-live": "polite" });
  const playButton = button("play", "Play", () => transport.toggle());
  const element = html("section", { class: "place", "aria-label": "The cube at the cursor" },
    html("div", { class: "cube-frame", role: "img", id: "cube" }, view.picture),
    html("div", { class: "desk" }, words, live, controls(score, transport, playButton), speeds(transport), more),
  );
  const turnCube = cubePlayer(score, view);
  let worded = "";
  const describe = (state) => element.querySelector("#cube").setAttribute("aria-label", cubeInWords(score, state.position));
  return {
    element,
    show(state) {
      turnCube(state.position);
      const wording = `${state.position} ${state.span?.from} ${state.span?.to}`;
      if (wording !== worded) {
        worded = wording;
        words.replaceChildren(...(state.span ? spanLine(score, transport, state.span) : momentLine(score, state.position)));
      }
      if (state.stepped) live.textContent = state.span ? spanInWords(score, state.span) : spoken(score, state.position);
      if (!state.playing) describe(state);
      setIcon(playButton, state.playing ? "pause" : "play", state.playing ? "Pause" : "Play");
    },
  };
}

function momentLine(score, position) {
  const { title, detail } = momentInWords(score, position);
  return [html("strong", {}, title), " ", html("span", { class: "quiet" }, detail)];
}

function spanLine(score, transport, span) {
  const [which, figures] = spanInWords(score, span).split(": ");
  const clear = html("button", { type: "button", class: "plain" }, "let go");
  clear.addEventListener("click", () => transport.clear());
  return [html("strong", {}, which[0].toUpperCase() + which.slice(1)), " ", html("span", { class: "quiet" }, figures), " ", clear];
}

function cubeInWords(score, position) {
  return `The cube after ${count(position, "turn")}, ${centresInWords(seenAt(score, position), score.colours)}`;
}

function controls(score, transport, playButton) {
  const rests = score.rests.length > 0;
  return html("div", { class: "controls", role: "group", "aria-label": "Step and play" },
    button("backStage", "To the stage before", () => transport.step.stage(false)),
    button("backRest", "To the rest before", () => transport.step.rest(false), !rests),
    button("backTurn", "One turn back", () => transport.step.turn(-1)),
    playButton,
    button("turn", "One turn on", () => transport.step.turn(1)),
    button("rest", "To the next rest", () => transport.step.rest(true), !rests),
    button("stage", "To the next stage", () => transport.step.stage(true)),
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
