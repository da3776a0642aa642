// How things are said.

// clock writes seconds as m:ss.
function clock(s) {
  s = Math.max(0, Math.round(s));
  return Math.floor(s / 60) + ":" + String(s % 60).padStart(2, "0");
}

function many(n, noun) { return n + " " + noun + (n === 1 ? "" : "s"); }

// dose is how much of a row there is: 8 x 2 down 2 up, or seconds.
function dose(row) {
  if (row.reps) return row.reps + " x " + rhythm(row);
  if (row.kind === "interval" || row.kind === "pause") return Math.round(row.seconds) + " s";
  return "";
}

function rhythm(row) {
  if (!row.phases.length) return "pulse";
  return row.phases.map(function (p) { return p.counts + " " + p.word; }).join(" ");
}

// first is what a row begins with: a block with its first move.
function first(row) { return row.moves.length ? row.moves[0].name : row.name; }

// sidesOf says whose side: the class's first, and hers where she faces it.
function sidesOf(side) { return mirrored() && side ? side + " (you " + sideOf(side) + ")" : side; }

// sideOf is her side, where she faces the class the other one.
function sideOf(side) {
  if (!mirrored() || !side) return side;
  return side === "right" ? "left" : "right";
}
function mirrored() { return $("mirror").getAttribute("aria-pressed") === "true"; }

function told(what, words) { return words ? what + ": " + words : ""; }
