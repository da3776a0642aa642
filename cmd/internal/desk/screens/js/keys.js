// One place that knows which keys the screen on show wants. A key belongs to
// whoever writes: never to us while she types into a field.

let wanted = new Map();
let otherwise = null;

// keys sets the keys of a screen: by name as in KeyboardEvent.key.
export function keys(map, fallback = null) {
  wanted = new Map(Object.entries(map));
  otherwise = fallback;
}

function typing(target) {
  return target instanceof HTMLElement &&
    (target.isContentEditable || target.matches("textarea, select, input:not([type=checkbox]):not([type=radio]):not([type=range])"));
}

export function watchKeys(undo) {
  document.addEventListener("keydown", (e) => {
    if (e.defaultPrevented || typing(e.target) || e.altKey) return;
    const plain = !e.ctrlKey && !e.metaKey;
    if ((!plain && e.key.toLowerCase() === "z" && !e.shiftKey) || (plain && e.key.toLowerCase() === "u")) {
      if (undo()) return e.preventDefault();
    }
    if (!plain) return;
    // A button that has the focus takes Space and Enter for itself.
    if ((e.key === " " || e.key === "Enter") && e.target.closest("button, a, summary, label")) return;
    const f = wanted.get(e.key) || wanted.get(e.key.toLowerCase()) || otherwise;
    if (f && f(e) !== false) e.preventDefault();
  });
}
