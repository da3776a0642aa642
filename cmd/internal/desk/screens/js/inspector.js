// What is chosen, and all that can be changed of it: by choosing where there is
// something to choose from.
import { h } from "./dom.js";
import { ask } from "./engine.js";
import { attempt } from "./told.js";

export function inspector(desk, id) {
  const part = desk.part(id);
  if (part) return ofPart(desk, part);
  const it = desk.item(id);
  return it ? ofItem(desk, it) : h("p", {}, "Nothing is chosen.");
}

// field is a line of text that is kept when she leaves it.
function field(label, key, value, keep, hint = "") {
  const input = h("input", { type: "text", value: value || "", "data-key": key, autocomplete: "off", placeholder: hint,
    onchange: () => keep(input.value.trim()), onkeydown: (e) => { if (e.key === "Enter") input.blur(); } });
  return h("label", { class: "field" }, h("span", {}, label), input);
}

function choice(label, key, value, options, keep) {
  const select = h("select", { "data-key": key, onchange: () => keep(select.value) },
    options.map(([v, text]) => h("option", { value: v, selected: v === (value || "") }, text)));
  return h("label", { class: "field" }, h("span", {}, label), select);
}

// change sets a key of an entry, or takes it away where nothing is left of it.
function change(desk, entry, name, key, old) {
  return (value) => {
    if (value === (old || "")) return;
    desk.act(name + ": " + (value ? key + " " + value : "no " + key),
      [value ? { act: "set", item: entry.id, key, value } : { act: "unset", item: entry.id, key }]);
  };
}

function ofItem(desk, it) {
  const keep = (key) => change(desk, it, it.name, key, it.keys[key]);
  const kind = it.kind;
  const box = h("div", { class: "inspector" }, h("h2", { tabindex: "-1" }, kind === "block" ? "Block " + it.name : it.name),
    it.findings.map((i) => finding(desk, it, desk.view.findings[i])),
    kind !== "block" && kind !== "superset" && field(kind === "pause" ? "What" : "Move", kind, it.name, (v) => v && v !== it.name && desk.act(it.name + " becomes " + v, [{ act: "set", item: it.id, key: kind, value: v }])),
    kind === "set" && doses(desk, it),
    (kind === "interval" || kind === "pause") && field("How long", "time", it.keys.time, keep("time"), "30s, or 32 counts"),
    kind === "superset" && field("Rounds", "rounds", it.keys.rounds, keep("rounds")),
    kind === "block" && moves(desk, it),
    (kind === "set" || kind === "block" || kind === "interval") && choice("Sides", "sides", it.keys.sides, [["", "as it is"], ["both", "right, then left"], ["right", "right only"], ["left", "left only"]], keep("sides")),
    kind === "set" && field("Weight", "weight", it.keys.weight, keep("weight"), "heavy, medium, light"),
    kind === "set" && choice("Range", "range", it.keys.range, [["", "full"], ["half", "half"]], keep("range")),
    field("What you say", "cue", it.keys.cue, keep("cue")),
    field("Easier", "easier", it.keys.easier, keep("easier")), field("Harder", "harder", it.keys.harder, keep("harder")),
    field("Time before it", "setup", it.keys.setup, keep("setup"), "16 counts, or 20s"),
    choice("Begins on", "on", it.keys.on, [["", "where it usually does"], ["phrase", "a phrase"], ["eight", "an eight"], ["count", "the next count"], ["clock", "the clock, not the music"]], keep("on")),
    h("div", { class: "ways" },
      h("button", { onclick: () => copy(desk, it) }, "Copy"),
      kind !== "superset" && h("button", { onclick: () => desk.act("Rounds of " + it.name, [{ act: "wrap", item: it.id, count: 1, entry: { superset: "Rounds", rounds: 2 } }]) }, "Do it in rounds"),
      kind === "superset" && h("button", { onclick: () => desk.act("No rounds: " + it.name, [{ act: "unwrap", item: it.id }]) }, "No rounds"),
      toPart(desk, it),
      h("button", { onclick: () => desk.act("Taken out: " + it.name, [{ act: "delete", item: it.id }]) }, "Take out ", h("kbd", {}, "Del"))));
  return box;
}

