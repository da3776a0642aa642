// Ways in which the class would land: what changes, what it costs, to take or to
// leave.
import { h } from "./dom.js";
import { ask } from "./engine.js";
import { attempt } from "./told.js";
import { clock, many } from "./words.js";

export function proposals(desk) {
  const box = h("div", { class: "inspector" }, h("h2", { tabindex: "-1" }, "Make it land"), h("p", { role: "status" }, "Looking for the smallest changes…"));
  attempt(() => ask("ways", {})).then((answer) => {
    if (!answer) return box.lastChild.replaceWith(h("p", {}, "Nothing could be proposed."));
    if (!answer.ways.length) return box.lastChild.replaceWith(h("p", {}, "Nothing better was found: the class can stay as it is."));
    box.lastChild.replaceWith(...answer.ways.map((w, i) => h("section", { class: "way" }, h("h3", {}, "Way " + (i + 1)),
      h("ul", {}, w.changes.map((c) => h("li", {}, c))),
      h("p", {}, "The class then lasts " + clock(w.length) + "; " + (w.left ? many(w.left, "thing") + " to fix stay" + (w.left === 1 ? "s" : "") : "nothing is left to fix") + "."),
      h("button", { class: "main", onclick: () => desk.take("take", { way: w.n }) }, "Take it"))));
  });
  return box;
}
