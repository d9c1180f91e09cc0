// One tab writes the library; the others read it and can take over.
//
// The writer holds the Web Lock "carriageway-library". Where the browser has none (a page over plain
// http from another machine) the newest tab writes: the store's signature keeps the older one out.

const NAME = "carriageway-library";
const RELOADING = 600;  // ms that the lock of a page being left may take to come free
const ANSWER = 5000;    // ms for the writer to let go before the lock is taken from it
const FLUSH = 4000;     // ms that the writer has to keep its last edits

const pause = ms => new Promise(resolve => setTimeout(resolve, ms));

// Asks for the lock. Resolves with a function that lets go, or null when it was not to be had.
// onLost is called when another tab takes it away.
function ask(options, onLost = () => {}) {
  return new Promise(resolve => {
    let held = false;
    navigator.locks.request(NAME, options, lock => {
      if (!lock) return resolve(null);
      held = true;
      return new Promise(release => resolve(release));
    }).catch(fault => (held ? onLost(fault) : resolve(null)));
  });
}

export class OneTab {
  writes = true;
  #release = null;
  #channel = null;
  #taking = false;
  #flush;
  #onReader;

  // flush: keeps what is not kept yet, settles when nothing is left to do. onReader: this tab no
  // longer writes.
  constructor(flush, onReader) {
    this.#flush = flush;
    this.#onReader = onReader;
  }

  // Finds out whether this tab writes; answers it.
  async begin() {
    if (!navigator.locks) {
      console.info("Carriageway: this browser has no Web Locks here (they need https or localhost). The newest tab writes the library.");
      return true;
    }
    this.#channel = new BroadcastChannel(NAME);
    this.#channel.onmessage = event => { if (event.data === "let go") this.#letGo(); };
    const lost = () => this.lose();
    this.#release = await ask({ ifAvailable: true }, lost) ?? await ask({ signal: AbortSignal.timeout(RELOADING) }, lost);
    this.writes = this.#release !== null;
    return this.writes;
  }

  // This tab reads from now on: told by the browser (the lock was taken) or by the store.
  lose() {
    if (!this.writes) return;
    this.writes = false;
    this.#onReader();
  }

  async #letGo() {
    if (!this.writes) return;
    await Promise.race([this.#flush(), pause(FLUSH)]);
    this.lose();
    this.#release?.();
    this.#release = null;
  }

  // Makes this tab the writer: asks the present one, waits for its last edits, and loads the page
  // again so that the program reads them. Takes the lock from a tab that doesn't answer.
  async takeOver() {
    if (this.writes || this.#taking) return;
    this.#taking = true;
    if (navigator.locks) {
      const granted = ask({ signal: AbortSignal.timeout(ANSWER) });
      this.#channel.postMessage("let go");
      if (!(await granted)) await ask({ steal: true });
    }
    location.reload();
  }
}
