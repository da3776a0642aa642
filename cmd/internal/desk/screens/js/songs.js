// All songs of the folder, a line each. Only the lines in view are in the page,
// so that two thousand scroll as lightly as twenty.
import { $, h, put } from "./dom.js";
import { ask, drop, listen } from "./engine.js";
import { filtered, none, orders, said, sorted } from "./filter.js";
import { keys } from "./keys.js";
import * as player from "./player.js";
import { strip } from "./strip.js";
import { attempt, tell } from "./told.js";
import { bpm, clock, many } from "./words.js";

let filter = { ...none };
let order = "name";

export async function show(main, state) {
  if (!state?.folder && !state?.class) {
    main.append(h("h1", {}, "Songs"), h("p", {}, "No folder is open yet."), h("p", {}, h("a", { href: "#start", class: "button main" }, "Open a folder of songs")));
    return null;
  }
  let all = (await ask("songs")).songs;
  let shown = [];
  let on = 0; // the line the keys are on
  const list = h("div", { class: "songs", role: "listbox", "aria-label": "Songs", tabindex: "0" });
  const room = h("div", { class: "room" });
  list.append(room);
  const sentence = h("p", { class: "sentence", role: "status", "aria-atomic": "true" });
  const clicks = h("label", { class: "choice" }, h("input", { type: "checkbox", checked: player.withClicks(), onchange: (e) => player.setClicks(e.target.checked) }), h("span", {}, "clicks on the counts"));

  const line = () => list.firstElementChild.firstElementChild?.offsetHeight || 76;
  function refresh() {
    shown = sorted(filtered(all, filter), order);
    on = Math.min(on, Math.max(0, shown.length - 1));
    put(sentence, said(filter, shown.length, all.length));
    draw();
  }
  let height = 76;
  function draw() {
    height = parseFloat(getComputedStyle(list).getPropertyValue("--line")) * parseFloat(getComputedStyle(document.documentElement).fontSize) || height;
    const from = Math.max(0, Math.floor(list.scrollTop / height) - 6);
    const to = Math.min(shown.length, Math.ceil((list.scrollTop + list.clientHeight) / height) + 6);
    room.style.height = shown.length * height + "px";
    room.replaceChildren(...shown.slice(from, to).map((s, i) => songLine(s, from + i)));
    list.setAttribute("aria-activedescendant", shown.length ? "song-" + shown[on].id : "");
  }
  function songLine(s, i) {
    const open = () => { location.hash = "#song/" + s.id; };
    return h("div", {
      id: "song-" + s.id, role: "option", class: "song " + s.state + (i === on ? " on" : ""), "aria-selected": i === on,
      "aria-posinset": i + 1, "aria-setsize": shown.length, style: { top: i * height + "px" }, onclick: () => { on = i; open(); },
    },
    h("b", { class: "title" }, s.title),
    s.state === "heard" || s.state === "tapped" ? figures(s) : h("span", { class: "state" }, { waiting: "not heard yet", hearing: "listening now", failed: s.problem }[s.state]),
    s.strip.length > 0 && strip(s.strip, s.music ? (ms) => hear(s, ms) : null));
  }
  function figures(s) {
    return h("span", { class: "figures" },
      h("span", { class: "bpm" }, bpm(s.bpm), h("small", {}, " BPM" + (s.rival ? " or " + Math.round(s.rival.bpm) : ""))),
      h("span", {}, many(s.whole, "phrase") + (s.odd ? ", " + s.odd + " odd" : "")),
      h("span", {}, clock(s.seconds)),
      h("span", { class: "trust" }, s.checked ? "checked by you" : s.trust_word),
      h("span", {}, s.loud),
      h("span", {}, s.suits.length ? "for " + s.suits.join(", ") : ""),
      s.used.length > 0 && h("span", { class: "used" }, "in " + s.used.map((u) => u.class + (u.when ? " (" + u.when + ")" : "")).join(", ")));
  }
  async function hear(s, ms) {
    const detail = await attempt(() => ask("song", { id: s.id }));
    if (!detail) return;
    player.load({ music: s.music, counts: detail.counts, inBar: detail.in_bar, phraseStarts: new Set(detail.phrases.map((p) => p.count)) });
    await player.play(ms);
    tell("Playing " + s.title + ". Space stops it.");
  }
  function move(n) {
    if (!shown.length) return;
    on = Math.min(Math.max(0, on + n), shown.length - 1);
    const top = on * height;
    if (top < list.scrollTop) list.scrollTop = top;
    if (top + height > list.scrollTop + list.clientHeight) list.scrollTop = top + height - list.clientHeight;
    draw();
  }

  main.append(
    h("h1", {}, "Songs"), finder(refresh), h("div", { class: "ways" }, sorter(refresh), clicks,
      h("a", { class: "button", href: "#song/tap-in" }, "Tap in a song without a file")),
    sentence, list);
  main.classList.add("tall");
  dropping(main, async () => { all = (await ask("songs")).songs; refresh(); });
  list.addEventListener("scroll", draw, { passive: true });
  const resized = new ResizeObserver(draw);
  resized.observe(list);
  keys({
    ArrowDown: () => move(1), ArrowUp: () => move(-1), PageDown: () => move(8), PageUp: () => move(-8),
    Home: () => move(-all.length), End: () => move(all.length),
    Enter: () => { if (shown[on]) location.hash = "#song/" + shown[on].id; },
    " ": () => { if (player.playing()) player.stop(); else if (shown[on]?.music) hear(shown[on], shown[on].strip[0]?.[0] || 0); },
    c: () => { clicks.querySelector("input").click(); },
    "/": () => { $("find-text").focus(); },
  });
  refresh();
  const ends = [
    listen("song", (s) => {
      const i = all.findIndex((a) => a.id === s.id);
      if (i < 0) all.push(s); else all[i] = s;
      refresh();
    }),
  ];
  return () => { ends.forEach((f) => f()); resized.disconnect(); player.stop(); main.classList.remove("tall"); };
}

