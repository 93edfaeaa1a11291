// The signs of the score, each drawn around the point where it stands.

import { px, svg } from "../page/dom.mjs";

// Half as wide as a figure of the axis.
const HALF_FIGURE = 2.9;

/** Pixels: half width and half height of a head, and the length of a stem. */
const HEAD = { rx: 6, ry: 4.4, stem: 19 };

/** A turn: stem up clockwise, stem down counter-clockwise, hollow without a stem a half turn; in brackets if repaired. */
export function note(turn, x, y) {
  const kind = turn.seen[1] === "2" ? "half" : turn.seen[1] === "'" ? "down" : "up";
  const mark = svg("g", { class: `note${turn.repaired ? " repaired" : ""}`, "data-turn": turn.index, transform: `translate(${px(x)} ${px(y)})` });
  if (kind === "half") {
    mark.append(
      svg("ellipse", { class: "head", rx: 6.6, ry: 4.6 }),
      svg("ellipse", { class: "hole", rx: 4.2, ry: 2.3, transform: "rotate(28)" }),
    );
  } else {
    const side = kind === "up" ? HEAD.rx - 0.8 : -(HEAD.rx - 0.8);
    const tip = kind === "up" ? -HEAD.stem : HEAD.stem;
    mark.append(
      svg("path", { class: "stem", d: `M${side} ${kind === "up" ? -1.5 : 1.5}V${tip}` }),
      svg("ellipse", { class: "head", rx: HEAD.rx, ry: HEAD.ry, transform: "rotate(-20)" }),
    );
  }
  if (turn.repaired) mark.append(svg("path", { class: "bracket", d: "M-8 -6Q-11.5 0 -8 6M8 -6Q11.5 0 8 6" }));
  return mark;
}

/** A line of the staff with the name of its layer before it; both are pale where nothing is turned on it. */
export function staffLine(layer, isUsed, left, right, y) {
  return [
    svg("path", { class: isUsed ? "staff" : "staff idle", d: `M${px(left)} ${px(y)}H${px(right)}` }),
    svg("text", { class: isUsed ? "layer" : "layer quiet", x: px(left - 7), y: px(y + 4.5), "text-anchor": "end" }, layer),
  ];
}

/** A bar across the staff, somewhat longer than the staff is high. */
export function bar(x, top, bottom, kind = "bar") {
  return svg("path", { class: kind, d: `M${px(x)} ${px(top - 7)}V${px(bottom + 7)}` });
}

/** A slur: a lens of ink, thin at its ends, hanging under its notes. */
export function slur(from, to, y) {
  const depth = Math.min(11, 4 + (to - from) / 28);
  const third = (to - from) * 0.25;
  const outer = `C${px(from + third)} ${px(y + depth)} ${px(to - third)} ${px(y + depth)} ${px(to)} ${px(y)}`;
  const inner = `C${px(to - third)} ${px(y + depth - 1.5)} ${px(from + third)} ${px(y + depth - 1.5)} ${px(from)} ${px(y)}`;
  return svg("path", { class: "slur", d: `M${px(from)} ${px(y)}${outer}${inner}Z` });
}

/** A hook back: what was turned from here to there was taken back, so its point lies where it began. */
export function takenBack(from, to, y) {
  const rise = Math.min(11, 6 + (to - from) / 30);
  const bend = Math.min(14, (to - from) * 0.35);
  return svg("g", { class: "taken-back" },
    svg("path", { class: "hook", d: `M${px(to)} ${px(y)}C${px(to - bend * 0.2)} ${px(y - rise)} ${px(to - bend)} ${px(y - rise)} ${px((from + to) / 2)} ${px(y - rise)}S${px(from + bend * 0.2)} ${px(y - rise)} ${px(from)} ${px(y - 4)}` }),
    svg("path", { class: "point", d: `M${px(from - 0.4)} ${px(y + 1.5)}l-3.6 -6.5l7.4 0.6Z` }));
}

