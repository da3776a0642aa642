// A song as one thin line: every phrase as wide as it is long, as high as it is
// full; an odd one is hatched.
import { h } from "./dom.js";
import { moment } from "./words.js";

// strip draws it from [start ms, counts, energy 0-2, odd 0|1]; play, if given,
// is called with the start of the phrase that was pressed.
export function strip(phrases, play) {
  const cells = phrases.map(([at, counts, energy, odd], i) => h(play ? "button" : "span", {
    class: "cell e" + energy + (odd ? " odd" : ""),
    style: { "flex-grow": String(counts) },
    tabindex: play ? "-1" : null,
    "aria-label": play ? "play from phrase " + (i + 1) + ", " + moment(at) + (odd ? ", " + counts + " counts" : "") : null,
    onclick: play ? (e) => { e.stopPropagation(); play(at); } : null,
  }));
  return h("div", { class: "strip", "aria-hidden": play ? null : "true" }, cells);
}
