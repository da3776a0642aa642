// A part on its songs: every phrase is a tile as wide as it is long, four to a
// line, and the items lie on the counts that they take.
import { h } from "./dom.js";
import { clock } from "./words.js";

export function axis(desk, part, n, chosen) {
  const waits = part.waits.map((r) => ({ ...r, wait: true }));
  const rows = [...part.items.flatMap((i) => [i, ...i.items]).flatMap((i) => i.rows.map((r) => ({ ...r, item: i }))), ...waits];
  const head = h("header", { class: "part-head" + (part.id === chosen ? " on" : "") },
    h("button", { class: "plain", onclick: () => desk.choose(part.id) }, h("h2", {}, part.name)),
    h("small", {}, [part.kind, clock(part.at) + " to " + clock(part.at + part.seconds), part.start ? "starts on " + part.start : ""].filter(Boolean).join(" · ")),
    h("button", { onclick: () => desk.add(n) }, "Add ", h("kbd", {}, "A")));
  return h("section", { class: "part", "data-part": String(n) }, head,
    part.tracks.map((t, k) => song(desk, part, n, t, k, rows, chosen)),
    unplaced(desk, part, chosen));
}

function song(desk, part, n, t, k, rows, chosen) {
  const head = h("p", { class: "song-head" }, h("b", {}, t.title),
    t.problem ? h("em", {}, " " + t.problem) : h("small", {}, " " + Math.round(10 * t.played) / 10 + " BPM" + (t.left_counts > 0 ? ", " + t.left_counts + " counts left at the end" : "")));
  const tiles = t.phrases.map((p) => h("div", {
    class: "tile" + (p.counts === 32 ? "" : " odd"), style: { "--counts": String(p.counts) },
    "data-phrase": String(p.n), "data-at": String(p.at),
  },
  h("div", { class: "tile-head" }, h("b", {}, String(p.n)), h("small", {}, clock(Math.max(0, p.at))), p.counts === 32 ? null : h("em", {}, p.counts + " counts")),
  h("div", { class: "lane" }, pieces(desk, rows.filter((r) => r.track === k), t, p, chosen))));
  return h("div", { class: "song-part" }, head, h("div", { class: "tiles" }, tiles));
}

// pieces are the stretches of rows that lie in a phrase.
function pieces(desk, rows, t, p, chosen) {
  const out = [];
  for (const r of rows) {
    if (r.phrase > p.n || r.phrase < 1) continue;
    let from = r.count - 1, left = r.counts;
    for (let i = r.phrase; i < p.n; i++) {
      const room = t.phrases[i - 1].counts - from;
      left -= room;
      from = 0;
    }
    if (left <= 0 || from >= p.counts) continue;
    out.push(piece(desk, r, from, Math.min(left, p.counts - from), p, r.phrase === p.n, chosen));
  }
  return out;
}

function piece(desk, r, from, counts, p, first, chosen) {
  const style = { left: (100 * from) / p.counts + "%", width: (100 * counts) / p.counts + "%" };
  if (r.wait) return h("span", { class: "piece wait", style }, first ? { "lead-in": "lead-in", hold: "hold", change: "next song" }[r.kind] || r.kind : "");
  const it = r.item;
  const grave = it.findings.map((i) => desk.view.findings[i].severity);
  const mark = grave.includes("fix") ? "fix" : grave.includes("watch") ? "watch" : "";
  const b = h("button", {
    class: "piece " + it.kind + (it.id === chosen ? " on" : "") + (first ? "" : " goes") + (mark ? " " + mark : ""), style, "data-item": it.id,
    "aria-label": it.name + ", " + r.text + ", phrase " + r.phrase + " count " + r.count + (r.side ? ", " + r.side : "") + (mark ? ", something to " + mark : ""),
    "aria-pressed": it.id === chosen ? "true" : null, tabindex: first && r === it.rows[0] ? "0" : "-1",
    onclick: () => desk.choose(it.id),
  }, first ? [h("b", {}, it.kind === "block" ? "Block " + it.name : it.name), h("span", {}, r.text === it.name ? "" : r.text), r.side && h("small", {}, r.side)] : "");
  dragging(desk, b, it);
  return b;
}

// dragging puts an item where it is dropped, and shows before what would be.
function dragging(desk, b, it) {
  b.addEventListener("pointerdown", (e) => {
    if (e.button !== 0 || e.pointerType === "touch") return;
    const from = [e.clientX, e.clientY];
    let target = null;
    const move = (m) => {
      if (Math.hypot(m.clientX - from[0], m.clientY - from[1]) < 8) return;
      b.classList.add("dragged");
      const tile = document.elementFromPoint(m.clientX, m.clientY)?.closest(".tile");
      document.querySelectorAll(".tile.drop").forEach((t) => t.classList.remove("drop"));
      target = tile;
      tile?.classList.add("drop");
    };
    const end = () => {
      document.removeEventListener("pointermove", move);
      b.classList.remove("dragged");
      document.querySelectorAll(".tile.drop").forEach((t) => t.classList.remove("drop"));
      if (target) drop(desk, it, target);
    };
    document.addEventListener("pointermove", move);
    document.addEventListener("pointerup", end, { once: true });
  });
}

// drop moves an item before the first one that begins at or after the phrase.
function drop(desk, it, tile) {
  const n = Number(tile.closest(".part").dataset.part), at = Number(tile.dataset.at);
  const items = desk.view.parts[n].items;
  let to = items.findIndex((i) => i.id !== it.id && i.rows.some((r) => r.at >= at - 0.05));
  if (to < 0) to = items.length;
  const list = "parts/" + n + "/do", here = it.id.split("#")[0];
  const own = here.startsWith(list + "/") ? Number(here.slice(list.length + 1)) : -1;
  if (own === to || own + 1 === to) return;
  desk.act("Moved: " + it.name, [{ act: "move", item: it.id, to: list, at: to }], list + "/" + (own >= 0 && own < to ? to - 1 : to));
}

// unplaced lists items that lie on no song.
function unplaced(desk, part, chosen) {
  const lost = part.items.filter((i) => i.kind !== "superset" && !i.rows.some((r) => r.track >= 0));
  if (!lost.length) return null;
  return h("ul", { class: "unplaced" }, lost.map((i) => h("li", {}, h("button", { class: i.id === chosen ? "on" : "", "data-item": i.id, onclick: () => desk.choose(i.id) },
    i.name + " " + i.text + (i.rows.length ? "" : " – no music for it")))));
}
