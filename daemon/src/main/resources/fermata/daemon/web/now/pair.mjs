// Pairing this browser by the cube: whoever turns the six turns shown here has the board's cube in the hand.

import { html } from "../page/dom.mjs";
import { count, turnInWords } from "../page/words.mjs";
import { scrambleLines } from "../staff/lines.mjs";
import { post } from "./session.mjs";

const ASK_EVERY_MS = 500;

const offered = html("div", { class: "pairing opening" });
const live = html("p", { "aria-live": "polite" });
const frame = html("section", { class: "pairing", "aria-labelledby": "title" });
document.getElementById("content").replaceChildren(
  html("h1", { id: "title" }, "Pair this browser"),
  html("p", {}, "The practice on this board is shown to browsers that were paired with it. The cube in your hand is the key: six turns will be shown, and turning exactly these within a minute opens the pages here."),
  frame, offered, live);
offer("Show the six turns");

function offer(words) {
  const button = html("button", { type: "button", class: "open" }, words);
  button.addEventListener("click", () => begin().catch(trouble));
  offered.replaceChildren(button);
}

function trouble(error) {
  live.textContent = error.message;
  frame.replaceChildren();
  offer("Try again");
}

async function begin() {
  offered.replaceChildren();
  const told = await post("/api/pair");
  if (told.step === "wait") {
    live.textContent = `The board pairs one browser at a time, and waits a while after a failed attempt. Try again in ${count(told.seconds, "second")}.`;
    offer("Try again");
    return;
  }
  const lines = html("div", { class: "lines", role: "img", "aria-label": told.turns.map(turnInWords).join("; ") });
  const left = html("p", { class: "quiet" });
  frame.replaceChildren(
    html("h2", {}, "Turn these six, and no others"), lines, left,
    html("h2", {}, "Without the cube"),
    html("p", {}, "Type this on the board: ", html("span", { class: "code" }, `fermata pair ${told.code}`)));
  live.textContent = "";
  const draw = (done) => lines.replaceChildren(...scrambleLines({ turns: told.turns, done, half: false, mending: [], astray: false }, Math.floor(lines.clientWidth)));
  draw(0);
  for (;;) {
    await new Promise((resolve) => { setTimeout(resolve, ASK_EVERY_MS); });
    const now = await post("/api/pair/claim", told.attempt);
    if (now.step === "paired") {
      location.reload();
      return;
    }
    if (now.step === "failed") {
      frame.replaceChildren();
      live.textContent = "These were other turns, or the minute is over. Nothing was paired.";
      offer("Show six others");
      return;
    }
    draw(now.done);
    left.textContent = `${count(now.seconds, "second")} left.`;
  }
}
