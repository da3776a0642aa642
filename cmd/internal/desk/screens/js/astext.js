// The class as the text that it is, for those who like it.
import { h } from "./dom.js";
import { ask } from "./engine.js";
import { attempt, tell } from "./told.js";

export function asText(desk) {
  const area = h("textarea", { rows: "28", spellcheck: "false", "aria-label": "The class as text" });
  const problems = h("ul", { role: "status" });
  let revision = "";
  const list = (all) => problems.replaceChildren(...all.map((p) => h("li", {}, "Line " + p.line + ": " + p.message + (p.hint ? ". " + p.hint : ""))));
  attempt(() => ask("text")).then((t) => { if (t) { area.value = t.text; revision = t.revision; list(t.problems); } });
  const keep = async () => {
    const t = await attempt(() => ask("text", { revision, text: area.value }));
    if (!t) return;
    revision = t.revision;
    list(t.problems);
    tell(t.problems.length ? "Kept, but it cannot be read yet." : "Kept.");
    const view = await attempt(() => ask("class"));
    if (view && !t.problems.length) desk.show(view);
  };
  return h("div", { class: "inspector" }, h("h2", { tabindex: "-1" }, "As text"), area, problems, h("button", { class: "main", onclick: keep }, "Keep this text"));
}
