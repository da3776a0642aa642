// Looking round this computer for a class or a folder of songs. Only folders,
// music and classes are listed; every place is one that the program named.
import { h } from "./dom.js";
import { ask } from "./engine.js";
import { opened } from "./start.js";
import { attempt } from "./told.js";
import { many } from "./words.js";

export function browser() {
  const box = h("div", { class: "browse" });
  const go = (id) => attempt(async () => {
    const at = await ask("browse", { id });
    const songs = at.entries.filter((e) => e.kind === "music").length;
    const open = (e) => attempt(async () => opened(await ask("open", { id: e.id })));
    const title = h("h2", { tabindex: "-1" }, at.name);
    box.replaceChildren(...[
      title,
      h("div", { class: "ways" },
        at.up && h("button", { onclick: () => go(at.up) }, "Up one folder"),
        songs > 0 && h("button", { class: "main", onclick: () => open(at) }, "Use this folder of " + many(songs, "song"))),
      h("ul", { class: "lines" }, at.entries.filter((e) => e.kind !== "music").map((e) => h("li", {},
        h("button", { class: "line", onclick: () => (e.kind === "folder" ? go(e.id) : open(e)) }, h("b", {}, e.name), h("span", {}, e.kind))))),
      at.entries.every((e) => e.kind === "music") && !songs && h("p", {}, "Nothing here: no folder, no class, no song."),
    ].filter(Boolean));
    title.focus();
  });
  go("");
  return box;
}
