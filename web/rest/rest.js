
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
const atOnce = FOLLOWING.slice(0, needsAll ? FOLLOWING.length : wasHere() ? 1 : 0).map(compiled);
// Whether they came is asked later.
for (const part of atOnce) part.catch(() => {});

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
  parts[`part${number}`] = new WebAssembly.Instance(module, parts).exports;
  there = number;
  if (there === FOLLOWING.length) wasHere(true);
  if (number > 1) return;
  globalThis.loomwright_rest = true;
  // Not at once: the program may be in the midst of what asked for the part.
  setTimeout(() => dispatchEvent(new Event("loomwright-rest")));
}

async function compiled(address) {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`status ${answer.status}`);
  const told = answer.headers.get("Content-Type") === "application/wasm";
  return told ? WebAssembly.compileStreaming(answer) : WebAssembly.compile(await answer.arrayBuffer());
}

async function restBefore(instance) {
  parts.part0 = instance.exports;
  try {
    for (const part of atOnce) putPart(there + 1, await part);
  } catch {
    // It is tried again once the program runs.
  }
}

// Something of a part is asked for before it is there. What asks cannot wait for an answer that comes later, so everything
// stands still until it is fetched.
function partNow(number) {
  performance.mark("loomwright waits for the rest", { detail: number });
  while (there < number) {
    try {
      const request = new XMLHttpRequest();
      request.open("GET", FOLLOWING[there], false);
      // Bytes as letters: no other kind of answer is to be had without waiting.
      request.overrideMimeType("text/plain; charset=x-user-defined");
      request.send();
      if (request.status !== 200) throw new Error(`status ${request.status}`);
      const bytes = Uint8Array.from(request.responseText, (letter) => letter.charCodeAt(0) & 255);
      putPart(there + 1, new WebAssembly.Module(bytes));
    } catch (error) {
      // As long as the question stands the job is as it was, and so is what was being done.
      const question = document.documentElement.lang === "de"
        ? "Ein Teil des Programms ließ sich nicht laden, vielleicht fehlt das Netz. Noch einmal versuchen?"
        : "A part of the program could not be fetched; perhaps the network is away. Try again?";
      if (!confirm(question)) throw error;
    }
  }
}

async function fetchRest() {
  for (let seconds = 1; there < FOLLOWING.length; seconds = Math.min(2 * seconds, 60)) {
    const next = there + 1;
    try {
      putPart(next, await compiled(FOLLOWING[there]));
    } catch {
      await new Promise((done) => setTimeout(done, 1000 * seconds));
    }
  }
}

// What is fetched before the first picture has the line for itself. A page that shows none gets the rest all the same.
function restFollows() {
  if (there === FOLLOWING.length) return;
  const follow = () => {
    clearTimeout(late);
    performance.mark("loomwright first picture");
    setTimeout(fetchRest);
  };
  const late = setTimeout(follow, 20_000);
  addEventListener("loomwright-picture", follow, { once: true });
}
