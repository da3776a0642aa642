// Something new for a part: found in the catalogue by its everyday name.
import { h } from "./dom.js";
import { ask } from "./engine.js";
import { attempt } from "./told.js";

export function adder(desk, n, at = null) {
  const part = desk.view.parts[n];
  const list = h("ul", { class: "lines" });
  const put = (entry, label) => {
    const place = at ?? part.items.length;
    desk.act("Added: " + label, [{ act: "insert", to: "parts/" + n + "/do", at: place, entry }], "parts/" + n + "/do/" + place);
  };
  const search = h("input", { type: "search", "aria-label": "Which move?", placeholder: "squat, row, plank, …", oninput: () => find() });
  async function find() {
    const answer = await attempt(() => ask("moves", { search: search.value, kind: "" }));
    if (answer) list.replaceChildren(...answer.moves.map((m) => h("li", {}, h("button", { class: "line", onclick: () => put(entryFor(m, part.kind), m.name) },
      h("b", {}, m.name), h("span", {}, [m.pattern, m.kit.join(", ")].filter(Boolean).join(" · "))))));
  }
  find();
  return h("div", { class: "inspector" }, h("h2", { tabindex: "-1" }, "Add to " + part.name),
    h("div", { class: "ways" },
      h("button", { onclick: () => put({ block: letter(desk), moves: [{ move: "march", counts: 16 }, { move: "step touch", counts: 16 }] }, "a block") }, "A block of moves"),
      h("button", { onclick: () => put({ pause: "water", time: "30s" }, "a pause") }, "A pause for water"),
      h("button", { onclick: () => put({ pause: "change weights", time: "16 counts" }, "a pause") }, "A change of weights")),
    search, list);
}

// entryFor is an item of a move: a set where it is strength, timed work where it
// is not.
function entryFor(m, kind) {
  if (m.class || kind === "strength" || kind === "core") return { set: m.name, reps: "8 x 2-2" };
  return { interval: m.name, time: "32 counts" };
}

// letter is the first one that no block is called by.
function letter(desk) {
  const taken = new Set(desk.view.parts.flatMap((p) => p.items.filter((i) => i.kind === "block").map((i) => i.name)));
  return [..."ABCDEFGHIJKLMNOPQRSTUVWXYZ"].find((l) => !taken.has(l)) || "New";
}
