// The line between page and program: tell() goes to the program, turns run it, and page.* comes back.
//
// The program is never entered a second time while it is running. It calls the page's functions in
// the middle of its work, and these bring about events (focus, above all) that want to tell it
// something; such a tell waits until the program has returned.

let program = null;   // the module, once its main has run
let inside = 0;       // depth of calls between the two
let planned = false;  // a delivery of what waits is planned
let failed = false;
const waiting = [];
let onFault = () => {};

// From now on tell() reaches the program; what was told before is delivered first, in order.
export function connect(module, fault) {
  program = module;
  onFault = fault;
  deliver();
}

// The kinds are listed in platform/web/web_main.cpp.
export function tell(kind, text = "", number = 0) {
  waiting.push([kind, text, number]);
  if (inside > 0 || !program) plan();
  else deliver();
}

function plan() {
  if (planned || !program) return;
  planned = true;
  queueMicrotask(deliver);
}

function deliver() {
  planned = false;
  if (!program || failed) return;
  if (inside > 0) return plan();
  while (waiting.length > 0 && !failed) {
    const [kind, text, number] = waiting.shift();
    enter(() => program.ccall("carriageway_tell", null, ["string", "string", "number"], [kind, text, number]));
  }
}

// Something waits to be told.
export const waits = () => waiting.length > 0;

// One turn of the program: input, drawing.
export function turn() {
  if (!program || failed) return;
  enter(() => program._carriageway_turn());
  if (waiting.length > 0) deliver();
}

function enter(work) {
  ++inside;
  try {
    work();
  } catch (fault) {
    // Emscripten throws this word to leave the stack while the program lives on.
    if (fault !== "unwind") stop(fault);
  } finally {
    --inside;
  }
}

// The program's memory can't be trusted after an exception that it didn't catch: it isn't run again.
export function stop(fault) {
  if (failed) return;
  failed = true;
  console.error(fault);
  onFault(fault);
}

// A function for the program to call: what it brings about is told afterwards, and an exception in
// the page is reported without unwinding the program.
export function callable(work) {
  return (...values) => {
    ++inside;
    try {
      return work(...values);
    } catch (fault) {
      console.error(fault);
      return undefined;
    } finally {
      --inside;
      if (waiting.length > 0) plan();
    }
  };
}
