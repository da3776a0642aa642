// The class as data.go wrote it: legs are the playings of tracks, one after
// the other; counts are indices into a leg's counts, track times are
// milliseconds, class times seconds.
var data = JSON.parse(document.getElementById("data").textContent);
var legs = data.legs;

function $(id) { return document.getElementById(id); }

// put writes text only where it has changed, so that a frame costs nothing
// when nothing happens; it says whether it has.
function put(element, text) {
  if (element.textContent === text) return false;
  element.textContent = text;
  return true;
}