function finding(desk, it, f) {
  return h("div", { class: "finding " + f.severity }, h("b", {}, { fix: "To fix: ", watch: "Watch: ", note: "Note: " }[f.severity]), f.say + ".",
    f.try && h("p", {}, "Try: " + f.try),
    h("button", { onclick: () => desk.act("Known: " + it.name, [{ act: "set", item: it.id, key: "known", value: f.code }]) }, "I know, it is meant"));
}

function copy(desk, it) {
  const at = it.id.split("#")[0].match(/^(.*)\/(\d+)$/);
  desk.act("Copied: " + it.name, [{ act: "copy", item: it.id, to: at[1], at: Number(at[2]) + 1 }], at[1] + "/" + (Number(at[2]) + 1));
}

function toPart(desk, it) {
  const here = desk.partOf(it.id);
  const select = h("select", { "aria-label": "Move to another part", onchange: () => {
    const n = Number(select.value), at = desk.view.parts[n].items.length;
    desk.act("Moved to " + desk.view.parts[n].name + ": " + it.name, [{ act: "move", item: it.id, to: "parts/" + n + "/do", at }], "parts/" + n + "/do/" + at);
  } }, h("option", { value: "" }, "Move to…"), desk.view.parts.map((p, n) => n !== here && h("option", { value: String(n) }, p.name)));
  return select;
}

// doses are the repetitions of a set: how many, and in which rhythm. Each rhythm
// says how it goes with this move on this song.
function doses(desk, it) {
  const pieces = (it.keys.reps || "").split(",").map((p) => p.trim().match(/^(\d+)\s*[x×]\s*(.+)$/)).filter(Boolean).map((m) => ({ n: m[1], rhythm: m[2] }));
  const box = h("fieldset", { class: "doses" }, h("legend", {}, "Repetitions"));
  const keep = () => desk.act(it.name + ": " + said(), [{ act: "set", item: it.id, key: "reps", value: said() }]);
  const said = () => pieces.map((p) => p.n + " x " + p.rhythm).join(", ");
  const line = (p, i, grades) => {
    const n = h("select", { "data-key": "n" + i, "aria-label": "how many", onchange: () => { p.n = n.value; keep(); } },
      [...new Set(["4", "8", "12", "16", "24", "32", p.n])].sort((a, b) => a - b).map((v) => h("option", { value: v, selected: v === p.n }, v)));
    const rhythm = h("select", { "data-key": "r" + i, "aria-label": "in which rhythm", onchange: () => { p.rhythm = rhythm.value; keep(); } },
      [...new Set([...grades.map((g) => g.rhythm), p.rhythm])].map((r) => {
        const g = grades.find((x) => x.rhythm === r);
        return h("option", { value: r, selected: r === p.rhythm }, (g ? g.says : r) + (g && g.grade ? " – " + g.grade : ""));
      }));
    return h("div", { class: "dose" }, n, " × ", rhythm, pieces.length > 1 && h("button", { "aria-label": "take this out", onclick: () => { pieces.splice(i, 1); keep(); } }, "−"));
  };
  const fill = (grades) => box.replaceChildren(box.firstChild, ...pieces.map((p, i) => line(p, i, grades)),
    h("button", { onclick: () => { pieces.push({ n: "8", rhythm: "2-2" }); keep(); } }, "And more"));
  const part = desk.view.parts[desk.partOf(it.id)], bpm = part?.tracks[Math.max(0, it.rows[0]?.track ?? 0)]?.played || 0;
  fill([]);
  attempt(async () => fill((await ask("grades", { move: it.name, range: it.keys.range || "", bpm })).rhythms));
  return box;
}

// moves are those of a block, in eights.
function moves(desk, it) {
  const sum = it.moves.reduce((s, m) => s + Number(m.counts || 0), 0);
  return h("fieldset", { class: "doses" }, h("legend", {}, "Moves, " + sum + " counts" + (sum % 32 ? ": " + (32 - (sum % 32)) + " more fill the phrase" : "")),
    it.moves.map((m) => h("div", { class: "dose" },
      h("input", { type: "text", value: m.name, "aria-label": "move", onchange: (e) => desk.act("Block " + it.name + ": " + e.target.value, [{ act: "set", item: m.id, key: "move", value: e.target.value }]) }),
      h("select", { "aria-label": "counts", onchange: (e) => desk.act("Block " + it.name + ": " + m.name + " " + e.target.value, [{ act: "set", item: m.id, key: "counts", value: Number(e.target.value) }]) },
        [...new Set(["4", "8", "16", "24", "32", m.counts])].sort((a, b) => a - b).map((v) => h("option", { value: v, selected: v === m.counts }, v))),
      h("button", { "aria-label": "take out " + m.name, onclick: () => desk.act("Block " + it.name + " without " + m.name, [{ act: "delete", item: m.id }]) }, "−"))),
    h("button", { onclick: () => desk.act("Block " + it.name + ": a move more", [{ act: "insert", to: it.id.split("#")[0] + "/moves", at: it.moves.length, entry: { move: "march", counts: sum % 32 ? 32 - (sum % 32) : 32 } }]) }, "A move more"));
}

