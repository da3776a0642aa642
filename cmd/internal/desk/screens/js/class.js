// The class on its phrases: parts and songs one after the other, the items lying
// on them; what is found stands where it belongs. Every act is one change of her
// class, shown at once and taken back by one key.
import { h, put } from "./dom.js";
import { adder } from "./adder.js";
import { axis } from "./axis.js";
import { ask, listen } from "./engine.js";
import { findings } from "./findings.js";
import { inspector } from "./inspector.js";
import { keys } from "./keys.js";
import { proposals } from "./proposals.js";
import { asText } from "./astext.js";
import { sums } from "./sums.js";
import { attempt, tell } from "./told.js";
import { clock } from "./words.js";

export function broken(box, c) {
  box.replaceChildren(h("b", {}, "The class cannot be read as it is now; what is shown is how it was last."),
    h("ul", {}, c.problems.map((p) => h("li", {}, (p.line ? "Line " + p.line + ": " : "") + p.message + (p.hint ? ". " + p.hint : "")))));
}

export async function show(main, state) {
  if (!state?.class) {
    main.append(h("h1", {}, "Class"), h("p", {}, "No class is open yet."), h("p", {}, h("a", { href: "#start", class: "button main" }, "Open a class, or begin a new one")));
    return null;
  }
  let view = await ask("class");
  let chosen = null; // id of an item or a part
  const songs = (await attempt(() => ask("songs")))?.songs || [];

  const title = h("h1", {}, "");
  const facts = h("p", { class: "facts", role: "status", "aria-atomic": "true" });
  const undoButton = h("button", { onclick: () => travel("undo") });
  const redoButton = h("button", { onclick: () => travel("redo") });
  const bar = h("div", { class: "ways" }, undoButton, redoButton,
    h("button", { onclick: () => open(proposals(desk)) }, "Make it land"),
    h("button", { onclick: () => open(asText(desk)) }, "As text"),
    h("a", { class: "button", href: "/page#stage" }, "Teach it"), h("a", { class: "button", href: "/page#wall" }, "Print it"));
  const paper = h("div", { class: "paper", role: "group", "aria-label": "The class, phrase by phrase" });
  const side = h("aside", { class: "side", "aria-label": "What is chosen" });
  const found = h("section", { class: "found", "aria-label": "What is found" });
  const below = h("section", { "aria-label": "The class in figures" });
  main.append(title, facts, bar, found, h("div", { class: "bench" }, paper, side), below);

  const desk = {
    get view() { return view; }, songs, choose, act, take,
    item: (id) => all().find((i) => i.id === id),
    part: (id) => view.parts.find((p) => p.id === id),
    partOf: (id) => view.parts.findIndex((p) => p.items.some((i) => i.id === id || i.items.some((c) => c.id === id))),
    add: (part, at) => open(adder(desk, part, at)),
    show: (next) => { view = next; draw(); },
  };

  function all() { return view.parts.flatMap((p) => p.items.flatMap((i) => [i, ...i.items])); }

  // act does acts, said in a few words, and shows the class as it then is; path
  // is where the item chosen then stands.
  async function act(label, acts, path = null) {
    const next = await attempt(() => ask("act", { revision: view.revision, label, acts }));
    if (!next) {
      const now = await attempt(() => ask("class"));
      if (now) { view = now; draw(); }
      return false;
    }
    view = next;
    if (path) chosen = entryAt(path)?.id || null;
    else if (chosen && !desk.item(chosen) && !desk.part(chosen)) chosen = entryAt(chosen.split("#")[0])?.id || null;
    draw();
    tell(label + ".", () => travel("undo"));
    return true;
  }
  async function take(what, fields) {
    const next = await attempt(() => ask(what, { revision: view.revision, ...fields }));
    if (!next) return;
    view = next;
    draw();
    tell(next.say || "Done.", () => travel("undo"));
  }
  const travel = (way) => take(way, {});

  function entryAt(path) {
    return [...view.parts, ...all()].find((e) => e.id.split("#")[0] === path);
  }
  function choose(id) {
    chosen = id;
    draw();
  }
  function open(content) {
    side.replaceChildren(content);
    (content.querySelector("input, textarea, select, button") || content).focus();
  }

  function draw() {
    put(title, view.name);
    const fixes = view.findings.filter((f) => f.severity === "fix").length;
    put(facts, clock(view.length) + (view.slot ? " of " + clock(view.slot) : "") + " · " + view.parts.length + " parts · " +
      (fixes ? fixes + " to fix" : "nothing to fix"));
    button(undoButton, "Undo", "U", view.undo);
    button(redoButton, "Do again", "R", view.redo);
    const at = paper.scrollTop;
    paper.replaceChildren(...view.parts.map((p, i) => axis(desk, p, i, chosen)),
      h("button", { onclick: () => addPart() }, "Add a part"));
    paper.scrollTop = at;
    found.replaceChildren(...findings(desk));
    below.replaceChildren(...sums(view));
    const focused = side.contains(document.activeElement) ? document.activeElement.dataset.key : null;
    if (chosen) side.replaceChildren(inspector(desk, chosen));
    if (focused) side.querySelector("[data-key=" + focused + "]")?.focus();
  }
  function addPart() {
    const n = view.parts.length;
    act("A part added", [{ act: "insert", to: "parts", at: n, entry: { part: "Part " + (n + 1), kind: "mixed", tracks: [songs.find((s) => s.state === "heard")?.file || ""], do: [{ pause: "water", time: "32 counts" }] } }], "parts/" + n);
  }

  function step(n) {
    const list = all(), i = list.findIndex((e) => e.id === chosen);
    const next = list[Math.max(0, Math.min(list.length - 1, i < 0 ? 0 : i + n))];
    if (next) {
      choose(next.id);
      paper.querySelector("[data-item='" + CSS.escape(next.id) + "']")?.scrollIntoView({ block: "nearest" });
    }
  }
  // shift puts the chosen item before the one above it, or behind the one below.
  function shift(n) {
    const at = chosen?.split("#")[0].match(/^(.*)\/(\d+)$/);
    if (!at || !desk.item(chosen)) return false;
    const i = Number(at[2]), to = n < 0 ? i - 1 : i + 2;
    if (to < 0) return false;
    act("Moved " + (n < 0 ? "earlier" : "later") + ": " + desk.item(chosen).name, [{ act: "move", item: chosen, to: at[1], at: to }], at[1] + "/" + (n < 0 ? i - 1 : i + 1));
    return true;
  }
  function remove() {
    const it = chosen && desk.item(chosen);
    if (!it) return false;
    const id = chosen;
    chosen = null;
    side.replaceChildren();
    act("Taken out: " + it.name, [{ act: "delete", item: id }]);
    return true;
  }
  keys({
    ArrowDown: () => step(1), ArrowUp: () => step(-1), ArrowRight: () => step(1), ArrowLeft: () => step(-1),
    "<": () => shift(-1), ">": () => shift(1), Delete: remove, u: () => travel("undo"), r: () => travel("redo"),
    a: () => desk.add(Math.max(0, chosen ? desk.partOf(chosen) : 0)),
    Enter: () => side.querySelector("input, select, button")?.focus(), Escape: () => { chosen = null; side.replaceChildren(); draw(); },
  });
  draw();
  const end = listen("class", async (e) => {
    if (e.revision === view.revision && !view.parts.some((p) => p.tracks.some((t) => t.problem))) return;
    const next = await attempt(() => ask("class"));
    if (next) { view = next; draw(); }
  });
  return end;
}

function button(b, label, key, what) {
  b.disabled = !what;
  b.replaceChildren(label + (what ? ": " + what : "") + " ", h("kbd", {}, key));
}
