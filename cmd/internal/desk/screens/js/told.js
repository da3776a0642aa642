// The line at the foot of the page: what has happened, what went wrong, and the
// button that takes the last step back.
import { $, put } from "./dom.js";
import { Told } from "./engine.js";

let back = null;

// tell says what has happened; undo, if given, takes it back.
export function tell(text, undo = null) {
  put($("told"), text);
  back = undo;
  $("undo").hidden = !undo;
}

// attempt does something that may be refused, and says so then.
export async function attempt(f) {
  try {
    return await f();
  } catch (e) {
    if (!(e instanceof Told)) throw e;
    tell(e.hint ? e.message + " " + e.hint : e.message);
    return null;
  }
}

async function undo() {
  if (!back) return;
  const f = back;
  back = null;
  $("undo").hidden = true;
  await attempt(f);
}

export function watchUndo() {
  $("undo").addEventListener("click", undo);
}

// undoKey takes the last step back, if there is one.
export function undoKey() {
  if (!back) return false;
  undo();
  return true;
}
