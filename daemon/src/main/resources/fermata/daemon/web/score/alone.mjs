// The score as a plain picture and nothing else: its text stands in the page, for a program to take.

import { readScore } from "../cube/solve.mjs";
import { html } from "../page/dom.mjs";
import { here, readSolve } from "../page/reader.mjs";
import { scorePicture } from "./keep.mjs";
import { summaryOf, titleOf } from "./summary.mjs";

draw();

async function draw() {
  const shown = await readSolve(decodeURIComponent(here.split("/").pop()));
  const score = readScore(shown);
  document.body.append(html("pre", { id: "picture" }, scorePicture(score, titleOf(shown), summaryOf(score))));
}
