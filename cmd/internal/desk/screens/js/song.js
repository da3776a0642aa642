// One song: seen, heard with clicks, and put right by ear. Every step says what
// it did and is taken back singly.
import { h, put } from "./dom.js";
import { ask, listen } from "./engine.js";
import { keys } from "./keys.js";
import { lines } from "./lines.js";
import * as player from "./player.js";
import { tapAlong } from "./taps.js";
import { tapIn } from "./tapin.js";
import { attempt, tell } from "./told.js";
import { bpm, clock, many, moment } from "./words.js";

const zooms = ["whole song", "phrases", "counts"];
let zoom = 1;

export async function show(main, state, id) {
  if (id === "tap-in") return tapIn(main, state);
  let song = await ask("song", { id });
  let cursor = song.phrases.length ? song.phrases[0].count : 0;
  let page = null;
  let looping = false, slow = false, onward = true;

  const title = h("h1", {}, song.song.title);
  const facts = h("p", { class: "facts" });
  const advice = h("p", { class: "advice" });
  const text = h("div", { class: "sheet", tabindex: "0", role: "group", "aria-label": "The song, phrase by phrase" });
  const place = h("p", { class: "where", role: "status", "aria-live": "off" });
  const playButton = h("button", { class: "main", onclick: toggle }, "Play ", h("kbd", {}, "Space"));
  const steps = h("ol", { class: "steps" });
  const taps = h("div", { class: "taps" });

  const switches = h("div", { class: "ways" }, playButton,
    toggleButton("Clicks", "C", player.withClicks(), (on) => player.setClicks(on)),
    toggleButton("Half pace", "H", false, (on) => { slow = on; player.pace(on ? 0.5 : 1); }),
    toggleButton("Loop this phrase", "L", false, (on) => { looping = on; setLoop(); }),
    h("button", { onclick: () => setZoom(zoom - 1), "aria-label": "smaller" }, "−"),
    h("button", { onclick: () => setZoom(zoom + 1), "aria-label": "larger" }, "+"), place);

  const scope = h("fieldset", { class: "scope" }, h("legend", {}, "Count 1 moves"),
    h("label", { class: "choice" }, h("input", { type: "radio", name: "scope", checked: true, onchange: () => { onward = true; } }), h("span", {}, "from here on")),
    h("label", { class: "choice" }, h("input", { type: "radio", name: "scope", onchange: () => { onward = false; } }), h("span", {}, "in all of it")));
  const action = (label, key, f) => h("button", { onclick: f }, label + " ", h("kbd", {}, key));
  const mend = h("section", { class: "mend", "aria-labelledby": "mend" },
    h("h2", { id: "mend" }, "Put it right"),
    h("p", {}, "Press the count that you mean, then say what it is. It is heard with clicks at once, and every step can be taken back."),
    scope,
    h("div", { class: "ways" },
      action("Count 1 is here", "1", () => fix({ kind: "one", at: time() })),
      action("Count 1 one earlier", "[", () => fix({ kind: "earlier", at: time(), onward })),
      action("Count 1 one later", "]", () => fix({ kind: "later", at: time(), onward })),
      action("A phrase starts here", "P", () => fix({ kind: "phrase", at: time() })),
      action("Join to the phrase before", "J", () => fix({ kind: "join", at: phraseAt().at })),
      action("Four extra counts here", "4", () => fix({ kind: "extra", at: time(), counts: 4 })),
      action("Count half as fast", "−", () => fix({ kind: "half" })),
      action("Count twice as fast", "+", () => fix({ kind: "double" })),
      action("Tap along", "T", startTaps)),
    taps);
  const checked = h("label", { class: "choice" }, h("input", { type: "checkbox", onchange: (e) => check(e.target.checked) }), h("span", {}, "I have checked this song"));

  main.append(title, facts, advice, switches, text, mend, h("section", { "aria-labelledby": "done" }, h("h2", { id: "done" }, "What you have set"), steps, checked));

  function draw() {
    const s = song.song;
    put(facts, [bpm(s.bpm) + " BPM" + (s.rival ? ", or " + Math.round(s.rival.bpm) + " (" + s.rival.word + ")" : ""), many(s.whole, "whole phrase") + (s.odd ? " and " + s.odd + " odd" : ""),
      clock(s.seconds), s.suits.length ? "for " + s.suits.join(", ") : ""].filter(Boolean).join(" · "));
    advice.replaceChildren(h("b", {}, s.problem || (s.checked ? "Checked by you" : s.trust_word)),
      ...(song.doubts.length && !s.checked ? [h("button", { onclick: nextDoubt }, "Listen to phrase " + numberAt(song.doubts[0]) + " ", h("kbd", {}, "N"))] : []));
    page = lines(song, pick, (p, n) => fix({ kind: "drag", at: p.at, to: song.counts[p.count + n] }));
    text.replaceChildren(page.list);
    text.className = "sheet zoom" + zoom;
    steps.replaceChildren(...song.fixes.map((f) => h("li", {}, h("span", {}, f.text), h("button", { onclick: () => unfix(f.n) }, "Take back"))));
    if (!song.fixes.length) steps.append(h("li", { class: "quiet" }, "Nothing yet."));
    checked.querySelector("input").checked = song.checked;
    player.load({ music: s.music, counts: song.counts, inBar: song.in_bar, phraseStarts: new Set(song.phrases.map((p) => p.count)) });
    setCursor(Math.min(cursor, song.counts.length - 1));
    switches.hidden = !s.music;
  }

  const time = () => song.counts[cursor];
  const numberAt = (ms) => song.phrases.findLastIndex((p) => p.at <= ms + 2) + 1;
  const phraseAt = () => song.phrases[Math.max(0, numberAt(time()) - 1)] || { at: time(), count: 0, counts: song.counts.length };

  function setCursor(i) {
    page.cells[cursor]?.classList.remove("cursor");
    cursor = Math.max(0, Math.min(song.counts.length - 1, i));
    const cell = page.cells[cursor];
    if (!cell) return;
    cell.classList.add("cursor");
    const p = phraseAt();
    put(place, "phrase " + numberAt(time()) + ", count " + (cursor - p.count + 1) + ", " + moment(time()));
    setLoop();
  }
  function pick(i) {
    setCursor(i);
    if (player.playing()) player.play(song.counts[i]);
  }
  function setLoop() {
    const p = phraseAt();
    const end = song.counts[p.count + p.counts] ?? song.song.seconds * 1000;
    player.setLoop(looping ? [p.at, end] : null);
  }
  function setZoom(z) {
    zoom = Math.max(0, Math.min(zooms.length - 1, z));
    text.className = "sheet zoom" + zoom;
    page.cells[cursor]?.scrollIntoView({ block: "center" });
  }
  function toggle() { player.toggle(player.playing() ? null : time()); }
  function nextDoubt() {
    const next = song.doubts.find((ms) => ms > time() + 2) ?? song.doubts[0];
    if (next === undefined) return tell("No doubtful place is left.");
    setCursor(song.counts.findIndex((c) => c >= next - 2));
    page.cells[cursor].scrollIntoView({ block: "center" });
    tell("Phrase " + numberAt(next) + ": does a phrase start here? Press Space to hear it.");
  }
  async function took(f) {
    const answer = await attempt(f);
    if (!answer) return;
    song = answer.song.counts ? answer.song : answer;
    draw();
    tell(answer.say || "Done.", song.fixes.length ? () => unfix(0) : null);
  }
  const fix = (fields) => took(() => ask("fix", { id, ...fields }));
  const unfix = (n) => took(() => ask("unfix", { id, n }));
  const check = (on) => took(() => ask("checked", { id, on }));
  function startTaps() {
    tapAlong(taps, { id, song, from: phraseAt().at, kept: (answer) => { song = answer.song; draw(); tell(answer.say, () => unfix(0)); } });
  }

  let frame = 0, lit = -1;
  function follow() {
    frame = requestAnimationFrame(follow);
    if (!player.playing() || !page) return;
    const now = player.at() + 15;
    let i = song.counts.findLastIndex((c) => c <= now);
    if (i === lit) return;
    page.cells[lit]?.classList.remove("lit");
    page.cells[i]?.classList.add("lit");
    if (page.cells[i] && zoom > 0 && page.cells[i].parentElement !== page.cells[lit]?.parentElement) page.cells[i].parentElement.scrollIntoView({ block: "nearest" });
    lit = i;
  }

  draw();
  follow();
  if (song.song.state !== "heard" && song.song.state !== "tapped") ask("hear", { id }).catch(() => {});
  const ends = [
    player.onplay((on) => { playButton.firstChild.textContent = on ? "Stop " : "Play "; }),
    listen("song", async (s) => { if (s.id === id && s.state !== song.song.state) { song = await ask("song", { id }); draw(); } }),
  ];
  const count = (n) => () => pick(cursor + n);
  keys({
    " ": toggle, c: () => press(switches, "C"), h: () => press(switches, "H"), l: () => press(switches, "L"),
    ArrowRight: count(1), ArrowLeft: count(-1), ArrowDown: () => step(1), ArrowUp: () => step(-1),
    "1": () => fix({ kind: "one", at: time() }), "[": () => fix({ kind: "earlier", at: time(), onward }), "]": () => fix({ kind: "later", at: time(), onward }),
    p: () => fix({ kind: "phrase", at: time() }), j: () => fix({ kind: "join", at: phraseAt().at }), "4": () => fix({ kind: "extra", at: time(), counts: 4 }),
    "-": () => fix({ kind: "half" }), "+": () => fix({ kind: "double" }), t: startTaps, n: nextDoubt, k: () => check(!song.checked),
  });
  function step(n) {
    const i = numberAt(time()) - 1, p = song.phrases[Math.max(0, Math.min(song.phrases.length - 1, i + n))];
    if (p) { pick(p.count); page.cells[cursor]?.scrollIntoView({ block: "nearest" }); }
  }
  return () => { cancelAnimationFrame(frame); ends.forEach((f) => f()); player.stop(); player.setLoop(null); player.pace(1); };
}

function toggleButton(label, key, on, f) {
  const b = h("button", {
    "aria-pressed": String(on), "data-key": key,
    onclick: () => { const now = b.getAttribute("aria-pressed") !== "true"; b.setAttribute("aria-pressed", String(now)); f(now); },
  }, label + " ", h("kbd", {}, key));
  return b;
}

function press(box, key) { box.querySelector("[data-key=" + key + "]").click(); }
