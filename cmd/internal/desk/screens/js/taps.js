// Tapping along: she taps on every count, sees what was understood, hears it
// with clicks, and keeps it or not.
import { h, put } from "./dom.js";
import { ask } from "./engine.js";
import * as player from "./player.js";
import { attempt } from "./told.js";

const least = 8;

// tapAlong fills a box with the tapping; kept(answer) is called when she keeps
// what was understood.
export function tapAlong(box, { id, song, from, kept }) {
  let taps = [], one = -1, understood = null;
  const says = h("p", { role: "status", "aria-live": "polite", "aria-atomic": "true" }, "Start the music, then tap on every count: the space bar, or the large button. Eight taps or more.");
  const pad = h("button", { class: "pad", onpointerdown: (e) => { e.preventDefault(); tap(false); } }, "Tap");
  const padOne = h("button", { class: "pad", onpointerdown: (e) => { e.preventDefault(); tap(true); } }, "Tap: count 1");
  const keep = h("button", { class: "main", hidden: true, onclick: () => done(false) }, "Keep it ", h("kbd", {}, "Enter"));
  const again = h("button", { hidden: true, onclick: reset }, "Tap again");
  const close = h("button", { onclick: leave }, "Leave it as it was ", h("kbd", {}, "Esc"));
  box.replaceChildren(h("div", { class: "tapping" }, says, h("div", { class: "pads" }, pad, padOne), h("div", { class: "ways" }, keep, again, close)));
  pad.focus();
  if (!player.playing()) player.play(from);

  function tap(isOne) {
    const now = player.playing() ? player.at() : null;
    if (now === null) return put(says, "The music is not playing. Press Play first.");
    if (taps.length && now < taps[taps.length - 1]) reset();
    taps.push(Math.round(now));
    if (isOne) one = taps.length - 1;
    if (taps.length < least) put(says, taps.length + " of " + least + " taps");
    else done(true);
  }
  async function done(dry) {
    const answer = await attempt(() => ask("taps", { id, taps, one, dry }));
    if (!answer) { again.hidden = false; return; }
    understood = answer;
    put(says, answer.say);
    keep.hidden = again.hidden = !dry;
    if (dry) {
      const s = answer.song;
      player.load({ music: s.song.music, counts: s.counts, inBar: s.in_bar, phraseStarts: new Set(s.phrases.map((p) => p.count)) });
      player.setClicks(true);
      return;
    }
    stop();
    kept(answer);
  }
  function reset() {
    taps = [];
    one = -1;
    understood = null;
    keep.hidden = again.hidden = true;
    put(says, "Tap on every count.");
  }
  function leave() {
    stop();
    player.load({ music: song.song.music, counts: song.counts, inBar: song.in_bar, phraseStarts: new Set(song.phrases.map((p) => p.count)) });
  }
  function stop() {
    document.removeEventListener("keydown", key, true);
    box.replaceChildren();
  }
  // While she taps, the space bar is a tap and nothing else.
  function key(e) {
    if (!box.isConnected) return document.removeEventListener("keydown", key, true);
    const act = { " ": () => tap(false), 1: () => tap(true), Escape: leave, Enter: understood ? () => done(false) : null }[e.key];
    if (!act || e.repeat) return;
    e.preventDefault();
    e.stopPropagation();
    act();
  }
  document.addEventListener("keydown", key, true);
}
