// Buttons and keys.
function press(id, act) { $(id).addEventListener("click", act); }

press("play", toggle);
// A tap counts when the finger comes down, not when it leaves.
$("tap").addEventListener("pointerdown", function (e) { e.preventDefault(); tap(); });
$("tap").addEventListener("keydown", function (e) {
  if (e.key !== "Enter" && e.key !== " ") return;
  e.preventDefault();
  e.stopPropagation();
  if (!e.repeat) tap();
});
$("tap").addEventListener("keyup", function (e) { if (e.key === " ") e.preventDefault(); });
// A button pressed with the finger gives the keys back: space is for the music.
document.querySelector(".foot").addEventListener("click", function (e) {
  if (e.detail > 0 && e.target.closest("button")) e.target.closest("button").blur();
});
press("less", function () { step(-1); });
press("more", function () { step(1); });
press("back", function () { stepPhrase(-1); });
press("on", function () { stepPhrase(1); });
press("source", function () { setStudio(!state.studio); });
press("mirror", mirror);
press("rehearse", function () { practising($("practise").hidden); drawer(false); });
press("cover", function () { setCover(!practice.covered); });
press("look", look);
press("drawer", function () { drawer(!document.body.classList.contains("drawn-out")); });
press("help", openKeys);
press("size", openSize);
press("print", function () { print(); });
$("leg").addEventListener("change", function () { go(Number(this.value)); this.blur(); });
$("loop").addEventListener("change", function () { setLoop(this.value); this.blur(); });
$("pace").addEventListener("change", function () { setPace(Number(this.value)); this.blur(); });

// drawer opens or closes the row of what is seldom needed on a small screen.
function drawer(open) {
  document.body.classList.toggle("drawn-out", open);
  $("drawer").setAttribute("aria-expanded", String(open));
}

function mirror() { $("mirror").setAttribute("aria-pressed", String(!mirrored())); }

function openKeys() {
  put($("awake"), lock ? "The screen is kept on." : "Set your device to keep its screen on during the class.");
  $("keys").showModal();
}

var keys = {
  " ": function () { if (state.studio) tap(); else toggle(); },
  t: tapKey, Enter: tapKey, m: mirror, "?": openKeys,
  l: function () { practising(true); setLoop(after($("loop"), practice.loop)); },
  s: function () { practising(true); setPace(Number(after($("pace"), String(state.pace)))); },
  c: function () { practising(true); setCover(!practice.covered); }, r: look,
  p: function () { goLeg(-1); }, n: function () { goLeg(1); },
  ArrowLeft: function () { step(-1); }, ArrowRight: function () { step(1); },
  ArrowUp: function () { stepPhrase(-1); }, ArrowDown: function () { stepPhrase(1); },
  1: function () { show("stage"); }, 2: function () { show("desk"); }, 3: function () { show("wall"); }
};

// tapKey taps where tapping is on: a stray key must never stop her own music.
function tapKey() { if (state.studio || !counted(here())) tap(); }

// after is the choice that follows another, round and round.
function after(select, value) {
  var all = Array.prototype.map.call(select.options, function (o) { return o.value; });
  return all[(all.indexOf(value) + 1) % all.length];
}

document.addEventListener("keydown", function (e) {
  if (e.ctrlKey || e.metaKey || e.altKey || document.querySelector("dialog[open]")) return;
  var on = e.target, key = e.key.length === 1 ? e.key.toLowerCase() : e.key;
  if (/^(INPUT|SELECT|TEXTAREA)$/.test(on.tagName)) return;
  if ((key === " " || key === "Enter") && on.closest("button, a")) return; // the button's own key
  if (/^Arrow(Up|Down)$/.test(key) && document.body.dataset.view !== "stage") return; // scrolls
  if (!keys[key] || e.repeat && (key === " " || key === "t" || key === "Enter")) return;
  e.preventDefault();
  keys[key]();
});

// show changes the view; the address remembers it.
function show(name) {
  if (!/^(stage|desk|wall)$/.test(name)) name = "stage";
  document.body.dataset.view = name;
  document.querySelectorAll("[data-go]").forEach(function (a) {
    if (a.dataset.go === name) a.setAttribute("aria-current", "page"); else a.removeAttribute("aria-current");
  });
  if (location.hash !== "#" + name) history.replaceState(null, "", "#" + name);
  drawStage.shown = null; // to be fitted anew
  scrollTo(0, 0);
}
