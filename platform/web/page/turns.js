// When the program runs next. Only one turn is ever planned; a page left alone plans none.
import { turn } from "./line.js";

let frame = 0;
let timer = 0;

// seconds: 0 at the next frame, above 0 after that time, below 0 not at all. Replaces what was planned.
export function later(seconds) {
  cancelAnimationFrame(frame);
  clearTimeout(timer);
  frame = timer = 0;
  if (seconds === 0) nextFrame();
  else if (seconds > 0) timer = setTimeout(nextFrame, Math.min(seconds * 1000, 0x7fffffff));
}

function nextFrame() {
  timer = 0;
  frame = requestAnimationFrame(run);
}

// A turn is planned for the next frame. One that is planned for later waits for something.
export const due = () => frame !== 0;

let onFirst = () => {};
export function afterFirstTurn(work) { onFirst = work; }

function run() {
  frame = 0;
  turn();
  const first = onFirst;
  onFirst = () => {};
  first();
}

// Runs a turn that is planned for the next frame at once: used between layout and paint after the
// canvas has been resized, which empties it, so that no empty frame is shown.
export function hurry() {
  if (!frame) return;
  cancelAnimationFrame(frame);
  run();
}
