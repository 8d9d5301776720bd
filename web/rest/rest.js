
// What follows of the program: modules that work on the memory and the table of functions of the first, see
// crates/xtask/src/split. The first of them brings the findings; they are fetched, one after the other, once the first picture
// stands.
const FOLLOWING = [{parts}].map((name) => new URL(name, import.meta.url));
// What each part that is there gives to later ones, and what the page gives.
const parts = { page: { load1: () => partNow(1), load2: () => partNow(2) } };
// How many of those that follow are there.
let there = 0;
// The program asks for this before it does what needs much of what follows.
globalThis.loomwright_rest = false;
// Who opens a link, a lesson or a worked job needs all at once, and where the browser keeps the program, all is at hand: then the
// program begins with all. So it never lacks a part where there is no network. Where it was here before, the job that was left
// is read by the second part.
const needsAll = location.hash.length > 1 || location.search.length > 1 || navigator.serviceWorker?.controller;
// What is on its way, and what ends that.
const coming = [];
let ends = new AbortController();
const AT_ONCE = needsAll ? FOLLOWING.length : wasHere() ? 1 : 0;
for (let part = 1; part <= AT_ONCE; part++) fetched(part);
// So many milliseconds the first picture waits for these.
const PATIENCE = 10_000;

// What is on the server now is of another build than this page.
class OtherBuild extends Error {}

// The words of the program are in what is lacking.
const SAID = {
  en: {
    other: "There is a newer version of this page, and this one cannot go on.",
    anew: "Load it anew",
    later: "A part of the program is not here yet; perhaps the network is away. It is tried again and again.",
    ask: "A part of the program could not be fetched; perhaps the network is away. Try again? Cancel loads the page anew.",
  },
  de: {
    other: "Es gibt eine neuere Fassung dieser Seite; mit dieser geht es nicht weiter.",
    anew: "Neu laden",
    later: "Ein Teil des Programms ist noch nicht da, vielleicht fehlt das Netz. Es wird weiter versucht.",
    ask: "Ein Teil des Programms ließ sich nicht laden, vielleicht fehlt das Netz. Noch einmal versuchen? Abbrechen lädt die Seite neu.",
  },
};
const say = (what) => (SAID[document.documentElement.lang] ?? SAID.en)[what];

// Whether this browser had all of the program before. Where it keeps nothing for a page, it did not.
function wasHere(now) {
  try {
    // Who only looks at a link writes nothing.
    if (now && !needsAll) localStorage.setItem("loomwright-whole", "1");
    return localStorage.getItem("loomwright-whole") !== null;
  } catch {
    return false;
  }
}

function withRest(imports) {
  imports.page = parts.page;
  return imports;
}

function putPart(number, module) {
  if (there >= number) return;
  try {
    parts[`part${number}`] = new WebAssembly.Instance(module, parts).exports;
  } catch (error) {
    throw error instanceof WebAssembly.LinkError ? new OtherBuild() : error;
  }
  there = number;
  tell();
  if (there === FOLLOWING.length) wasHere(true);
  if (number > 1) return;
  globalThis.loomwright_rest = true;
  // Not at once: the program may be in the midst of what asked for the part.
  setTimeout(() => dispatchEvent(new Event("loomwright-rest")));
}

function ok(status) {
  if (status === 404 || status === 410) throw new OtherBuild();
  if (status !== 200) throw new Error(`status ${status}`);
}

async function compiled(address) {
  const answer = await fetch(address, { signal: ends.signal });
  ok(answer.status);
  const told = answer.headers.get("Content-Type") === "application/wasm";
  try {
    return await (told ? WebAssembly.compileStreaming(answer) : WebAssembly.compile(await answer.arrayBuffer()));
  } catch (error) {
    throw error instanceof WebAssembly.CompileError ? new OtherBuild() : error;
  }
}

// A part that did not come is fetched anew when it is asked for once more.
function fetched(number) {
  const part = coming[number] ??= compiled(FOLLOWING[number - 1]);
  part.catch(() => coming[number] = undefined);
  return part;
}

async function restBefore(instance) {
  parts.part0 = instance.exports;
  // One that hangs must not keep back what is there.
  const late = new Promise((_, fail) => setTimeout(fail, PATIENCE));
  late.catch(() => {});
  try {
    for (let part = 1; part <= AT_ONCE; part++) putPart(part, await Promise.race([fetched(part), late]));
  } catch {
    // It is tried again once the program runs.
  }
}

// Says what keeps the rest away, or no longer does.
function tell(what) {
  document.querySelector(".lacking")?.remove();
  if (!what) return;
  const line = document.createElement("p");
  line.className = "lacking";
  line.setAttribute("role", "alert");
  line.append(say(what));
  if (what === "other") {
    const button = document.createElement("button");
    button.append(say("anew"));
    button.onclick = () => location.reload();
    line.append(" ", button);
  }
  document.body.append(line);
}

// Something of a part is asked for before it is there. What asks cannot wait for an answer that comes later, so everything
// stands still until it is fetched.
function partNow(number) {
  performance.mark("loomwright waits for the rest", { detail: number });
  // The browser would wait with a second question for the same file until the first is answered, which cannot go on meanwhile.
  ends.abort();
  ends = new AbortController();
  while (there < number) {
    try {
      const request = new XMLHttpRequest();
      request.open("GET", FOLLOWING[there], false);
      // Bytes as letters: no other kind of answer is to be had without waiting.
      request.overrideMimeType("text/plain; charset=x-user-defined");
      request.send();
      ok(request.status);
      const bytes = Uint8Array.from(request.responseText, (letter) => letter.charCodeAt(0) & 255);
      putPart(there + 1, new WebAssembly.Module(bytes));
    } catch (error) {
      // As long as the question stands the job is as it was, and so is what was being done. What was asked for cannot be left out:
      // the program would stay in the midst of it.
      const isOther = error instanceof OtherBuild || error instanceof WebAssembly.CompileError;
      if (isOther) alert(say("other"));
      else if (confirm(say("ask"))) continue;
      location.reload();
      throw error;
    }
  }
}

async function fetchRest() {
  for (let seconds = 1; there < FOLLOWING.length; seconds = Math.min(2 * seconds, 60)) {
    try {
      const next = there + 1;
      putPart(next, await fetched(next));
    } catch (error) {
      if (error instanceof OtherBuild) return tell("other");
      if (error.name === "AbortError") continue;
      if (seconds > 2 && there < FOLLOWING.length) tell("later");
      await new Promise((done) => setTimeout(done, 1000 * seconds));
    }
  }
}

// What is fetched before the first picture has the line for itself. A page that shows none gets the rest all the same.
function restFollows() {
  if (there === FOLLOWING.length) return;
  const follow = () => {
    clearTimeout(late);
    removeEventListener("loomwright-picture", follow);
    performance.mark("loomwright first picture");
    setTimeout(fetchRest);
  };
  const late = setTimeout(follow, 20_000);
  addEventListener("loomwright-picture", follow);
  // A file that is let go over the page before that can take it must not take its place.
  for (const what of ["dragover", "drop"]) {
    addEventListener(what, (event) => globalThis.loomwright_rest || event.preventDefault());
  }
}
