// The desk: which screen is on show, what is open, and how the listening goes.
import { $, put } from "./dom.js";
import { ask, connection, listen } from "./engine.js";
import { keys, watchKeys } from "./keys.js";
import { attempt, tell, undoKey, watchUndo } from "./told.js";
import { about } from "./words.js";
import * as start from "./start.js";
import * as songs from "./songs.js";
import * as song from "./song.js";
import * as classScreen from "./class.js";

const screens = { start, songs, song, class: classScreen };
let leave = null;
let state = null;

// draw shows the screen that the address names.
async function draw() {
  const [name, ...rest] = location.hash.slice(1).split("/");
  const screen = screens[name] || (state && (state.class ? classScreen : state.folder ? songs : start)) || start;
  if (leave) leave();
  keys({});
  const main = $("main");
  main.replaceChildren();
  for (const a of document.querySelectorAll(".screens a")) {
    const on = screens[a.dataset.screen] === screen || (screen === song && a.dataset.screen === "songs");
    if (on) a.setAttribute("aria-current", "page");
    else a.removeAttribute("aria-current");
  }
  leave = (await attempt(() => screen.show(main, state, rest.join("/")))) || null;
  document.title = (main.querySelector("h1")?.textContent || "onphrase") + " · onphrase";
}

// know takes a new state: what is open and how it stands.
function know(next) {
  state = next;
  put($("open"), state.class ? state.class.name : state.folder ? state.folder.name : "");
  for (const a of document.querySelectorAll("[data-page]")) a.hidden = !state.class || state.class.state === "none";
  const broken = $("broken");
  broken.hidden = !(state.class && state.class.state === "broken");
  if (!broken.hidden) classScreen.broken(broken, state.class);
  hearing(state.hearing);
}

function hearing(h) {
  const line = $("hearing");
  line.hidden = !h || h.done >= h.all;
  if (!line.hidden) put(line, "Listening: " + h.done + " of " + h.all + " songs, " + about(h.left_seconds) + " left");
}

watchUndo();
watchKeys(undoKey);
listen("state", know);
window.addEventListener("desk:state", (e) => know(e.detail));
listen("hearing", hearing);
let gone = false;
connection((up) => {
  if (!up && !gone) tell("The program has ended or does not answer. What you did is kept. Start onphrase again to go on.");
  if (up && gone) tell("The program is there again.");
  gone = !up;
});
window.addEventListener("hashchange", draw);
window.addEventListener("desk:redraw", draw);

const first = await attempt(() => ask("state"));
if (first) know(first);
await draw();