function finder(refresh) {
  const number = (id, key, label, width) => h("label", { for: id }, label + " ", h("input", {
    id, type: "number", inputmode: "numeric", min: "1", style: { width }, value: filter[key] === null ? "" : String(filter[key]),
    oninput: (e) => { filter[key] = e.target.value === "" ? null : Number(e.target.value); refresh(); },
  }));
  const kinds = ["warm-up", "cardio", "strength", "core", "cool-down", "stretch"];
  const fields = h("div", { class: "find" },
    h("label", { for: "find-text" }, "Name ", h("input", { id: "find-text", type: "search", value: filter.text, oninput: (e) => { filter.text = e.target.value; refresh(); } })),
    number("find-from", "from", "From", "5em"), number("find-to", "to", "to BPM", "5em"),
    number("find-whole", "whole", "Whole phrases, at least", "4em"),
    h("label", { for: "find-suits" }, "For ", h("select", { id: "find-suits", onchange: (e) => { filter.suits = e.target.value; refresh(); } },
      h("option", { value: "" }, "any part"), kinds.map((k) => h("option", { value: k, selected: filter.suits === k }, k)))),
    number("find-fresh", "fresh", "Not in my last classes", "4em"),
    h("label", { class: "choice" }, h("input", { type: "checkbox", checked: filter.odd, onchange: (e) => { filter.odd = e.target.checked; refresh(); } }), h("span", {}, "no odd phrase")),
    h("button", { onclick: () => { filter = { ...none }; fields.replaceWith(finder(refresh)); refresh(); } }, "Show all"));
  return fields;
}

function sorter(refresh) {
  return h("label", { for: "sort" }, "Sorted ", h("select", { id: "sort", onchange: (e) => { order = e.target.value; refresh(); } },
    Object.entries(orders).map(([value, text]) => h("option", { value, selected: order === value }, text))));
}

// dropping takes songs that are dropped on the page; they are copied, and
// nothing there is replaced.
function dropping(main, done) {
  const over = (e) => { e.preventDefault(); main.classList.add("over"); };
  main.ondragover = over;
  main.ondragleave = () => main.classList.remove("over");
  main.ondrop = (e) => attempt(async () => {
    e.preventDefault();
    main.classList.remove("over");
    const said = [];
    for (const file of e.dataTransfer.files) said.push((await drop(file)).say);
    tell(said.join(" "));
    await done();
  });
}
