
// The rest of the program: a second module that works on the memory and the table of functions of the first, see
// crates/xtask/src/split. It is fetched once the first picture stands.
const REST = new URL("{rest}", import.meta.url);
let restIsThere = false;

function withRest(imports) {
  imports.page = { load: restNow };
  return imports;
}

function putRest(module) {
  if (restIsThere) return;
  new WebAssembly.Instance(module, { first: wasm });
  restIsThere = true;
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
      putRest(new WebAssembly.Module(Uint8Array.from(request.responseText, (letter) => letter.charCodeAt(0) & 255)));
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
      const answer = await fetch(REST);
      if (!answer.ok) throw new Error(`status ${answer.status}`);
      const told = answer.headers.get("Content-Type") === "application/wasm";
      putRest(await (told ? WebAssembly.compileStreaming(answer) : WebAssembly.compile(await answer.arrayBuffer())));
    } catch {
      await new Promise((done) => setTimeout(done, 1000 * seconds));
    }
  }
}

function restFollows() {
  requestAnimationFrame(() => setTimeout(fetchRest));
}

