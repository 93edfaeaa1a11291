// Making elements. No markup is ever built from text, so nothing that was recorded can become markup.

const SVG = "http://www.w3.org/2000/svg";

function fill(element, attributes, children) {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === true) element.setAttribute(name, "");
    else if (value !== false && value !== null && value !== undefined) element.setAttribute(name, value);
  }
  element.append(...children.flat().filter((child) => child !== null && child !== undefined && child !== false));
  return element;
}

/** An HTML element with these attributes (true: bare, false or null: left out) and children (elements or text). */
export function html(name, attributes = {}, ...children) {
  return fill(document.createElement(name), attributes, children);
}

/** An SVG element, likewise. */
export function svg(name, attributes = {}, ...children) {
  return fill(document.createElementNS(SVG, name), attributes, children);
}

/** Whether less motion is asked for; read .matches each time, since it can change while a page is open. */
export const reducedMotion = matchMedia("(prefers-reduced-motion: reduce)");

/** A length for an SVG attribute: a hundredth of a pixel is finer than any screen. */
export function px(length) {
  return String(Math.round(length * 100) / 100);
}
