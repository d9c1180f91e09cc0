// Works without a network: the service worker keeps the program's files. A newer version is fetched
// aside and only offered; it is used when the person says so.
import { tell } from "./line.js";

const HOUR = 3600 * 1000;
const CHANGE = 5000;  // ms that the new worker may take to come in

let registration = null;

// Called when the program runs, so that it doesn't compete with its arrival.
export async function keepOffline() {
  if (!navigator.serviceWorker) return;
  try {
    registration = await navigator.serviceWorker.register("service_worker.js");
  } catch (fault) {
    // Storage is refused, or the host serves the file wrongly: the program needs its network then.
    console.info(`Carriageway: not available offline (${fault.message}).`);
    return;
  }
  if (!registration) return;  // a test driver's block answers so
  offerWaiting();
  registration.addEventListener("updatefound", () => {
    registration.installing?.addEventListener("statechange", offerWaiting);
  });
  let looked = Date.now();
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState !== "visible" || Date.now() - looked < HOUR) return;
    looked = Date.now();
    registration.update().catch(() => {});
  });
}

let offered = null;

// The first version to be kept isn't news: this page already is that version.
function offerWaiting() {
  const waiting = registration.waiting;
  if (!waiting || waiting === offered || !registration.active) return;
  offered = waiting;
  tell("fresh");
}

// Changes to the waiting version; the caller has kept everything.
export function update() {
  let late = 0;
  const again = () => {
    clearTimeout(late); // asked once, a person who wants to stay stays
    location.reload();
  };
  if (!registration?.waiting) return again();
  navigator.serviceWorker.addEventListener("controllerchange", again, { once: true });
  late = setTimeout(again, CHANGE);
  registration.waiting.postMessage("come in");
}
