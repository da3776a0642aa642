// At the desk's own server there is a way back to the desk.
if (location.pathname === "/page") {
  var back = document.createElement("a");
  back.href = "/#class";
  back.textContent = "Desk";
  document.querySelector("nav.views").prepend(back);
}

// While the page is served, the server names the edition of the page at every
// change of the class file. Another edition is loaded at once, but never under
// the feet of someone who teaches: then when she stops.
var edition = null, newer = false;
var server = new EventSource("events");
server.addEventListener("page", function (e) {
  newer = edition !== null && e.data !== edition;
  if (edition === null) edition = e.data;
  refresh();
});
function refresh() {
  if (newer && !state.running) { save(); location.reload(); }
}
setInterval(refresh, 500);