/**
 * A rest: a tinted ground and a measure across it as long as the rest, with its seconds where there is room.
 *
 * @param clear so much at its right end is another sign's
 */
export function rest({ left, right, top, bottom, clear = 0 }, label) {
  const middle = (left + right - clear) / 2;
  const y = top + 2.5 * (bottom - top) / Math.max(3, Math.round((bottom - top) / 16));
  const mark = svg("g", { class: "rest" },
    svg("rect", { class: "ground", x: px(left), y: px(top - 4), width: px(right - left), height: px(bottom - top + 8) }),
    svg("path", { class: "measure", d: `M${px(left)} ${px(y - 4.5)}v9M${px(left)} ${px(y)}H${px(right)}M${px(right)} ${px(y - 4.5)}v9` }),
  );
  if (label && right - clear - left > label.length * 5.6 + 6) {
    mark.append(svg("text", { class: "length", x: px(middle), y: px(y - 12), "text-anchor": "middle" }, label));
  }
  return mark;
}

/** A breath mark: here the fingers let go and take hold anew. */
export function breath(x, y) {
  return svg("g", { class: "breath", transform: `translate(${px(x)} ${px(y)})` },
    svg("path", { d: "M0.4 -9.2C4.4 -8.8 5.2 -4 -1.6 0.6C1.6 -3 1.8 -5.4 0 -5.4A2 2 0 0 1 0.4 -9.2Z" }));
}

/** A key change: from here on the cube is held another way, by this rotation. */
export function keyChange(x, top, bottom, word) {
  return svg("g", { class: "key-change" },
    svg("path", { class: "double", d: `M${px(x - 1.7)} ${px(top - 4)}V${px(bottom + 4)}M${px(x + 1.7)} ${px(top - 4)}V${px(bottom + 4)}` }),
    svg("text", { class: "rotation", x: px(x), y: px(top - 25), "text-anchor": "middle" }, word));
}

/** A fermata over a rest that could have been shorter: what came next had been in sight. */
export function fermata(x, y) {
  return svg("g", { class: "fermata", transform: `translate(${px(x)} ${px(y)})` },
    svg("path", { d: "M-13 0A13 13 0 0 1 13 0A13.6 10.8 0 0 0 -13 0Z" }), svg("circle", { cy: -2, r: 2.2 }));
}

/** A gap: turns were lost here. Hatched over the whole staff, and said in words above it, over the longest stem. */
export function gap(left, right, top, bottom, label) {
  const wide = Math.max(right - left, 8);
  const mark = svg("g", { class: "gap" },
    svg("rect", { x: px(left), y: px(top), width: px(wide), height: px(bottom - top), fill: "url(#hatch)" }),
    svg("path", { class: "measure", d: `M${px(left)} ${px(top)}V${px(bottom)}M${px(left + wide)} ${px(top)}V${px(bottom)}` }),
  );
  if (label) {
    mark.append(svg("text", { class: "lost", x: px(left + wide / 2), y: px(top - 20), "text-anchor": "middle" }, label));
  }
  return mark;
}

/** A second's number under its mark; the first says what it counts, with its own figure still under the mark. */
export function secondAt(second, x, y) {
  const isFirst = second === 0;
  return svg("text", { x: px(isFirst ? x - HALF_FIGURE : x), y: px(y), "text-anchor": isFirst ? "start" : "middle" }, isFirst ? "0 s" : String(second));
}

/** The hatching that gaps are filled with; once in a page. */
export function hatching() {
  return svg("defs", {},
    svg("pattern", { id: "hatch", width: 6, height: 6, patternUnits: "userSpaceOnUse", patternTransform: "rotate(45)" },
      svg("path", { class: "hatch", d: "M0 0V6M3 0V6" })));
}

/** A small picture of one sign, for the legend. */
export function specimen(...marks) {
  return svg("svg", { class: "specimen", viewBox: "0 0 52 40", width: 52, height: 40, "aria-hidden": "true" },
    svg("path", { class: "staff", d: "M2 20H50" }), ...marks);
}
