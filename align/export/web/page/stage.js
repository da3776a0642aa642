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
  if ($("move").textContent !== v.name) {
    $("move").textContent = v.name;
    $("move").classList.toggle("idle", idle(v.row));
    fitMove();
  }
  drawSide(v);
  drawDose(v, leg, t);
  put($("say"), v.row.say ? "say: " + v.row.say : v.row.detail);
  put($("digit"), known ? String((v.left - 1) % 8 + 1) : "");
  drawEights(known ? Math.ceil(v.left / 8) : 0);
  put($("counts"), many(v.left, "count"));
  document.body.classList.toggle("uncounted", !known);
  document.body.classList.toggle("last", known && v.left <= 8);
  drawNext(v, leg);
  put($("place"), known ? place(leg, v.count) + ", " + leg.title : "No counts are known here: go on with → or the button.");
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
function drawDose(v, leg, t) {
  var row = v.row, box = $("dose");
  if (row.kind === "interval" || row.kind === "pause") return put(box, Math.max(0, Math.ceil(v.seconds - 1e-6)) + " s left");
  if (!row.reps) return put(box, row.moves.length ? row.name : "");
  var each = row.counts / row.reps, done = Math.max(0, v.count - row.from);
  var left = row.reps - Math.floor(done / each), at = done % each, doing = -1;
  row.phases.forEach(function (p, k) { if (at >= 0) doing = k; at -= p.counts; });
  var key = left + "/" + doing + "/" + row.n;
  if (box.dataset.key === key) return;
  box.dataset.key = key;
  box.textContent = many(left, "rep") + " left: ";
  if (!row.phases.length) box.append("pulse");
  row.phases.forEach(function (p, k) {
    var word = document.createElement(k === doing ? "u" : "span");
    word.textContent = p.counts + " " + p.word;
    box.append(word, " ");
  });
}

function drawEights(n) {
  var box = $("eights");
  if (box.childElementCount === n) return;
  while (box.childElementCount > n) box.lastChild.remove();
  while (box.childElementCount < n) box.append(document.createElement("i"));
}

function drawNext(v, leg) {
  var box = $("next");
  var side = sideOf(v.thenSide), what = v.then;
  if (!v.next && !v.inside) what = "end of the class";
  else if (!v.inside && legs.indexOf(leg) !== legs.length - 1 && leg.rows.indexOf(v.row) === leg.rows.length - 1) what = nextSong(leg, what);
  if (side) what += ", " + side;
  box.classList.toggle("loud", v.announced);
  put(box.querySelector(".when"), v.announced ? "next" : "then");
  put(box.querySelector(".what"), what);
  put(box.querySelector(".how"), v.inside || !v.next ? "" : [dose(v.next), v.next.detail].filter(Boolean).join(", "));
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
  var px = fit($("move"), Math.min(innerWidth, innerHeight) * share);
  tellSize(px);
}
