// Times drawn: a night's as notes over a line of seconds, and one solve's as a length.

import { html, px, svg } from "../page/dom.mjs";
import { isKept } from "../page/reader.mjs";
import { count, duration, seconds } from "../page/words.mjs";

const MOST_NOTES = 600;
// Fewer points have no shape that would come again.
const FEWEST_FOR_CURVE = 20;
const CURVE_HEIGHT = 120;
const LOWEST_CURVE = 84;
const STEPS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 30, 60, 120, 300, 600];

/** The times as a curve, and a note for each solve, stacked where times coincide; each opens its score. */
export function distribution(solves, night, width) {
  const timed = solves.filter((solve) => solve.solved && !solve.set_aside && typeof solve.time_us === "number").sort((a, b) => a.time_us - b.time_us);
  if (timed.length === 0) return html("p", { class: "quiet" }, "No solve has a time.");
  const side = 18;
  const [low, high] = [timed[0].time_us, timed.at(-1).time_us];
  const step = STEPS.find((one) => Math.max(1, (high - low) / 1e6) / one <= Math.max(3, width / 90)) ?? 600;
  const from = Math.floor(low / 1e6 / step) * step;
  const to = Math.max(from + step, Math.ceil(high / 1e6 / step) * step);
  const x = (time) => side + ((time / 1e6 - from) / (to - from)) * (width - 2 * side);
  const drawsNotes = timed.length <= MOST_NOTES;
  const heads = drawsNotes ? stack(timed, x, timed.length > 150 ? 3.4 : timed.length > 40 ? 5 : 8) : { placed: [], tallest: CURVE_HEIGHT, radius: 0 };
  const drawsCurve = timed.length >= FEWEST_FOR_CURVE;
  const height = Math.max(drawsCurve ? LOWEST_CURVE : 34, heads.tallest) + 22;
  const picture = svg("svg", { class: "times", width: px(width), height: px(height + 30), viewBox: `0 0 ${px(width)} ${px(height + 30)}`, role: "group", "aria-label": `Times of ${count(timed.length, "solve")}, from ${seconds(low)} to ${seconds(high)} s` });
  if (drawsCurve) picture.append(curve(timed.map((solve) => x(solve.time_us)), side, width - side, height, height - 20));
  picture.append(svg("path", { class: "axis-line", d: `M${px(x(from * 1e6))} ${height}H${px(x(to * 1e6))}` }));
  for (let tick = 0; from + tick * step <= to + 1e-9; tick++) {
    const at = x((from + tick * step) * 1e6);
    const value = from + tick * step;
    picture.append(svg("path", { class: "axis-line", d: `M${px(at)} ${height}v6` }), svg("text", { class: "quiet tick", x: px(at), y: height + 20, "text-anchor": "middle" }, `${Number(value.toFixed(1))}${tick === 0 ? " s" : ""}`));
  }
  if (typeof night.mean_us === "number" && night.mean_us >= low && night.mean_us <= high) picture.append(...meanMark(x(night.mean_us), height, width));
  heads.placed.forEach(({ solve, at, up }, index) => picture.append(head(solve, at, height - up, heads.radius, index === 0)));
  return picture;
}

/** A smooth outline of where times lie (Gaussian kernel, width after Silverman, 1986, equation 3.31). */
function curve(places, left, right, foot, tall) {
  const mean = places.reduce((sum, x) => sum + x, 0) / places.length;
  const deviation = Math.sqrt(places.reduce((sum, x) => sum + (x - mean) ** 2, 0) / places.length);
  const quartiles = (places[Math.floor(0.75 * places.length)] - places[Math.floor(0.25 * places.length)]) / 1.34;
  const kernel = Math.max(2, 0.9 * Math.min(deviation, quartiles || deviation) * places.length ** -0.2);
  const points = Array.from({ length: 121 }, (_, index) => left + ((right - left) * index) / 120);
  const heights = points.map((at) => places.reduce((sum, x) => sum + Math.exp(-0.5 * ((at - x) / kernel) ** 2), 0));
  const top = Math.max(...heights);
  return svg("path", { class: "curve", d: `M${px(left)} ${px(foot)}L${points.map((at, index) => `${px(at)} ${px(foot - (tall * heights[index]) / top)}`).join("L")}L${px(right)} ${px(foot)}` });
}

function meanMark(x, height, width) {
  const flip = x > width - 50;
  return [svg("path", { class: "mean", d: `M${px(x)} 12V${px(height)}` }), svg("text", { class: "mean-name", x: px(flip ? x - 5 : x + 5), y: 13, "text-anchor": flip ? "end" : "start" }, "mean")];
}

function head(solve, x, y, radius, isBest) {
  const words = `Solve ${solve.number}, ${duration(solve.time_us)}${isBest ? ", the best" : ""}`;
  const link = isKept ? { role: "img" } : { href: `/solves/${encodeURIComponent(solve.id)}` };
  return svg(isKept ? "g" : "a", { ...link, "aria-label": words, class: isBest ? "head best" : "head" },
    svg("title", {}, words),
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

/** A solve's time against the longest that counts, its rests apart from its turning; one that runs past it is cut. */
export function spanBar(solve, longest) {
  const scale = Math.max(longest, solve.time_us);
  const time = (100 * solve.time_us) / scale;
  const rest = (100 * Math.min(solve.rest_us ?? 0, solve.time_us)) / scale;
  return svg("svg", { viewBox: "0 0 100 10", preserveAspectRatio: "none", "aria-hidden": "true" },
    svg("rect", { class: "turning", x: 0, y: 2, width: px(time - rest), height: 6 }),
    svg("rect", { class: "resting", x: px(time - rest), y: 2, width: px(rest), height: 6 }),
    solve.time_us > longest ? svg("path", { class: "cut", d: "M95.5 0L94 10M97.5 0L96 10" }) : null);
}
