// What the instructor reads from two metres.

// view works out everything the stage shows at a track time.
function view(leg, t) {
  var known = counted(leg), i = known ? rowAt(leg, t) : state.row, row = leg.rows[i];
  var v = { row: row, count: known ? countAt(leg, t) : 0, name: row.name, side: row.side, from: row.from, counts: row.counts, end: row.from + row.counts };
  v.next = leg.rows[i + 1] || nextLeg(leg);
  v.then = v.next ? first(v.next) : "";
  v.thenSide = v.next ? v.next.side : "";
  v.early = v.next ? v.next.early || usualCue : 0;
  v.key = keyOf(row, 0);
  v.nextKey = v.next ? keyOf(v.next, 0) : "";
  if (row.moves.length) viewMove(v, row);
  v.left = Math.max(1, v.end - Math.max(v.from, v.count));
  v.over = known && leg === legs[legs.length - 1] && t >= endOf(leg) - rounding && !state.running;
  if (v.over) v.name = "The class is over";
  v.seconds = row.seconds - (t - row.at) / 1000 / leg.speed;
  v.announced = row.kind === "lead-in" || v.left <= v.early;
  return v;
}

// usualCue is how many counts before it a move is announced.
var usualCue = 4;

// keyOf names a move of a row.
function keyOf(row, k) { return row.n + ":" + k + " " + (row.moves.length ? row.moves[k].name : row.name); }

// viewMove narrows a block to the move of it that is being done.
function viewMove(v, row) {
  var k = row.moves.length - 1;
  while (k > 0 && row.from + row.moves[k].from > v.count) k--;
  var move = row.moves[k], after = row.moves[k + 1];
  v.name = move.name;
  v.side = move.lead;
  v.key = keyOf(row, k);
  v.from = row.from + move.from;
  v.counts = move.counts;
  v.lead = true;
  if (!after) return;
  v.inside = true; // what comes is another move of the same block
  v.nextKey = keyOf(row, k + 1);
  v.end = row.from + after.from;
  v.then = after.name;
  v.thenSide = after.lead;
  v.early = usualCue;
}

// idle rows are those in which nothing is taught.
function idle(row) { return row.kind === "lead-in" || row.kind === "hold"; }

function nextLeg(leg) {
  var after = legs[legs.indexOf(leg) + 1];
  if (!after) return null;
  return after.rows[0].kind === "lead-in" && after.rows[1] ? after.rows[1] : after.rows[0];
}

function drawStage() {
  var leg = here(), t = now(), v = cover(view(leg, t)), known = counted(leg);
  drawStage.view = v;
  drawCourse(leg);
  put($("move"), v.hides ? "?" : v.name);
  drawSide(v);
  drawDose(v, known);
  document.body.classList.toggle("over", v.over);
  put($("detail"), v.hides ? "" : v.row.detail);
  put($("say"), v.hides ? "" : told("say", v.row.say));
  put($("ways"), v.hides ? "" : [told("easier", v.row.easier), told("harder", v.row.harder)].filter(Boolean).join("; "));
  put($("digit"), known ? String((v.left - 1) % 8 + 1) : "");
  drawEights(known ? Math.ceil(v.left / 8) : 0);
  drawFigures(v);
  document.body.classList.toggle("uncounted", !known);
  document.body.classList.toggle("last", known && v.left <= 8);
  drawNext(v, leg);
  put($("place"), known ? place(leg, v.count) + ", " + leg.title : "No counts are known here: go on with → or the button");
  var shown = [v.row.n, v.key, v.hides, mirrored(), known, v.over].join();
  if (drawStage.shown === shown) return;
  drawStage.shown = shown; // something else is being done: fit it anew
  $("move").classList.toggle("idle", idle(v.row));
  fitMove();
}

function place(leg, count) {
  var i = phraseAt(leg, count);
  if (i < 0) return "before phrase 1";
  return "phrase " + (i + 1) + ", count " + (count - leg.phrases[i][0] + 1);
}

