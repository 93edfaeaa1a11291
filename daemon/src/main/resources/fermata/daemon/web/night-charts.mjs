// The two pictures of a night: its times as notes over a line of seconds, and its stages as lengths.

import { html, px, svg } from "./dom.mjs";
import { count, duration, percent, seconds, stageWord } from "./words.mjs";

const STAGE_ORDER = ["eo", "line", "cross", "pair1", "pair2", "pair3", "pair4", "block1", "block2", "orient", "permute", "corners", "last_edges", "last_layer", "auf"];
const STEPS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 30, 60, 120, 300, 600];

/** A note for each solve, stacked where times coincide; each opens its score. */
export function distribution(solves, night, width) {
  const timed = solves.filter((solve) => solve.solved && typeof solve.time_us === "number").sort((a, b) => a.time_us - b.time_us);
  if (timed.length === 0) return html("p", { class: "quiet" }, "No solve of this night has a time.");
  const side = 18;
  const [low, high] = [timed[0].time_us, timed.at(-1).time_us];
  const step = STEPS.find((one) => Math.max(1, (high - low) / 1e6) / one <= Math.max(3, width / 90)) ?? 600;
  const from = Math.floor(low / 1e6 / step) * step;
  const to = Math.max(from + step, Math.ceil(high / 1e6 / step) * step);
  const x = (time) => side + ((time / 1e6 - from) / (to - from)) * (width - 2 * side);
  const heads = stack(timed, x, timed.length > 150 ? 3.4 : timed.length > 40 ? 5 : 8);
  const height = Math.max(34, heads.tallest) + 22;
  const picture = svg("svg", { class: "times", width: px(width), height: px(height + 30), viewBox: `0 0 ${px(width)} ${px(height + 30)}`, role: "group", "aria-label": `Times of ${count(timed.length, "solve")}, from ${seconds(low)} to ${seconds(high)} s` });
  picture.append(svg("path", { class: "axis-line", d: `M${px(x(from * 1e6))} ${height}H${px(x(to * 1e6))}` }));
  for (let tick = 0; from + tick * step <= to + 1e-9; tick++) {
    const at = x((from + tick * step) * 1e6);
    const value = from + tick * step;
    picture.append(svg("path", { class: "axis-line", d: `M${px(at)} ${height}v6` }), svg("text", { class: "quiet tick", x: px(at), y: height + 20, "text-anchor": "middle" }, `${Number(value.toFixed(1))}${tick === 0 ? " s" : ""}`));
  }
  if (typeof night.mean_us === "number") picture.append(...meanMark(x(night.mean_us), height, width));
  heads.placed.forEach(({ solve, at, up }, index) => picture.append(head(solve, at, height - up, heads.radius, index === 0)));
  return picture;
}

function meanMark(x, height, width) {
  const flip = x > width - 50;
  return [svg("path", { class: "mean", d: `M${px(x)} 12V${px(height)}` }), svg("text", { class: "mean-name", x: px(flip ? x - 5 : x + 5), y: 13, "text-anchor": flip ? "end" : "start" }, "mean")];
}

function head(solve, x, y, radius, isBest) {
  return svg("a", { href: `/solves/${encodeURIComponent(solve.id)}`, "aria-label": `Solve ${solve.number}, ${duration(solve.time_us)}${isBest ? ", the best" : ""}`, class: isBest ? "head best" : "head" },
    svg("title", {}, `Solve ${solve.number}: ${duration(solve.time_us)}`),
    svg("circle", { class: "reach", cx: px(x), cy: px(y), r: Math.max(radius, 8) }),
    svg("ellipse", { cx: px(x), cy: px(y), rx: radius, ry: px(radius * 0.76), transform: `rotate(-20 ${px(x)} ${px(y)})` }));
}

/** Each note stands on the highest one that it would touch (dot plot after Wilkinson, 1999, without his smoothing). */
function stack(timed, x, radius) {
  const placed = [];
  const rise = radius * 1.9;
  let tallest = 0;
  for (const solve of timed) {
    const at = x(solve.time_us);
    const near = placed.filter((other) => at - other.at < radius * 2.1);
    let up = radius + 2;
    while (near.some((other) => Math.abs(other.up - up) < rise - 0.01)) up += rise;
    placed.push({ solve, at, up });
    tallest = Math.max(tallest, up + radius);
  }
  return { placed, tallest, radius };
}

/** Per method, its stages: median seconds as a length, and the share of the method's whole time. */
export function stageShares(solves) {
  const groups = new Map();
  for (const solve of solves) {
    if (!solve.solved || Object.keys(solve.stages_us ?? {}).length === 0) continue;
    groups.set(solve.method, [...(groups.get(solve.method) ?? []), solve]);
  }
  if (groups.size === 0) return [html("p", { class: "quiet" }, "No solve of this night has stages with times.")];
  return [...groups].sort((a, b) => b[1].length - a[1].length).map(([method, members]) => shareTable(method, members));
}

function shareTable(method, members) {
  const names = STAGE_ORDER.filter((name) => members.some((solve) => name in solve.stages_us));
  for (const solve of members) for (const name of Object.keys(solve.stages_us)) if (!names.includes(name)) names.push(name);
  const whole = members.reduce((sum, solve) => sum + Object.values(solve.stages_us).reduce((a, b) => a + b, 0), 0);
  const rows = names.map((name) => {
    const times = members.filter((solve) => name in solve.stages_us).map((solve) => solve.stages_us[name]);
    return { name, median: median(times), share: times.reduce((a, b) => a + b, 0) / whole };
  });
  const longest = Math.max(...rows.map((row) => row.median));
  return html("table", { class: "shares" },
    html("caption", {}, `${method}, ${count(members.length, "solve")}`),
    html("thead", {}, html("tr", {}, html("th", { scope: "col" }, "stage"), html("th", { scope: "col", class: "number" }, "median"), html("th", { scope: "col", class: "number" }, "share"), html("td", {}))),
    html("tbody", {}, rows.map((row) => html("tr", {},
      html("th", { scope: "row" }, stageWord(row.name)),
      html("td", { class: "number" }, seconds(row.median)),
      html("td", { class: "number" }, percent(row.share)),
      html("td", { class: "bar-cell" }, lengthBar(row.median / longest))))));
}

/** A solve's time against the longest of the night, its rests apart from its turning. */
export function spanBar(solve, longest) {
  const time = (100 * solve.time_us) / longest;
  const rest = (100 * Math.min(solve.rest_us ?? 0, solve.time_us)) / longest;
  return svg("svg", { viewBox: "0 0 100 10", preserveAspectRatio: "none", "aria-hidden": "true" },
    svg("rect", { class: "turning", x: 0, y: 2, width: px(time - rest), height: 6 }),
    svg("rect", { class: "resting", x: px(time - rest), y: 2, width: px(rest), height: 6 }));
}

function lengthBar(share) {
  return svg("svg", { class: "length-bar", viewBox: "0 0 100 10", preserveAspectRatio: "none", "aria-hidden": "true" },
    svg("rect", { x: 0, y: 2.5, width: px(100 * share), height: 5 }));
}

function median(values) {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}
