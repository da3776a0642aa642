// Where we are in the class. The place is always worked out from the music's
// own time or from the clock, never added up by timers: a page that slept in
// a pocket wakes up on the right count.
var audio = $("music");
var state = {
  leg: 0,
  row: 0,          // of a leg that has no counts
  studio: false,   // the studio's system plays, we follow her tap
  running: false,
  pace: 1,         // share of the class's tempo that is practised at
  at: 0,           // track time when standing [ms]
  anchor: null     // {clock, at}: at that moment of the clock the track was there
};
var found = {};    // files the instructor has shown us, by source
var seeking = null; // track time asked for and not reached yet [ms]
var store = "onphrase:" + location.pathname;

function here() { return legs[state.leg]; }
function tapped() { return state.studio && state.anchor !== null; }
function counted(leg) { return leg.counts.length > 1; }

// rate is how fast the track goes, 1 as recorded.
function rate() { return here().speed * state.pace; }

// now is the track time [ms].
function now() {
  if (state.anchor) return state.anchor.at + (Date.now() - state.anchor.clock) * rate();
  if (!state.studio && state.running && seeking === null) return audio.currentTime * 1000;
  return state.at;
}

// classTime is the time since the class began [s].
function classTime() {
  var leg = here();
  return counted(leg) ? leg.zero + now() / 1000 / leg.speed : leg.rows[state.row].time;
}

// go puts us somewhere, standing or running as before.
function go(leg, t) {
  var change = leg !== state.leg, run = state.running;
  state.leg = leg;
  state.at = t === undefined ? here().rows[0].at : Math.max(0, t);
  state.row = 0;
  if (state.studio || !here().source) {
    state.anchor = run && !change ? { clock: Date.now(), at: state.at } : null;
    state.running = state.anchor !== null;
    if (!state.studio) audio.pause();
  } else {
    state.anchor = null;
    cue();
    if (run) play();
  }
  save();
}

// cue brings the music to where we stand.
function cue() {
  var leg = here(), source = found[leg.source] || leg.source;
  if (audio.dataset.source !== source) {
    audio.dataset.source = source;
    audio.src = source;
    audio.preservesPitch = true;
  }
  audio.defaultPlaybackRate = audio.playbackRate = rate();
  seeking = state.at;
  if (audio.readyState > 0) seek();
}

function seek() {
  if (seeking === null) return;
  audio.currentTime = seeking / 1000;
}

function play() {
  var leg = here();
  if (!counted(leg)) return;
  if (state.studio) return tap();
  if (!leg.source) return say(leg.title + " cannot be played from here; let the studio play");
  if (seeking === null || audio.dataset.source !== (found[leg.source] || leg.source)) cue();
  state.running = true;
  audio.play().catch(function (e) {
    if (e.name === "AbortError") return;
    state.running = false;
    if (e.name === "NotAllowedError") say("press play once more");
  });
  stayAwake();
  save();
}

function stop() {
  state.at = now();
  state.running = false;
  state.anchor = null;
  audio.pause();
  save();
}

function toggle() { if (state.running) stop(); else play(); }

// tap says: this, now, is count 1. Standing, it starts from the item she
// stands on; running, the nearest count 1 of an eight is moved here.
function tap() {
  var leg = here();
  if (!counted(leg)) return step(1);
  if (!state.studio) setStudio(true);
  var f = fractionAt(leg, now());
  var count = f < startOf(leg) ? startOf(leg) : eightNear(leg, f);
  state.anchor = { clock: Date.now(), at: timeOf(leg, count) };
  state.running = true;
  say("");
  stayAwake();
  save();
}

// step goes some counts on or back; through the rows where there are none.
function step(n) {
  var leg = here();
  if (!counted(leg)) return stepRow(n);
  var f = fractionAt(leg, now());
  move(timeOf(leg, tapped() ? f + n : Math.floor(f + 1e-6) + n));
}

function stepRow(n) {
  var row = state.row + n;
  if (row >= here().rows.length) return goLeg(1);
  if (row < 0) return goLeg(-1);
  state.row = row;
  save();
}

// stepPhrase goes to the next phrase or the one before. Following a tap, it
// keeps the count in the phrase: she knows the count, not the phrase.
function stepPhrase(n) {
  var leg = here();
  if (!counted(leg)) return stepRow(n);
  var f = fractionAt(leg, now()), i = phraseAt(leg, Math.floor(f + 1e-6));
  var first = function (k) { return k < 0 ? 0 : k >= leg.phrases.length ? leg.counts.length : leg.phrases[k][0]; };
  if (tapped()) return move(timeOf(leg, f + first(i + n) - first(i)));
  if (n < 0 && f - first(i) >= 4) n = 0; // first to the start of this one
  move(timeOf(leg, first(i + n)));
}

