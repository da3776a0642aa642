// A song that she has no file of, tapped in from a loudspeaker: first its counts,
// then its phrases, each counted off by one key.
import { $, h, put } from "./dom.js";
import { ask } from "./engine.js";
import { keys } from "./keys.js";
import { attempt, tell } from "./told.js";
import { bpm, many } from "./words.js";

export function tapIn(main) {
  let taps = [], marks = [];
  const name = h("input", { id: "tapped-name", type: "text", autocomplete: "off" });
  const says = h("p", { class: "large", role: "status", "aria-live": "polite", "aria-atomic": "true" }, "Play the song on any loudspeaker. Tap on every count, 32 or more for an exact tempo.");
  const tempo = h("p", { class: "figure", "aria-hidden": "true" }, "–");
  const pad = h("button", { class: "pad", onpointerdown: (e) => { e.preventDefault(); tap(); } }, "Tap ", h("kbd", {}, "Space"));
  const start = h("button", { class: "pad", disabled: true, onpointerdown: (e) => { e.preventDefault(); mark(); } }, "A phrase starts now ", h("kbd", {}, "P"));
  const keep = h("button", { class: "main", disabled: true, onclick: save }, "Keep this song");
  const again = h("button", { onclick: reset }, "Begin again");
  main.append(h("h1", {}, "Tap in a song"), h("p", {}, "For music that you have no file of: a stream, or the studio's own player."),
    h("p", {}, h("label", { for: "tapped-name" }, "What is the song called?"), name),
    says, tempo, h("div", { class: "pads" }, pad, start), h("div", { class: "ways" }, keep, again));
  const now = () => Math.round(performance.now());

  async function tap() {
    taps.push(now());
    if (taps.length >= 8 && taps.length % 4 === 0) await understand();
    else if (taps.length < 8) put(says, taps.length + " of 8 taps");
  }
  async function understand() {
    const answer = await attempt(() => ask("tapped-in", { title: name.value, taps, marks, dry: true }));
    if (!answer) return;
    put(tempo, bpm(answer.bpm) + " BPM");
    start.disabled = false;
    put(says, marks.length < 2 ? "Now press once at the start of every phrase, and once at the end." : many(answer.phrases.length, "phrase") + ": " + answer.phrases.join(", ") + " counts");
    keep.disabled = answer.phrases.length === 0;
  }
  async function mark() {
    if (start.disabled) return;
    marks.push(now());
    await understand();
  }
  async function save() {
    if (!name.value.trim()) { put(says, "What is the song called?"); name.focus(); return; }
    const answer = await attempt(() => ask("tapped-in", { title: name.value, taps, marks, dry: false }));
    if (!answer) return;
    tell(answer.say);
    location.hash = "#song/" + answer.song.id;
  }
  function reset() {
    taps = [];
    marks = [];
    start.disabled = keep.disabled = true;
    put(tempo, "–");
    put(says, "Tap on every count.");
  }
  keys({ " ": tap, p: mark, Escape: () => { location.hash = "#songs"; } });
  if (!$("main").contains(document.activeElement)) name.focus();
  return null;
}