function drawCourse(leg) {
  var part = data.parts[leg.part], through = classTime() - part.at;
  put($("part"), part.name + (state.pace === 1 ? "" : ", at " + Math.round(100 * state.pace) + " %"));
  put($("left").firstElementChild, clock(data.length - classTime()));
  var share = part.seconds > 0 ? Math.min(1, Math.max(0, through / part.seconds)) : 0;
  $("progress").firstElementChild.style.transform = "scaleX(" + share.toFixed(4) + ")";
  var percent = String(Math.round(100 * share));
  if ($("progress").getAttribute("aria-valuenow") !== percent) $("progress").setAttribute("aria-valuenow", percent);
}

function drawSide(v) {
  var side = v.hides ? "" : sideOf(v.side), words = side ? (v.lead ? "lead " : "") + sidesOf(v.side) : "";
  $("side").hidden = !side;
  $("side").dataset.side = side || "";
  put($("side").querySelector("b"), words);
  var arrow = $("side").querySelector("use"), to = side === "left" ? "#to-left" : "#to-right";
  if (arrow.getAttribute("href") !== to) arrow.setAttribute("href", to);
}

// drawDose shows the rhythm with the way that is being done underlined, or
// the block that the move belongs to.
function drawDose(v, known) {
  var row = v.row, box = $("dose"), doing = -1;
  if (row.reps && known) {
    var at = Math.max(0, v.count - row.from) % (row.counts / row.reps);
    row.phases.forEach(function (p, k) { if (at >= 0) doing = k; at -= p.counts; });
  }
  var key = [row.n, doing, known, v.hides].join();
  if (box.dataset.key === key) return;
  box.dataset.key = key;
  box.classList.toggle("name", row.moves.length > 0);
  box.replaceChildren();
  if (v.hides) return;
  if (!row.reps) return box.append(row.moves.length ? "block " + row.name : known ? "" : dose(row));
  if (!known) box.append(word("i", many(row.reps, "rep")));
  if (!row.phases.length) box.append(word("i", "pulse"));
  row.phases.forEach(function (p, k) { box.append(word(k === doing ? "u" : "i", p.counts + " " + p.word)); });
}

function word(tag, text) {
  var e = document.createElement(tag);
  e.textContent = text;
  return e;
}

// drawFigures shows what is left: counts, and repetitions or seconds.
function drawFigures(v) {
  var row = v.row, n = "", of = "";
  if (row.reps) {
    n = Math.max(1, row.reps - Math.floor(Math.max(0, v.count - row.from) / (row.counts / row.reps)));
    of = n === 1 ? "rep" : "reps";
  } else if (row.kind === "interval" || row.kind === "pause") {
    n = Math.max(0, Math.ceil(v.seconds - 1e-6));
    of = "seconds";
  }
  $("reps").hidden = !of;
  figure("reps", n, of);
  figure("counts", v.left, v.left === 1 ? "count" : "counts");
}

function figure(id, n, of) {
  put($(id).firstElementChild, String(n));
  put($(id).lastElementChild, of);
}

function drawEights(n) {
  var box = $("eights");
  if (box.childElementCount === n) return;
  while (box.childElementCount > n) box.lastChild.remove();
  while (box.childElementCount < n) box.append(document.createElement("i"));
}

function drawNext(v, leg) {
  var box = $("next"), side = sidesOf(v.thenSide), what = v.then, how = "";
  if (!v.inside) {
    how = v.next ? [partAfter(leg, v.next), dose(v.next), v.next.detail].filter(Boolean).join(", ") : "";
    if (!v.next) what = "end of the class";
    else if (v.next.reps && v.next.name === v.row.name && v.next.side === v.row.side) { // only the rhythm changes
      what = dose(v.next);
      how = v.next.detail;
    }
  }
  if (side) what += ", " + side;
  if (v.hidesNext && v.next) { what = "?"; how = ""; }
  box.classList.toggle("loud", v.announced);
  put(box.querySelector(".when"), v.announced ? "next" : "then");
  put(box.querySelector(".how"), how);
  if (put(box.querySelector(".what"), what)) fitNext();
}

// partAfter is the part that begins with a row, where it is another.
function partAfter(leg, row) {
  var after = legs[legs.indexOf(leg) + 1];
  return leg.rows.indexOf(row) >= 0 || after.part === leg.part ? "" : data.parts[after.part].name;
}
