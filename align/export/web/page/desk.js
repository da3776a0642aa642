// The songs' pictures: hear from any phrase or row, see where we are.
var tiles = Array.prototype.slice.call(document.querySelectorAll(".tiles .tile"));
var cursor = document.createElement("i");
cursor.className = "cursor";
var still = matchMedia("(prefers-reduced-motion: reduce)");

document.querySelectorAll(".tiles").forEach(function (box) {
  var leg = Number(box.dataset.leg);
  box.addEventListener("click", function (e) {
    var tile = e.target.closest(".tile");
    if (tile) hear(leg, timeOf(legs[leg], Number(tile.dataset.first)));
  });
});

document.querySelectorAll(".hear").forEach(function (button) {
  button.addEventListener("click", function () {
    var n = Number(button.dataset.row);
    legs.forEach(function (leg, i) {
      leg.rows.forEach(function (r) { if (r.n === n) hear(i, r.at); });
    });
  });
});

// rove makes many buttons one stop of the Tab key, with arrows between them.
function rove(box, selector, back, on) {
  var all = Array.prototype.slice.call(box.querySelectorAll(selector));
  all.forEach(function (e, i) { e.tabIndex = i ? -1 : 0; });
  box.addEventListener("keydown", function (e) {
    var i = all.indexOf(e.target), to = { Home: 0, End: all.length - 1 }[e.key];
    if (e.key === back) to = i - 1;
    if (e.key === on) to = i + 1;
    if (i < 0 || to === undefined) return;
    e.preventDefault();
    e.stopPropagation();
    if (!all[to]) return;
    all[i].tabIndex = -1;
    all[to].tabIndex = 0;
    all[to].focus();
  });
}
document.querySelectorAll(".tiles").forEach(function (box) { rove(box, ".tile", "ArrowLeft", "ArrowRight"); });
document.querySelectorAll("#desk table").forEach(function (table) { rove(table, ".hear", "ArrowUp", "ArrowDown"); });

// hear plays from a place in a song.
function hear(leg, t) {
  if (legs[leg].source) setStudio(false);
  go(leg, t);
  if (!state.running) play();
}

function drawDesk() {
  var leg = here(), t = now(), f = fractionAt(leg, t), n = counted(leg) ? leg.rows[rowAt(leg, t)].n : leg.rows[state.row].n;
  var tile = tiles.find(function (e) {
    var first = Number(e.dataset.first);
    return Number(e.parentElement.dataset.leg) === state.leg && first <= f && f < first + Number(e.dataset.counts);
  });
  if (still.matches) f = Math.max(Math.floor(f), 0); // from count to count
  if (tile && counted(leg)) {
    if (cursor.parentElement !== tile) {
      tiles.forEach(function (e) { e.removeAttribute("aria-current"); });
      tile.setAttribute("aria-current", "true");
      tile.append(cursor);
    }
    cursor.style.left = 100 * (f - Number(tile.dataset.first)) / Number(tile.dataset.counts) + "%";
  } else if (cursor.parentElement) {
    cursor.parentElement.removeAttribute("aria-current");
    cursor.remove();
  }
  put($("where"), counted(leg) ? place(leg, Math.floor(f + 1e-9)) + ", " + clock(t / 1000) : "row " + n);
  if (drawDesk.row === n) return;
  drawDesk.row = n;
  document.querySelectorAll("#desk tr[data-row]").forEach(function (tr) { tr.classList.toggle("here", Number(tr.dataset.row) === n); });
}
