// Figures as they are said. Times come in milliseconds or seconds, as named.

export function clock(seconds) {
  const s = Math.floor(seconds + 1e-6), m = Math.floor(s / 60);
  const two = (n) => String(n).padStart(2, "0");
  return m < 60 ? m + ":" + two(s % 60) : Math.floor(m / 60) + ":" + two(m % 60) + ":" + two(s % 60);
}

// moment is a place in a song, to a tenth of a second.
export function moment(ms) {
  const tenths = Math.round(ms / 100);
  return Math.floor(tenths / 600) + ":" + String(Math.floor((tenths % 600) / 10)).padStart(2, "0") + "." + (tenths % 10);
}

export function many(n, what) { return n + " " + what + (n === 1 ? "" : "s"); }

export function bpm(value) { return value ? (Math.round(value * 10) / 10).toString() : "–"; }

// about is a time to wait for, as a person would say it.
export function about(seconds) {
  if (seconds < 50) return "less than a minute";
  return "about " + many(Math.round(seconds / 60), "minute");
}
