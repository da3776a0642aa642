// Elements from plain values. Text is only ever set as text.

// h makes an element: attributes by name, listeners by "on" and the event,
// children as text or elements; what is null or false is left out.
export function h(tag, attributes = {}, ...children) {
  const e = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value === null || value === undefined || value === false) continue;
    if (name.startsWith("on")) e.addEventListener(name.slice(2), value);
    else if (name === "style") for (const [k, v] of Object.entries(value)) e.style.setProperty(k, v);
    else if (name === "value") e.value = value;
    else e.setAttribute(name, value === true ? "" : value);
  }
  e.append(...children.flat().filter((c) => c !== null && c !== undefined && c !== false));
  return e;
}

export function $(id) { return document.getElementById(id); }

// put writes text only where it has changed: a live region then speaks once.
export function put(element, text) {
  if (element.textContent !== text) element.textContent = text;
}
