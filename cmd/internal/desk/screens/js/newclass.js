// A class to begin with: its name and its length, the rest is written for her.
import { h } from "./dom.js";
import { ask } from "./engine.js";
import { opened } from "./start.js";
import { attempt } from "./told.js";

export function newClass(state) {
  if (!state?.folder) {
    return h("div", {}, h("h2", { tabindex: "-1" }, "New class"),
      h("p", {}, "First open the folder with the songs that you teach to. Then come back here."));
  }
  const name = h("input", { id: "new-name", type: "text", autocomplete: "off", required: true });
  const lengths = [30, 45, 60].map((m) => h("label", { class: "choice" },
    h("input", { type: "radio", name: "minutes", value: String(m), checked: m === 45 }), h("span", {}, m + " minutes")));
  return h("form", {
    onsubmit: (e) => {
      e.preventDefault();
      const minutes = Number(e.target.querySelector("input[name=minutes]:checked").value);
      attempt(async () => opened(await ask("new", { name: name.value, minutes })));
    },
  },
  h("h2", { tabindex: "-1" }, "New class"),
  h("p", {}, h("label", { for: "new-name" }, "What is it called?"), name),
  h("fieldset", {}, h("legend", {}, "How long is it?"), lengths),
  h("p", {}, "Parts, songs and moves are proposed from " + state.folder.name + ". All of it can be changed."),
  h("button", { class: "main" }, "Make this class"));
}