// rounding is how far the times of the data may be out when added up [ms].
var rounding = 5;

function move(t) {
  t = Math.min(Math.max(0, t), endOf(here()) - rounding);
  if (tapped()) {
    state.anchor = { clock: Date.now(), at: t };
    save();
  } else {
    go(state.leg, t);
  }
}

function goLeg(n) {
  var to = Math.min(Math.max(0, state.leg + n), legs.length - 1);
  if (to !== state.leg) go(to);
}

function setStudio(on) {
  if (on === state.studio) return;
  var t = now();
  state.studio = on;
  audio.pause();
  state.at = t;
  state.running = false;
  state.anchor = null;
  seeking = null;
  say(on ? askTap() : "");
  save();
}

function askTap() {
  var leg = here(), faster = Math.round(1000 * leg.speed) / 10;
  return "Tap when you hear count 1." + (faster === 100 ? "" : " The studio has to play this song at " + faster + " % of its tempo.");
}

// check goes on to the next song when the last row of this one is over. The
// studio's system has to be started by hand, and waits for a tap.
function check() {
  if (!state.running || goRound() || now() < endOf(here())) return;
  if (state.leg === legs.length - 1) return stop();
  go(state.leg + 1);
}

audio.addEventListener("loadedmetadata", seek);
audio.addEventListener("seeked", function () {
  // The music may have gone on by the time we hear of it; only another seek,
  // asked for meanwhile, is still to be waited for.
  if (!audio.seeking && audio.readyState > 0) seeking = null;
});
audio.addEventListener("timeupdate", check);
audio.addEventListener("ended", function () { // the class goes on though the music is over
  if (!state.running || now() >= endOf(here()) - 50) return check();
  state.anchor = { clock: Date.now(), at: audio.duration * 1000 };
});
// The phone's own buttons stop and start the music too.
audio.addEventListener("pause", function () {
  if (!state.running || state.studio || state.anchor || audio.ended || seeking !== null) return;
  state.at = now();
  state.running = false;
});
audio.addEventListener("play", function () { if (!state.studio) state.running = true; });
audio.addEventListener("error", function () {
  if (!audio.getAttribute("src")) return;
  state.running = false;
  seeking = null;
  // A file that is not there and one that is no music are one to a browser.
  var lost = !audio.error || audio.error.code === MediaError.MEDIA_ERR_SRC_NOT_SUPPORTED;
  $("reconnect").hidden = !lost;
  say(here().title + (lost ? " is not beside this page. Find it, or let the studio play." : " cannot be played on this device. Let the studio play."));
});
audio.addEventListener("canplay", function () { $("reconnect").hidden = true; });
$("reconnect").querySelector("input").addEventListener("change", function () {
  if (!this.files.length) return;
  found[here().source] = URL.createObjectURL(this.files[0]);
  say("");
  cue();
});

// The place is kept for a page that the phone throws out of memory.
function save() {
  try {
    sessionStorage.setItem(store, JSON.stringify({ leg: state.leg, part: data.parts[here().part].name, title: here().title, row: state.row, studio: state.studio, at: state.running ? now() : state.at, anchor: state.anchor, pace: state.pace }));
  } catch (e) { /* some browsers keep nothing for files */ }
}

function restore() {
  var kept = null;
  try { kept = JSON.parse(sessionStorage.getItem(store)); } catch (e) { /* nothing kept */ }
  if (!kept) return;
  // The class may have changed: the same song of the same part is the place.
  var same = function (l) { return l && l.title === kept.title && data.parts[l.part].name === kept.part; };
  state.leg = same(legs[kept.leg]) ? kept.leg : legs.findIndex(same);
  if (state.leg < 0) { state.leg = 0; return; }
  state.row = Math.min(kept.row || 0, here().rows.length - 1);
  state.at = kept.at || 0;
  state.studio = kept.studio;
  state.pace = kept.pace || 1;
  if (state.studio && kept.anchor && kept.anchor.at + (Date.now() - kept.anchor.clock) * rate() < endOf(here())) {
    state.anchor = kept.anchor;
    state.running = true;
  }
}

// The screen stays on while the class runs, where the browser allows it.
var lock = null;
function stayAwake() {
  if (lock || !navigator.wakeLock) return;
  navigator.wakeLock.request("screen").then(function (l) {
    lock = l;
    l.addEventListener("release", function () { lock = null; });
  }, function () { lock = null; });
}
document.addEventListener("visibilitychange", function () {
  if (document.visibilityState === "visible" && state.running) stayAwake();
});

// While the music plays the place is kept now and then, and when the page goes.
setInterval(function () { if (state.running) save(); }, 2000);
window.addEventListener("pagehide", save);

function say(text) { put($("status"), text); }
