// The first screen: what was open last, and three ways to begin.
import { h } from "./dom.js";
import { ask } from "./engine.js";
import { attempt } from "./told.js";
import { browser } from "./browse.js";
import { newClass } from "./newclass.js";

// opened goes where the work is after something was opened. The desk knows the
// answer before the screen is drawn: the event that tells all tabs may be later.
export function opened(state) {
  window.dispatchEvent(new CustomEvent("desk:state", { detail: state }));
  const to = state.class ? "#class" : "#songs";
  if (location.hash === to) window.dispatchEvent(new Event("desk:redraw"));
  else location.hash = to;
}

export function show(main, state) {
  const place = h("section", { class: "place", "aria-label": "Choose", hidden: true });
  const reveal = (content) => {
    place.replaceChildren(content);
    place.hidden = false;
    content.querySelector("h2")?.focus();
  };
  const recent = (state?.recent || []).map((r) => h("li", {},
    h("button", { class: "line", onclick: () => attempt(async () => opened(await ask("open", { id: r.id }))) },
      h("b", {}, r.name), h("span", {}, r.kind === "class" ? "class" : "songs"), h("small", {}, r.where + (r.when ? ", " + r.when : "")))));
  main.append(
    h("h1", {}, "What shall we work on?"),
    recent.length > 0 && h("section", { "aria-labelledby": "last" }, h("h2", { id: "last" }, "Open last"), h("ul", { class: "lines" }, recent)),
    h("div", { class: "ways" },
      h("button", { class: recent.length ? "" : "main", onclick: () => reveal(browser()) }, "Open a class or a folder of songs"),
      h("button", { onclick: () => reveal(newClass(state)) }, "New class"),
      h("button", { onclick: () => attempt(async () => opened(await ask("demo"))) }, "Look at the demo")),
    place);
}
