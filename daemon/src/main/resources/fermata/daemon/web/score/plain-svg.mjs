// A score as one plain picture: no script, no class, no style sheet; every line carries its own colours.

import { px, svg } from "../page/dom.mjs";

// What the style sheets say about the signs, as attributes that any viewer of SVG understands.
const LOOKS = ["fill", "stroke", "stroke-width", "stroke-dasharray", "stroke-linecap", "paint-order", "font-family", "font-size", "font-style", "font-weight", "opacity"];
const USUAL = { fill: "rgb(0, 0, 0)", stroke: "none", "stroke-width": "1px", "stroke-dasharray": "none", "stroke-linecap": "butt", "paint-order": "normal", "font-style": "normal", "font-weight": "400", opacity: "1" };
const MARGIN = 28;
const HEAD = 64;
const BETWEEN = 12;

/**
 * The text of an SVG file from systems as they stand on the page: they must be in the document, where looks are known.
 *
 * @param title over the score, subtitle beside it
 */
export function plainSvg(systems, title, subtitle) {
  const width = Number(systems[0].picture.getAttribute("width")) + 2 * MARGIN;
  const root = getComputedStyle(document.documentElement);
  const ink = root.getPropertyValue("color");
  const book = root.getPropertyValue("--book").trim();
  let y = HEAD;
  const parts = systems.map(({ picture }) => {
    const copy = plain(picture, svg("g", { transform: `translate(${MARGIN} ${px(y)})` }), book);
    y += Number(picture.getAttribute("height")) + BETWEEN;
    return copy;
  });
  const height = px(y + MARGIN - BETWEEN);
  const whole = svg("svg", { xmlns: "http://www.w3.org/2000/svg", viewBox: `0 0 ${px(width)} ${height}`, width: px(width), height, "font-family": book },
    svg("title", {}, `${title}. ${subtitle}`),
    svg("rect", { width: px(width), height, fill: root.getPropertyValue("--paper").trim() }),
    svg("text", { x: MARGIN, y: 40, "font-size": 24, fill: hex(ink) }, title, svg("tspan", { dx: 16, "font-size": 14 }, subtitle)),
    ...parts);
  return `${written(whole, "")}\n`;
}

function plain(from, to, book) {
  for (const child of from.children) {
    if (child.matches(".event, .cursor, .span")) continue;
    const copy = svg(child.localName);
    for (const { name, value } of child.attributes) if (name !== "class" && !name.startsWith("data-")) copy.setAttribute(name, value);
    if (!["g", "defs", "pattern"].includes(child.localName)) wear(copy, getComputedStyle(child), child.localName.startsWith("t"), book);
    if (child.children.length > 0 || child.localName === "g") plain(child, copy, book);
    for (const text of child.childNodes) if (text.nodeType === Node.TEXT_NODE) copy.prepend(text.data);
    to.append(copy);
  }
  return to;
}

function wear(copy, looks, isText, book) {
  for (const name of LOOKS) {
    const value = looks.getPropertyValue(name);
    // Upright figures stand in a slanted label, so a part of a text says which it is.
    const isSaid = name === "font-style" && copy.localName === "tspan";
    if ((value === USUAL[name] && !isSaid) || value === book || (name.startsWith("font") && !isText)) continue;
    if (name.startsWith("stroke-") && looks.getPropertyValue("stroke") === "none") continue;
    if (!(name === "fill" && copy.hasAttribute("fill"))) copy.setAttribute(name, hex(value.replaceAll("px", "")));
  }
}

/** "rgb(33, 31, 27)" as "#211f1b". */
function hex(colour) {
  const parts = colour.match(/^rgb\((\d+), (\d+), (\d+)\)$/);
  return parts ? `#${parts.slice(1).map((part) => Number(part).toString(16).padStart(2, "0")).join("")}` : colour;
}

const escaped = (text) => text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll('"', "&quot;");

/** One element a line, so that two scores can be compared by eye. */
function written(element, indent) {
  const attributes = [...element.attributes].map(({ name, value }) => ` ${name}="${escaped(value)}"`).join("");
  const start = `${indent}<${element.localName}${attributes}`;
  if (element.childNodes.length === 0) return `${start}/>`;
  if (["text", "tspan", "title"].includes(element.localName)) {
    const inner = [...element.childNodes].map((child) => (child.nodeType === Node.TEXT_NODE ? escaped(child.data) : written(child, ""))).join("");
    return `${start}>${inner}</${element.localName}>`;
  }
  return [`${start}>`, ...[...element.children].map((child) => written(child, `${indent}  `)), `${indent}</${element.localName}>`].join("\n");
}
