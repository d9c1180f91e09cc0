// Keeps the screen on while the program asks for it (a walk round the press, a drag).

let wanted = false;
let lock = null;

// Browsers let go of the lock when the page is hidden; it is asked for again when it is seen.
async function ask() {
  if (!wanted || lock || document.visibilityState !== "visible" || !navigator.wakeLock) return;
  try {
    const got = await navigator.wakeLock.request("screen");
    got.addEventListener("release", () => { if (lock === got) lock = null; });
    if (wanted && !lock) lock = got;
    else got.release();
  } catch {
    // A low battery or a setting forbids it: the screen may go dark, nothing else is lost.
  }
}

export function awake(on) {
  wanted = Boolean(on);
  if (wanted) ask();
  else if (lock) {
    lock.release();
    lock = null;
  }
}

document.addEventListener("visibilitychange", ask);
