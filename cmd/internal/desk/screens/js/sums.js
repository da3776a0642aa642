// The class in figures: time, repetitions by pattern, right and left, kit.
import { h } from "./dom.js";
import { clock } from "./words.js";

export function sums(view) {
  const table = (title, heads, rows) => rows.length > 0 && h("table", {}, h("caption", {}, title),
    h("thead", {}, h("tr", {}, heads.map((t) => h("th", { scope: "col" }, t)))),
    h("tbody", {}, rows.map((r) => h("tr", {}, r.map((c, i) => (i ? h("td", {}, String(c)) : h("th", { scope: "row" }, c)))))));
  return [h("h2", {}, "In figures"), h("div", { class: "sums" },
    table("Time", ["part", "time"], view.sums.shares.map((s) => [s.kind, clock(s.seconds)])),
    table("Repetitions", ["movement", "all", "right", "left"], view.sums.patterns.map((p) => [p.name, p.reps, p.right || "–", p.left || "–"])),
    view.sums.kit.length > 0 && h("div", {}, h("h3", {}, "Everybody needs"), h("ul", {}, view.sums.kit.map((k) => h("li", {}, k)))))];
}
