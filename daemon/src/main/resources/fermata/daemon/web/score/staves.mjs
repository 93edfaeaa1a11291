// The staves on the page: drawn for the width there is, with the cursor, the selected span, pointer and keys.

import { timeOf } from "../cube/solve.mjs";
import { html, px, reducedMotion, svg } from "../page/dom.mjs";
import { engrave } from "./engraving.mjs";
import { layOut, systemAt, systemShowing } from "./layout.mjs";
import { spoken } from "./score-words.mjs";
import { drawSpan } from "./span.mjs";
import { keyAction } from "./transport.mjs";

// A press that moves less than this is a click.
const DRAG_FROM_PIXELS = 5;

export function makeStaves(last) {
  return html("div", {
    id: "staves", class: "staves", role: "slider", tabindex: 0, "aria-label": "Score: the moment in the solve", "aria-orientation": "horizontal",
    "aria-valuemin": 0, "aria-valuemax": last, "aria-describedby": "keys",
  });
}

/** Draws the systems for the width there is, again whenever that changes, and keeps cursor, span and slider in step. */
export function liveStaves(staves, score, transport, place) {
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
  const moveCursor = ({ position, micros, playing, stepped, span }) => {
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
    drawSpan(score, layout, systems, span);
    markNote(position, picture, cursor.children[0]);
    if (stepped || (playing && staves.dataset.system !== String(showing))) keepInSight(picture, place);
    staves.dataset.system = showing;
  };
  const markNote = (position, picture, halo) => {
    staves.querySelector(".note.now")?.classList.remove("now");
    const event = picture.querySelector(`[data-turn="${position - 1}"]`);
    event?.parentNode.classList.add("now");
    staves.dataset.turn = position - 1;
    halo.setAttribute("visibility", event ? "visible" : "hidden");
    if (event) halo.setAttribute("transform", `translate(${event.getAttribute("cx")} ${event.getAttribute("cy")})`);
  };
  transport.listen((state) => {
    moveCursor(state);
    // While it plays nothing is spoken; where it stops is.
    if (!state.playing) tellSlider(staves, score, state);
  });
  const resizing = new ResizeObserver(redraw);
  resizing.observe(staves);
  redraw();
  const stop = new AbortController();
  listenToPointer(staves, score, transport, () => ({ layout, systems }), stop.signal);
  listenToKeys(staves, transport, stop.signal);
  return {
    end() {
      resizing.disconnect();
      stop.abort();
      transport.pause();
    },
  };
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

/** A click goes to the nearest note, a drag selects from where it began; a finger may do both, and scroll up and down. */
function listenToPointer(staves, score, transport, drawn, signal) {
  let pressed = null;
  const positionUnder = ({ clientX, clientY }) => {
    const { layout, systems } = drawn();
    const index = Math.max(0, systems.findLastIndex(({ picture }) => picture.getBoundingClientRect().top <= clientY));
    const system = layout.systems[index];
    return nearestPosition(score, system, system.timeAt(clientX - systems[index].picture.getBoundingClientRect().left));
  };
  staves.addEventListener("pointerdown", (event) => {
    if (event.button === 0) pressed = { x: event.clientX, position: positionUnder(event), drags: false };
  }, { signal });
  addEventListener("pointermove", (event) => {
    if (pressed === null || event.buttons !== 1) return;
    if (!pressed.drags && Math.abs(event.clientX - pressed.x) < DRAG_FROM_PIXELS) return;
    if (!pressed.drags) transport.goTo(pressed.position);
    pressed.drags = true;
    const to = positionUnder(event);
    if (to !== transport.now().position) transport.extendTo(to);
  }, { signal });
  staves.addEventListener("click", (event) => {
    const dragged = pressed?.drags;
    pressed = null;
    if (dragged) return;
    if (event.shiftKey) transport.extendTo(positionUnder(event));
    else transport.goTo(positionUnder(event));
  }, { signal });
  // What ends outside, or becomes scrolling, ends here.
  addEventListener("pointerup", (event) => { if (!staves.contains(event.target)) pressed = null; }, { signal });
  addEventListener("pointercancel", () => { pressed = null; }, { signal });
}

/** The position whose note is nearest to a time, among those that the system shows. */
function nearestPosition(score, system, time) {
  const from = system.isFirst ? 0 : system.first + 1;
  let nearest = from;
  for (let position = from; position <= system.last; position++) {
    const at = position === 0 ? -120_000 : timeOf(score, position);
    const best = nearest === 0 ? -120_000 : timeOf(score, nearest);
    if (Math.abs(at - time) <= Math.abs(best - time)) nearest = position;
  }
  return nearest;
}

/** Left and right act from anywhere but a control that needs them; the other keys act on the score itself. */
function listenToKeys(staves, transport, signal) {
  addEventListener("keydown", (event) => {
    const action = keyAction(transport, event);
    if (action === null || event.target.closest?.("input, .scroller, select, textarea")) return;
    const onScore = event.target === staves;
    const sideways = event.key === "ArrowLeft" || event.key === "ArrowRight" || event.key === "Escape";
    if (!onScore && !sideways) return;
    event.preventDefault();
    action();
  }, { signal });
}
