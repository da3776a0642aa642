// A song as a page of text: a phrase is a line, an eight a word, a count a
// letter. The height of a letter is how loud the music is there.
import { h } from "./dom.js";
import { moment } from "./words.js";

// loudness is 0 to 1 at a time [ms], from the outline: dB below the loudest,
// one value every half second.
function loudness(outline, ms) {
  if (!outline.length) return 0.5;
  const v = outline[Math.min(outline.length - 1, Math.max(0, Math.round(ms / 500)))];
  return Math.min(1, Math.max(0.06, 1 + v / 30));
}

// lines draws the phrases of a song; pick(count) is called when a count is
// pressed, dragged(phrase, counts) when the start of a phrase was moved.
export function lines(song, pick, dragged) {
  const list = h("ol", { class: "page" });
  const cells = [];
  const whole = song.phrases;
  const lead = whole.length ? whole[0].count : song.counts.length;
  if (lead > 0) list.append(line(song, { at: song.counts[0], count: 0, counts: lead, kind: "lead-in" }, 0));
  whole.forEach((p, i) => list.append(line(song, p, i + 1)));
  const last = whole.length ? whole[whole.length - 1].count + whole[whole.length - 1].counts : lead;
  if (last < song.counts.length) list.append(line(song, { at: song.counts[last], count: last, counts: song.counts.length - last, kind: "after" }, 0));

  function line(song, p, n) {
    const odd = n > 0 && p.counts !== 32;
    const doubt = n > 0 && song.doubts.some((ms) => Math.abs(ms - p.at) < 2);
    const letters = [];
    for (let k = 0; k < p.counts; k++) {
      const i = p.count + k;
      cells[i] = h("button", {
        class: "letter" + (k % 8 === 0 ? " one" : ""), tabindex: "-1", "data-count": String(i),
        style: { "--l": loudness(song.outline, song.counts[i]).toFixed(2) },
        "aria-label": "count " + (k + 1) + (n ? " of phrase " + n : ""), onclick: () => pick(i),
      }, h("span", {}, String((k % 8) + 1)));
      letters.push(cells[i]);
    }
    const handle = n > 1 ? h("span", { class: "handle", "aria-hidden": "true", title: "Drag: this phrase starts earlier or later" }) : null;
    if (handle) drag(handle, p, (counts) => dragged(p, counts), () => letters[0].offsetWidth || 1);
    const head = n ? "phrase " + n : p.kind === "lead-in" ? "before" : "after";
    return h("li", { class: "phrase" + (odd ? " odd" : "") + (doubt ? " doubt" : "") + (n ? "" : " outside"), "data-first": String(p.count) },
      h("div", { class: "head" }, h("b", {}, head), h("small", {}, moment(p.at)),
        odd && h("em", {}, p.counts + " counts"), doubt && h("em", {}, "listen here"), n > 0 && p.use && h("small", { class: "use" }, p.use)),
      h("div", { class: "text" }, handle, letters));
  }

  return { list, cells };
}

// drag follows a finger or the mouse in steps of one count.
function drag(handle, phrase, done, width) {
  handle.addEventListener("pointerdown", (e) => {
    e.preventDefault();
    handle.setPointerCapture(e.pointerId);
    const from = e.clientX, one = width();
    let counts = 0;
    const move = (m) => {
      counts = Math.max(-16, Math.min(16, Math.round((m.clientX - from) / one)));
      handle.style.setProperty("transform", "translateX(" + counts * one + "px)");
      handle.dataset.by = counts === 0 ? "" : (counts > 0 ? "+" : "−") + Math.abs(counts);
    };
    const end = () => {
      handle.removeEventListener("pointermove", move);
      handle.style.removeProperty("transform");
      handle.dataset.by = "";
      if (counts) done(counts);
    };
    handle.addEventListener("pointermove", move);
    handle.addEventListener("pointerup", end, { once: true });
    handle.addEventListener("pointercancel", end, { once: true });
  });
}
