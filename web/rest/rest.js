
// The rest of the program: a second module that works on the memory and the table of functions of the first, see
// crates/xtask/src/split. It is fetched once the first picture stands.
const REST = new URL("{rest}", import.meta.url);
let restIsThere = false;
// Who opens a link or a lesson needs it at once, and where the browser keeps the program, both halves are at hand: then
// the program begins with both. So it never lacks the rest where there is no network.
const restAtOnce = location.hash.length > 1 || navigator.serviceWorker?.controller ? compiledRest() : undefined;
// Whether it came is asked later.
restAtOnce?.catch(() => {});

function withRest(imports) {
  imports.page = { load: restNow };
  return imports;
}

function putRest(module, first) {
  if (restIsThere) return;
  new WebAssembly.Instance(module, { first });
  restIsThere = true;
}

async function compiledRest() {
  const answer = await fetch(REST);
  if (!answer.ok) throw new Error(`status ${answer.status}`);
  const told = answer.headers.get("Content-Type") === "application/wasm";
  return told ? WebAssembly.compileStreaming(answer) : WebAssembly.compile(await answer.arrayBuffer());
}

async function restBefore(instance) {
  try {
    if (restAtOnce) putRest(await restAtOnce, instance.exports);
  } catch {
    // It is tried again once the program runs.
  }
}

// Something of the rest is asked for before it is there. What asks cannot wait for an answer that comes later, so everything
// stands still until it is fetched.
function restNow() {
  performance.mark("loomwright waits for the rest");
  while (!restIsThere) {
    try {
      const request = new XMLHttpRequest();
      request.open("GET", REST, false);
      // Bytes as letters: no other kind of answer is to be had without waiting.
      request.overrideMimeType("text/plain; charset=x-user-defined");
      request.send();
      if (request.status !== 200) throw new Error(`status ${request.status}`);
      const bytes = Uint8Array.from(request.responseText, (letter) => letter.charCodeAt(0) & 255);
      putRest(new WebAssembly.Module(bytes), wasm);
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
  for (let seconds = 1; !restIsThere; seconds = Math.min(2 * seconds, 60)) {
    try {
      putRest(await compiledRest(), wasm);
    } catch {
      await new Promise((done) => setTimeout(done, 1000 * seconds));
    }
  }
}

function restFollows() {
  if (!restIsThere) requestAnimationFrame(() => setTimeout(fetchRest));
}

