// What the instructor reads from two metres.

// view works out everything the stage shows at a track time.
function view(leg, t) {
  var known = counted(leg), i = known ? rowAt(leg, t) : state.row, row = leg.rows[i];
  var v = { row: row, count: known ? countAt(leg, t) : 0, name: row.name, side: row.side, end: row.from + row.counts };
  v.next = leg.rows[i + 1] || nextLeg(leg);
  v.then = v.next ? first(v.next) : "";
  v.thenSide = v.next ? v.next.side : "";
  v.early = v.next ? v.next.early || usualCue : 0;
  if (row.moves.length) viewMove(v, row);
  v.left = Math.max(1, v.end - v.count);
  v.seconds = row.seconds - (t - row.at) / 1000 / leg.speed;
  v.announced = row.kind === "lead-in" || v.left <= v.early;
  return v;
}

// usualCue is how many counts before it a move is announced.
var usualCue = 4;

// viewMove narrows a block to the move of it that is being done.
function viewMove(v, row) {
  var k = row.moves.length - 1;
  while (k > 0 && row.from + row.moves[k].from > v.count) k--;
  var move = row.moves[k], after = row.moves[k + 1];
  v.name = move.name;
  v.side = move.lead;
  v.lead = true;
  if (!after) return;
  v.inside = true; // what comes is another move of the same block
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
  var leg = here(), t = now(), v = view(leg, t), known = counted(leg);
  drawCourse(leg);
  put($("move"), v.name);
  drawSide(v);
  drawDose(v);
  put($("say"), v.row.say ? "say: " + v.row.say : v.row.detail);
  put($("digit"), known ? String((v.left - 1) % 8 + 1) : "");
  drawEights(known ? Math.ceil(v.left / 8) : 0);
  put($("counts").firstElementChild, String(v.left));
  put($("counts").lastElementChild, v.left === 1 ? "count" : "counts");
  document.body.classList.toggle("uncounted", !known);
  document.body.classList.toggle("last", known && v.left <= 8);
  drawNext(v, leg);
  put($("place"), known ? place(leg, v.count) + ", " + leg.title : "No counts are known here: go on with → or the button");
  var shown = [v.row.n, v.name, mirrored(), known].join();
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
  put($("part"), part.name);
  put($("left").firstElementChild, clock(data.length - classTime()));
  var share = part.seconds > 0 ? Math.min(1, Math.max(0, through / part.seconds)) : 0;
  $("progress").firstElementChild.style.transform = "scaleX(" + share.toFixed(4) + ")";
  var percent = String(Math.round(100 * share));
  if ($("progress").getAttribute("aria-valuenow") !== percent) $("progress").setAttribute("aria-valuenow", percent);
}

function drawSide(v) {
  var side = sideOf(v.side), words = side ? (v.lead ? "lead " : "") + side : "";
  if (words && mirrored()) words += ", class " + v.side;
  $("side").hidden = !side;
  $("side").dataset.side = side || "";
  put($("side").querySelector("b"), words);
  var arrow = $("side").querySelector("use"), to = side === "left" ? "#to-left" : "#to-right";
  if (arrow.getAttribute("href") !== to) arrow.setAttribute("href", to);
}

// drawDose shows the repetitions left with the way that is being done
// underlined, or the seconds left.
function drawDose(v) {
  var row = v.row, box = $("dose");
  if (!row.reps) {
    var timed = row.kind === "interval" || row.kind === "pause";
    delete box.dataset.key;
    return put(box, timed ? Math.max(0, Math.ceil(v.seconds - 1e-6)) + " s left" : row.moves.length ? row.name : "");
  }
  var each = row.counts / row.reps, done = Math.max(0, v.count - row.from);
  var left = Math.max(1, row.reps - Math.floor(done / each)), at = done % each, doing = -1;
  row.phases.forEach(function (p, k) { if (at >= 0) doing = k; at -= p.counts; });
  var key = left + "/" + doing + "/" + row.n;
  if (box.dataset.key === key) return;
  box.dataset.key = key;
  var how = document.createElement("span");
  if (!row.phases.length) how.append("pulse");
  row.phases.forEach(function (p, k) {
    var word = document.createElement(k === doing ? "u" : "i");
    word.textContent = p.counts + " " + p.word;
    how.append(word, " ");
  });
  var reps = document.createElement("span");
  reps.append(many(left, "rep") + " left");
  box.replaceChildren(reps, " ", how);
}

function drawEights(n) {
  var box = $("eights");
  if (box.childElementCount === n) return;
  while (box.childElementCount > n) box.lastChild.remove();
  while (box.childElementCount < n) box.append(document.createElement("i"));
}

function drawNext(v, leg) {
  var box = $("next"), side = sideOf(v.thenSide), what = v.then, how = "";
  if (!v.inside) {
    how = v.next ? [dose(v.next), v.next.detail].filter(Boolean).join(", ") : "";
    if (!v.next) what = "end of the class";
    else if (leg.rows.indexOf(v.next) < 0) what = nextSong(leg, what);
    else if (v.next.reps && v.next.name === v.row.name && v.next.side === v.row.side) { // only the rhythm changes
      what = dose(v.next);
      how = v.next.detail;
    }
  }
  if (side) what += ", " + side;
  box.classList.toggle("loud", v.announced);
  put(box.querySelector(".when"), v.announced ? "next" : "then");
  if (put(box.querySelector(".what"), what)) fitLine(box.querySelector(".what"));
  put(box.querySelector(".how"), how);
}

function nextSong(leg, what) {
  var after = legs[legs.indexOf(leg) + 1];
  return after.part === leg.part ? what : data.parts[after.part].name + ": " + what;
}

// fitMove makes the move as large as its place allows. A capital is 0.7 of
// the type size.
var capital = 0.7;
var largest = 0.34, largestIdle = 0.17; // type size to the screen's shorter side
function fitMove() {
  if (document.body.dataset.view !== "stage") return;
  var share = $("move").classList.contains("idle") ? largestIdle : largest;
  fitLine($("dose"));
  fitLine($("next").querySelector(".what"));
  var px = fit($("move"), Math.min(innerWidth, innerHeight) * share);
  tellSize(px);
}
