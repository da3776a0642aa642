// Everything begins here.
legs.forEach(function (leg, i) {
  var o = document.createElement("option");
  o.value = i;
  o.textContent = data.parts[leg.part].name + (leg.title ? " · " + leg.title : "");
  $("leg").append(o);
});
if (data.mirror) mirror();

function drawControls() {
  put($("play"), state.running ? "Stop" : "Play");
  $("play").hidden = state.studio || !here().source;
  $("tap").hidden = !state.studio && counted(here());
  put($("tap"), counted(here()) ? (state.running ? "Count 1 is now" : "Tap on count 1") : "Next item");
  $("source").setAttribute("aria-pressed", String(state.studio));
  if ($("leg").value !== String(state.leg)) $("leg").value = String(state.leg);
}

function frame() {
  check();
  drawControls();
  if (document.body.dataset.view === "stage") drawStage();
  if (document.body.dataset.view === "desk") drawDesk();
  requestAnimationFrame(frame);
}

window.addEventListener("hashchange", function () { show(location.hash.slice(1)); });
new ResizeObserver(fitMove).observe($("stage"));
setInterval(check, 500); // also while the page is hidden and no frames are drawn

show(location.hash.slice(1));
if (legs.length) {
  restore();
  if (state.pace !== 1) { practising(true); setPace(state.pace); }
  if (!state.studio && here().source) cue();
  if (!legs.some(function (l) { return l.source; })) setStudio(true);
  frame();
} else {
  document.body.classList.add("bare");
  show("desk");
}
