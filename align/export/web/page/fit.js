// Type as large as its place allows.

// largestThat finds the largest whole type size from 16 px up to most for
// which a test holds, and leaves the element with it.
function largestThat(element, most, holds) {
  var low = 16, high = Math.max(low, Math.floor(most));
  while (low < high) {
    var mid = (low + high + 1) >> 1;
    element.style.fontSize = mid + "px";
    if (holds()) low = mid; else high = mid - 1;
  }
  element.style.fontSize = low + "px";
  return low;
}

// beside is what the other elements of a box leave of its height [px].
function beside(element) {
  var box = element.parentElement, style = getComputedStyle(box);
  var room = box.clientHeight - parseFloat(style.paddingTop) - parseFloat(style.paddingBottom);
  Array.prototype.forEach.call(box.children, function (e) {
    if (e !== element && e.offsetHeight) room -= e.offsetHeight + (parseFloat(style.rowGap) || 0);
  });
  return room;
}

function wide(element) { return element.scrollWidth > element.clientWidth; }

// fitTo makes an element as large as a height allows, its words whole [px].
function fitTo(element, most, height) {
  return largestThat(element, most, function () { return !wide(element) && element.offsetHeight <= height; });
}

// fitLine makes a line smaller where it would not fit.
function fitLine(element) {
  element.style.fontSize = "";
  if (wide(element)) largestThat(element, parseFloat(getComputedStyle(element).fontSize), function () { return !wide(element); });
}

// fitFigure makes a number smaller where it and its word do not fit.
function fitFigure(figure) {
  var number = figure.firstElementChild;
  number.style.fontSize = "";
  if (wide(figure)) largestThat(number, parseFloat(getComputedStyle(number).fontSize), function () { return !wide(figure); });
}

// fitDigit makes the count-down smaller where what is below it needs the room.
function fitDigit() {
  var digit = $("digit"), box = digit.parentElement, style = getComputedStyle(box);
  digit.style.fontSize = "";
  if (upright.matches) return;
  var room = box.clientHeight - parseFloat(style.paddingTop) - parseFloat(style.paddingBottom) - $("eights").offsetHeight - $("counts").offsetHeight;
  if (digit.offsetHeight > room) fitTo(digit, parseFloat(getComputedStyle(digit).fontSize), room);
}

var upright = matchMedia("(max-aspect-ratio: 1/1)"), low = matchMedia("(max-height: 640px)");

// fitNext lets what comes take two lines where one would make it small.
function fitNext() {
  var box = $("next"), what = box.querySelector(".what");
  what.style.fontSize = "";
  var style = getComputedStyle(box), room = box.clientHeight - parseFloat(style.paddingTop) - parseFloat(style.paddingBottom);
  if (upright.matches) room -= box.querySelector(".when").offsetHeight;
  largestThat(what, parseFloat(style.fontSize), function () { return !wide(what) && what.offsetHeight <= room; });
}

// The move is the largest of all. The rhythm takes half of their place, or less
// where that would make the move the smaller of the two. Idle rows are told in
// a smaller voice. Shares of the screen's shorter side, or of the place.
var largest = 0.34, largestIdle = 0.17, shares = [0.52, 0.36];

function fitMove() {
  if (document.body.dataset.view !== "stage") return;
  fitLine($("side"));
  tellSize(fitTold());
  fitFigure($("reps"));
  fitFigure($("counts"));
  fitDigit();
  fitNext();
}

// fitNow fits the move and its rhythm to what is left of their place, and gives
// the size of the move [px].
function fitNow() {
  var move = $("move"), dose = $("dose"), side = Math.min(innerWidth, innerHeight), px = 0;
  shares.some(function (share) {
    fitDose(share * $("now").clientHeight);
    px = fitTo(move, side * (move.classList.contains("idle") ? largestIdle : largest), beside(move));
    return !dose.offsetHeight || px >= parseFloat(getComputedStyle(dose).fontSize);
  });
  return px;
}

// fitTold shows the easier and the harder way, and on a low screen what to say,
// unless they would make the move too small for two metres.
function fitTold() {
  var told = [$("say"), $("ways")].filter(function (e) { return e.id === "ways" || low.matches; });
  $("say").hidden = false;
  told.forEach(function (e) { e.hidden = true; });
  var px = fitNow();
  told.forEach(function (e) {
    if (!e.textContent) return;
    e.hidden = false;
    var smaller = fitNow();
    e.hidden = smaller < px && smaller * capital / perMm < leastCapital;
    px = e.hidden ? fitNow() : smaller;
  });
  return px;
}

function fitDose(height) {
  var dose = $("dose");
  dose.style.fontSize = "";
  if (wide(dose) || dose.offsetHeight > height) fitTo(dose, parseFloat(getComputedStyle(dose).fontSize), height);
}
