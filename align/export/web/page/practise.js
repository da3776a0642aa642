// Learning a class: the same stretch again and again, slower, with the moves
// covered until they have been recalled.
var practice = {
  loop: "",        // item, phrase or part; empty for none
  span: null,      // {first, from, last, to}: legs and track times [ms] of the loop
  covered: false,
  open: "",        // the move that was uncovered by hand
  tally: {}        // by move: whether it was looked up
};

// runIn is how many counts before an item its loop begins, so that it is heard
// coming.
var runIn = 8;

// outside is how far from its loop we may be found and still go round [ms]: a
// hidden page is asked once a second.
var outside = 3000;

// spanAt is the loop of a kind around a place.
function spanAt(kind, index, t) {
  var leg = legs[index], end = endOf(leg) - rounding;
  if (kind === "part") {
    var first = index, last = index;
    while (first > 0 && legs[first - 1].part === leg.part) first--;
    while (last + 1 < legs.length && legs[last + 1].part === leg.part) last++;
    return { first: first, from: legs[first].rows[0].at, last: last, to: endOf(legs[last]) - rounding };
  }
  if (kind === "phrase") {
    var i = Math.max(0, phraseAt(leg, countAt(leg, t + rounding))), p = leg.phrases[i];
    return p ? { first: index, from: timeOf(leg, p[0]), last: index, to: Math.min(end, timeOf(leg, p[0] + p[1])) } : null;
  }
  var a = rowAt(leg, t + rounding), z = a, same = function (k) { return leg.rows[k] && leg.rows[k].kind === leg.rows[a].kind && leg.rows[k].name === leg.rows[a].name; };
  while (same(z + 1)) z++;
  while (same(a - 1)) a--;
  var from = leg.rows[a], next = leg.rows[z + 1];
  return { first: index, from: Math.max(0, timeOf(leg, fractionAt(leg, from.at) - runIn)), last: index, to: next ? next.at : end };
}

// goRound goes back to the start of the loop when its end has come. Whoever goes
// elsewhere takes the loop along.
function goRound() {
  if (!practice.loop || !counted(here())) return false;
  var t = now(), s = practice.span;
  if (!s || state.leg < s.first || state.leg > s.last || state.leg === s.first && t < s.from - outside || state.leg === s.last && t > s.to + outside) {
    practice.span = spanAt(practice.loop, state.leg, t);
    return false;
  }
  if (state.leg !== s.last || t < s.to) return false;
  practice.open = "";
  if (tapped() && s.first === state.leg) {
    state.anchor = { clock: Date.now(), at: s.from };
    save();
  } else {
    go(s.first, s.from);
  }
  return true;
}

function setLoop(kind) {
  practice.loop = kind;
  practice.span = null;
  $("loop").value = kind;
}

// setPace plays at a share of the tempo of the class.
function setPace(pace) {
  var t = now();
  state.pace = pace;
  if (state.anchor) state.anchor = { clock: Date.now(), at: t };
  audio.defaultPlaybackRate = audio.playbackRate = rate();
  $("pace").value = String(pace);
  save();
}

function setCover(on) {
  practice.covered = on;
  practice.open = "";
  practice.tally = {};
  $("cover").setAttribute("aria-pressed", String(on));
  $("look").disabled = !on;
  put($("recall"), "");
  drawStage.shown = null;
}

// practising shows the means, and without them takes their effect away.
function practising(on) {
  $("practise").hidden = !on;
  $("rehearse").setAttribute("aria-pressed", String(on));
  if (!on) {
    setLoop("");
    setPace(1);
    setCover(false);
  }
}

// A move is covered while it is announced and for its first counts: half of
// them, at most eight. By then she has done it, or has not.
var coveredFor = 8;

// cover takes the words out of what the stage shows.
function cover(v) {
  if (!practice.covered) return v;
  var into = v.count - v.from, over = into >= Math.min(coveredFor, v.counts / 2) || idle(v.row);
  if (over && state.running && !idle(v.row) && !(v.key in practice.tally)) {
    practice.tally[v.key] = false;
    tell();
  }
  v.hides = !over && practice.open !== v.key;
  v.hidesNext = practice.open !== v.nextKey;
  return v;
}

// look uncovers what she could not recall: the move, or what comes.
function look() {
  if (!practice.covered || !drawStage.view) return;
  var v = drawStage.view, key = v.hides ? v.key : v.nextKey;
  if (!key) return;
  practice.open = key;
  practice.tally[key] = true;
  drawStage.shown = null;
  tell();
}

function tell() {
  var keys = Object.keys(practice.tally), looked = keys.filter(function (k) { return practice.tally[k]; });
  var names = looked.map(function (k) { return k.slice(k.indexOf(" ") + 1); });
  put($("recall"), keys.length - looked.length + " of " + keys.length + " recalled" + (names.length ? "; looked up: " + names.join(", ") : ""));
}
