// Unpacks the program that this page carries, and starts it. What stands above is the glue that its build wrote.
async function loomwrightStart() {
  if (typeof DecompressionStream === "undefined" || typeof WebAssembly === "undefined") {
    throw new Error("this browser is too old for it. Open the file with a current one");
  }
  const letters = atob(document.getElementById("loomwright-module").textContent);
  const packed = new Uint8Array(letters.length);
  for (let at = 0; at < letters.length; at += 1) packed[at] = letters.charCodeAt(at);
  const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"));
  const bytes = await new Response(stream).arrayBuffer();
  await loomwrightInit({ module_or_path: bytes });
}
loomwrightStart().catch((error) => {
  const waits = document.getElementById("loomwright-waits");
  // Once the program has put itself in its place, it speaks for itself.
  if (waits) waits.textContent = `This page could not be opened: ${error.message ?? error}.`;
});
