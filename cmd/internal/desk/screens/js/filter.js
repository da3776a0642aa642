// Which songs are on show, and in which order. Pure functions of the songs.

export const none = { text: "", from: null, to: null, whole: null, odd: false, suits: "", fresh: null };

export function filtered(songs, f) {
  const text = f.text.trim().toLowerCase();
  return songs.filter((s) =>
    (!text || (s.title + " " + s.file).toLowerCase().includes(text)) &&
    (f.from === null || s.bpm >= f.from) && (f.to === null || (s.bpm > 0 && s.bpm <= f.to)) &&
    (f.whole === null || s.whole >= f.whole) && (!f.odd || (s.state === "heard" && s.odd === 0)) &&
    (!f.suits || s.suits.includes(f.suits)) &&
    (f.fresh === null || !s.used.some((u) => u.ago !== undefined && u.ago < f.fresh)));
}

const by = {
  name: (a, b) => a.title.localeCompare(b.title, undefined, { numeric: true }),
  bpm: (a, b) => a.bpm - b.bpm,
  phrases: (a, b) => b.whole - a.whole,
  length: (a, b) => a.seconds - b.seconds,
  trust: (a, b) => a.trust - b.trust,
  loudness: (a, b) => order.indexOf(a.loud) - order.indexOf(b.loud),
};
const order = ["quiet", "medium", "loud"];

export const orders = { name: "by name", bpm: "slowest first", phrases: "most phrases first", length: "shortest first", trust: "those to listen to first", loudness: "quietest first" };

// sorted keeps songs without a figure at the end.
export function sorted(songs, key) {
  const known = (s) => s.state === "heard" || s.state === "tapped" || key === "name";
  return [...songs].sort((a, b) => (known(b) - known(a)) || by[key](a, b) || by.name(a, b));
}

// said is the filter as one sentence.
export function said(f, n, all) {
  const parts = [];
  if (f.from !== null || f.to !== null) parts.push(f.from !== null && f.to !== null ? f.from + " to " + f.to + " BPM" : f.from !== null ? "from " + f.from + " BPM" : "up to " + f.to + " BPM");
  if (f.whole !== null) parts.push("at least " + f.whole + " whole phrases");
  if (f.odd) parts.push("no odd phrase");
  if (f.suits) parts.push("for " + f.suits);
  if (f.fresh !== null) parts.push("not in your last " + f.fresh + " classes");
  return (n === all ? all + " songs" : n + " of " + all + " songs") + (parts.length ? ": " + parts.join(", ") : "");
}
