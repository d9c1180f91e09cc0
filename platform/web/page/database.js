// The browser's IndexedDB as promises: opening it, one transaction, what went wrong in the words of the
// line between page and program.

const OPENING = 8000;  // ms; some browsers never answer after a fault of their own

// "full", "denied" or "failed: words".
export function classified(fault) {
  const name = fault?.name ?? "";
  // A disk without space is no quota error to Chromium, which only says so in its words.
  if (name === "QuotaExceededError" || /NO_SPACE|disk is full/i.test(fault?.message ?? "")) return "full";
  if (name === "SecurityError" || name === "NotAllowedError" || name === "InvalidStateError") return "denied";
  return `failed: ${[name, fault?.message].filter(Boolean).join(", ") || String(fault)}`;
}

// Opens the database, made new with these object stores where there is none. onLost: it has been taken
// away (cleared by the person, or by the browser for want of space), and the next one opened is empty.
export function open(name, stores, onLost) {
  return new Promise((resolve, reject) => {
    // A setting can take it away, or make the mere mention of it throw.
    if (!window.indexedDB) throw new DOMException("there is none", "SecurityError");
    const request = indexedDB.open(name, 1);
    const late = setTimeout(() => reject(new DOMException("no answer", "InvalidStateError")), OPENING);
    request.onupgradeneeded = () => stores.forEach(store => request.result.createObjectStore(store));
    request.onsuccess = () => {
      clearTimeout(late);
      const database = request.result;
      database.onclose = onLost;
      database.onversionchange = () => {
        database.close();
        onLost();
      };
      resolve(database);
    };
    request.onerror = () => {
      clearTimeout(late);
      reject(request.error);
    };
  });
}

// Runs work(stores, abort) in one transaction over all object stores. Resolves when it is complete,
// with what work returned; abort(outcome) takes everything back and resolves with that instead.
// durability "strict": complete means that the disk has it.
export function transact(database, mode, durability, work) {
  return new Promise((resolve, reject) => {
    const transaction = database.transaction(database.objectStoreNames, mode, { durability });
    const stores = Object.fromEntries([...database.objectStoreNames].map(name => [name, transaction.objectStore(name)]));
    let outcome, given = false;
    transaction.oncomplete = () => resolve(outcome);
    transaction.onabort = () => (given ? resolve(outcome) : reject(transaction.error ?? new Error("aborted")));
    const abort = instead => {
      outcome = instead;
      given = true;
      transaction.abort();
    };
    try {
      outcome = work(stores, abort);
    } catch (fault) {
      // What had been put before it must not stay.
      reject(fault);
      transaction.abort();
    }
  });
}
