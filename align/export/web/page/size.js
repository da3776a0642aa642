// The real size of letters. A page cannot know how large a screen is; until
// it is told, it goes by what screens of that kind usually have.

// CSS pixels to a millimetre. Phones are drawn at about 160 to the inch,
// tablets at 132, other screens at 96. Common practice, from memory.
var perInch = matchMedia("(pointer: coarse)").matches ? (Math.min(screen.width, screen.height) <= 500 ? 160 : 132) : 96;
var perMm = perInch / 25.4;

// A card is 85.60 mm long. Ref: ISO/IEC 7810, format ID-1.
var cardLength = 85.6;

// Capitals readable at 2 m: 11.6 to 12.8 mm is good, 9.3 mm the least.
// Ref: ISO 9241-3, 20 to 22 and 16 minutes of arc.
var goodCapital = 12, leastCapital = 9.3;

// A capital is so much of the type size, in faces like ours.
var capital = 0.7;

try { perMm = Number(localStorage.getItem("onphrase:perMm")) || perMm; } catch (e) { /* nothing kept */ }

function tellSize(px) {
  var mm = px * capital / perMm;
  put($("capitals"), "Capitals of the move are now " + mm.toFixed(0) + " mm: " + (mm >= goodCapital ? "good from 2 m." : mm >= leastCapital ? "just readable from 2 m." : "too small for 2 m; turn the screen, or stand nearer."));
  document.body.classList.toggle("small", mm < leastCapital);
}

$("ruler").addEventListener("input", function () {
  perMm = Number(this.value) / cardLength;
  $("card").style.width = this.value + "px";
  try { localStorage.setItem("onphrase:perMm", String(perMm)); } catch (e) { /* nothing kept */ }
  fitMove();
});

function openSize() {
  var px = Math.round(perMm * cardLength);
  $("ruler").value = px;
  $("card").style.width = px + "px";
  $("sizes").showModal();
}
