// One song at a time, with clicks on its counts where she wants them: count 1
// of a phrase is highest, count 1 of an eight higher than the others.

const audio = new Audio();
audio.preservesPitch = true;
let song = null;      // {music, counts, phraseStarts: Set of indices, inBar}
let clicks = false;
let loop = null;      // [from ms, to ms]
let context = null;
let ahead = 0;        // index of the next count to click
let timer = null;
const changed = new Set();

// onplay calls f at every start and stop.
export function onplay(f) {
  changed.add(f);
  return () => changed.delete(f);
}
const say = () => changed.forEach((f) => f(playing()));

export function playing() { return song && !audio.paused ? song.music : null; }
export function at() { return audio.currentTime * 1000; }
export function withClicks() { return clicks; }

// load makes a song the one that plays; counts and phrase starts may change
// under the running music.
export function load(next) {
  const same = song && song.music === next.music;
  song = next;
  if (!same) audio.src = next.music;
  rewind();
}

export async function play(ms = null) {
  if (!song) return;
  if (ms !== null) audio.currentTime = ms / 1000;
  context = context || new AudioContext();
  await context.resume();
  rewind();
  await audio.play();
  timer = timer || setInterval(schedule, 25);
  say();
}

export function stop() {
  audio.pause();
  say();
}
export function toggle(ms = null) { if (playing()) stop(); else play(ms); }
export function pace(rate) { audio.playbackRate = rate; rewind(); }
export function setClicks(on) { clicks = on; rewind(); }
export function setLoop(range) { loop = range; }

function rewind() {
  ahead = 0;
  const now = at();
  while (song && song.counts && ahead < song.counts.length && song.counts[ahead] < now - 1) ahead++;
}

const look = 120; // how far ahead clicks are set [ms]

// schedule sets the clicks of the next moments on the clock of the sound card,
// which is steadier than any timer here.
function schedule() {
  if (audio.paused) return;
  const now = at();
  if (loop && now >= loop[1]) {
    audio.currentTime = loop[0] / 1000;
    rewind();
    return;
  }
  if (!song.counts) return;
  while (ahead < song.counts.length && song.counts[ahead] < now + look * audio.playbackRate) {
    const wait = (song.counts[ahead] - now) / audio.playbackRate / 1000;
    if (clicks && wait > -0.02) click(context.currentTime + Math.max(0, wait), kind(ahead));
    ahead++;
  }
}

function kind(i) {
  if (song.phraseStarts && song.phraseStarts.has(i)) return "phrase";
  return song.inBar && song.inBar[i] === 1 ? "one" : "count";
}

const pitch = { phrase: 2093, one: 1397, count: 880 }; // [Hz]

function click(when, what) {
  const tone = context.createOscillator(), level = context.createGain();
  tone.frequency.value = pitch[what];
  level.gain.setValueAtTime(what === "count" ? 0.25 : 0.5, when);
  level.gain.exponentialRampToValueAtTime(0.001, when + (what === "phrase" ? 0.12 : 0.05));
  tone.connect(level).connect(context.destination);
  tone.start(when);
  tone.stop(when + 0.15);
}

audio.addEventListener("seeked", rewind);
audio.addEventListener("pause", say);
audio.addEventListener("ended", () => { if (loop) play(loop[0]); else say(); });
