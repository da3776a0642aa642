// What is found, the gravest first, each with the way to its place.
import { h } from "./dom.js";

const words = { fix: "To fix", watch: "Watch", note: "Note" };

export function findings(desk) {
  const order = ["fix", "watch", "note"];
  const all = [...desk.view.findings].sort((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity));
  if (!all.length) return [h("p", { class: "sentence" }, "All of it lands, and nothing is to be watched.")];
  const line = (f) => h("li", { class: f.severity },
    h("b", {}, words[f.severity]), h("span", {}, f.say + (f.try ? ". Try: " + f.try : "")),
    f.item && h("button", { onclick: () => desk.choose(f.item) }, "Show"),
    f.source && h("details", {}, h("summary", {}, "Why?"), h("p", {}, f.source)));
  const first = all.filter((f) => f.severity !== "note"), rest = all.filter((f) => f.severity === "note");
  return [
    first.length > 0 && h("ul", { class: "findings" }, first.map(line)),
    rest.length > 0 && h("details", {}, h("summary", {}, rest.length + (rest.length === 1 ? " note" : " notes")), h("ul", { class: "findings" }, rest.map(line))),
  ].filter(Boolean);
}
