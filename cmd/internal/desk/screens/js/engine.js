// How the desk asks and is told: here by http. Another carrier has the same two
// functions and nothing else changes.

const token = document.querySelector("meta[name=token]").content;

// Told is a refusal in plain words: what is wrong, and what to do.
export class Told extends Error {
  constructor(answer) {
    super(answer.say || "That did not work.");
    this.hint = answer.hint || "";
    this.answer = answer;
  }
}

// ask sends a request and gives its answer, or throws what was Told.
export async function ask(what, fields = {}) {
  let response;
  try {
    response = await fetch("/do", {
      method: "POST",
      headers: { "Content-Type": "application/json", "X-Onphrase": token },
      body: JSON.stringify({ do: what, ...fields }),
    });
  } catch {
    throw new Told({ say: "The program does not answer.", hint: "Start onphrase again; nothing is lost." });
  }
  let answer;
  try {
    answer = await response.json();
  } catch {
    throw new Told({ say: "This page is from an earlier start of the program.", hint: "Load it again." });
  }
  if (!answer.ok) throw new Told(answer);
  return answer;
}

// drop copies a file that was dropped on the page into the music folder.
export async function drop(file) {
  const response = await fetch("/drop?name=" + encodeURIComponent(file.name), {
    method: "POST", headers: { "X-Onphrase": token, "Content-Type": "application/octet-stream" }, body: file,
  });
  const answer = await response.json();
  if (!answer.ok) throw new Told(answer);
  return answer;
}

const source = new EventSource("/events");
const listeners = new Map();

// listen calls f with the data of every event of a kind.
export function listen(kind, f) {
  if (!listeners.has(kind)) {
    listeners.set(kind, new Set());
    source.addEventListener(kind, (e) => {
      const data = JSON.parse(e.data);
      for (const each of listeners.get(kind)) each(data);
    });
  }
  listeners.get(kind).add(f);
  return () => listeners.get(kind).delete(f);
}

// connection tells whether the program answers: f(true) or f(false).
export function connection(f) {
  source.addEventListener("open", () => f(true));
  source.addEventListener("error", () => f(false));
}
