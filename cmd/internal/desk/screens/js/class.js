// The class on its phrases.
import { h } from "./dom.js";

export function broken(box, c) {
  box.replaceChildren(h("b", {}, "The class cannot be read as it is now; what is shown is how it last was."),
    h("ul", {}, c.problems.map((p) => h("li", {}, "Line " + p.line + ": " + p.message + (p.hint ? " – " + p.hint : "")))));
}

export async function show(main, state) {
  main.append(h("h1", {}, state?.class ? state.class.name : "Class"));
  if (!state?.class) main.append(h("p", {}, h("a", { href: "#start", class: "button main" }, "Open a class, or begin a new one")));
  return null;
}
