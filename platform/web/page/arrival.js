// The program's bytes: fetched with the progress shown, compiled while they arrive.

const splash = document.getElementById("splash");
const travel = document.getElementById("travel");
const ink = document.getElementById("ink");
const blade = document.getElementById("blade");

// share: 0 to 1 of the bytes received.
function show(share) {
  travel.setAttribute("aria-valuenow", String(Math.round(share * 100)));
  ink.style.transform = `scaleX(${share})`;
  blade.style.transform = `translateX(${share * 100}%)`;
}

function counted(response) {
  // The build's own number: a length header may be that of the compressed bytes.
  const total = Number(splash.dataset.bytes) || Number(response.headers.get("content-length")) || 1;
  let received = 0;
  return response.body.pipeThrough(new TransformStream({
    transform(part, out) {
      received += part.length;
      show(Math.min(1, received / total));
      out.enqueue(part);
    },
  }));
}

// The WebAssembly module of an address. Rejects with a name that says which file did not arrive.
export async function arrive(address) {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address}: ${response.status}`);
  // The type is set here, whatever a host calls it.
  const typed = new Response(counted(response), { headers: { "content-type": "application/wasm" } });
  const module = await WebAssembly.compileStreaming(typed);
  show(1);
  return module;
}

// The first frame is to be seen, or a message in its place.
export const ended = () => splash.hidden || splash.classList.contains("troubled");

export function endSplash() {
  splash.classList.add("gone");
  // Unless a message has taken its place meanwhile.
  setTimeout(() => { splash.hidden = splash.classList.contains("gone"); }, 200);
}