// other plays another song in the place of one: first it says what would move.
function other(desk, part, i, songs) {
  const acts = (file) => [{ act: "set", item: part.id, key: "tracks", value: part.names.with(i, file) }];
  const take = h("button", { hidden: true, onclick: () => desk.act(part.name + " on another song", acts(select.value)) }, "Take it");
  const select = h("select", { "aria-label": "Another song in its place", onchange: () => {
    take.hidden = !select.value;
    if (select.value) desk.preview(select.selectedOptions[0].textContent, acts(select.value));
  } }, h("option", { value: "" }, "Another…"), songs.map((s) => h("option", { value: s.file }, s.title + ", " + Math.round(s.bpm) + " BPM")));
  return [select, take];
}

const kinds = [["warm-up", "warm-up"], ["cardio", "cardio"], ["strength", "strength"], ["core", "core"], ["cool-down", "cool-down"], ["stretch", "stretch"], ["mixed", "mixed"]];

function ofPart(desk, part) {
  const keep = (key, old) => change(desk, part, part.name, key, old);
  const n = desk.view.parts.indexOf(part);
  const songs = desk.songs.filter((s) => s.state === "heard" || s.state === "tapped");
  const tracks = (names, label) => desk.act(part.name + ": " + label, [{ act: "set", item: part.id, key: "tracks", value: names }]);
  const more = h("select", { "aria-label": "Add a song", onchange: () => more.value && tracks([...part.names, more.value], "a song more") },
    h("option", { value: "" }, "Add a song…"), songs.map((s) => h("option", { value: s.file }, s.title + ", " + Math.round(s.bpm) + " BPM, " + s.whole + " phrases")));
  return h("div", { class: "inspector" }, h("h2", { tabindex: "-1" }, part.name),
    field("Name", "part", part.name, (v) => v && v !== part.name && desk.act("Called " + v, [{ act: "set", item: part.id, key: "part", value: v }])),
    choice("Kind", "kind", part.kind, kinds, keep("kind", part.kind)),
    field("Starts on", "start", part.start, keep("start", part.start), "phrase 2"),
    field("Played at, BPM", "bpm", part.bpm, (v) => v !== part.bpm && desk.act(part.name + (v ? " at " + v + " BPM" : " as recorded"), [v ? { act: "set", item: part.id, key: "bpm", value: Number(v) } : { act: "unset", item: part.id, key: "bpm" }])),
    choice("Counted", "taught", part.taught, [["", "as it was heard"], ["half", "half as fast"], ["double", "twice as fast"]], keep("taught", part.taught)),
    h("fieldset", { class: "doses" }, h("legend", {}, "Songs"), part.names.map((name, i) => h("div", { class: "dose" }, h("span", {}, part.tracks[i]?.title || name),
      i > 0 && h("button", { onclick: () => tracks(part.names.toSpliced(i - 1, 2, part.names[i], part.names[i - 1]), "songs in another order") }, "Earlier"),
      other(desk, part, i, songs),
      part.names.length > 1 && h("button", { "aria-label": "take this song out", onclick: () => tracks(part.names.toSpliced(i, 1), "a song less") }, "−"))), more),
    h("div", { class: "ways" },
      n > 0 && h("button", { onclick: () => desk.act("Earlier: " + part.name, [{ act: "move", item: part.id, to: "parts", at: n - 1 }], "parts/" + (n - 1)) }, "Earlier"),
      n + 1 < desk.view.parts.length && h("button", { onclick: () => desk.act("Later: " + part.name, [{ act: "move", item: part.id, to: "parts", at: n + 2 }], "parts/" + (n + 1)) }, "Later"),
      h("button", { onclick: () => desk.act("Taken out: " + part.name, [{ act: "delete", item: part.id }]) }, "Take this part out")));
}
