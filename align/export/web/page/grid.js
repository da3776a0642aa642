// Where counts fall on a track. Everything here follows from the data alone.

// usualCount is the length of a count where a track has none [ms].
var usualCount = 500;

// period is the time from a count to the next at one end of the track.
function period(leg, from) {
  var c = leg.counts, n = c.length;
  if (n < 2) return usualCount;
  var span = Math.min(8, n - 1);
  return from === 0 ? (c[span] - c[0]) / span : (c[n - 1] - c[n - 1 - span]) / span;
}

// countAt is the count that is sounding at a track time. Before the first and
// after the last, counts go on at the tempo next to them.
function countAt(leg, t) { return Math.floor(fractionAt(leg, t) + 1e-9); }

// fractionAt is the count with how far it has gone: 12.5 is half way between
// 12 and 13.
function fractionAt(leg, t) {
  var c = leg.counts, n = c.length;
  if (n === 0) return 0;
  if (t < c[0]) return (t - c[0]) / period(leg, 0);
  if (t >= c[n - 1]) return n - 1 + (t - c[n - 1]) / period(leg, 1);
  var low = 0, high = n - 1; // c[low] <= t < c[high]
  while (high - low > 1) {
    var mid = (low + high) >> 1;
    if (c[mid] <= t) low = mid; else high = mid;
  }
  return low + (t - c[low]) / (c[high] - c[low]);
}

// timeOf is the track time of a count, or of a fraction of one.
function timeOf(leg, f) {
  var c = leg.counts, n = c.length;
  if (n === 0) return 0;
  if (f < 0) return c[0] + f * period(leg, 0);
  if (f >= n - 1) return c[n - 1] + (f - n + 1) * period(leg, 1);
  var i = Math.floor(f);
  return c[i] + (f - i) * (c[i + 1] - c[i]);
}

// phraseAt is the index of the phrase a count is in; -1 before the first.
function phraseAt(leg, count) {
  var p = leg.phrases, i = p.length - 1;
  while (i >= 0 && p[i][0] > count) i--;
  return i;
}

// eightNear is the count 1 of an eight that is nearest to a place.
function eightNear(leg, f) {
  var i = phraseAt(leg, Math.floor(f));
  if (i < 0) return leg.phrases.length ? leg.phrases[0][0] : 0;
  var first = leg.phrases[i][0], next = first + leg.phrases[i][1];
  var near = first + 8 * Math.round((f - first) / 8);
  return Math.abs(next - f) < Math.abs(near - f) ? next : near;
}

// rowAt is the index of the row that is being done.
function rowAt(leg, t) {
  var count = countAt(leg, t), i = leg.rows.length - 1;
  while (i > 0 && (leg.rows[i].clock ? leg.rows[i].at > t : leg.rows[i].from > count)) i--;
  return i;
}

// endOf is when the last row of a leg is over [ms].
function endOf(leg) {
  var last = leg.rows[leg.rows.length - 1];
  return last.at + last.seconds * 1000 * leg.speed;
}

// startOf is the first count that is taught, after the lead-in.
function startOf(leg) {
  for (var i = 0; i < leg.rows.length; i++) if (leg.rows[i].kind !== "lead-in") return leg.rows[i].from;
  return 0;
}
