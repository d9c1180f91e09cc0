// The library's bytes in the browser's IndexedDB: in chunks, so that an edit writes only what it
// changed, and every keep in one transaction that the browser has put on the disk when it answers.
//
// Database "carriageway": object store "chunks" holds Uint8Arrays under their index; "about" holds
// "size" (bytes of the library) and "writer" (the one tab that may write, see sign below).

const CHUNK = 64 * 1024;
const OPENING = 8000;  // ms; some browsers never answer after a fault of their own

const promised = request => new Promise((resolve, reject) => {
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error);
});

// What went wrong, in the words of the line: "full", "denied" or "failed: words".
export function classified(fault) {
  const name = fault?.name ?? "";
  // A disk without space is no quota error to Chromium, which only says so in its words.
  if (name === "QuotaExceededError" || /NO_SPACE|disk is full/i.test(fault?.message ?? "")) return "full";
  if (name === "SecurityError" || name === "NotAllowedError" || name === "InvalidStateError") return "denied";
  return `failed: ${[name, fault?.message].filter(Boolean).join(", ") || String(fault)}`;
}

function open() {
  return new Promise((resolve, reject) => {
    // A setting can take it away, or make the mere mention of it throw.
    if (!window.indexedDB) throw new DOMException("there is none", "SecurityError");
    const request = indexedDB.open("carriageway", 1);
    const late = setTimeout(() => reject(new DOMException("no answer", "InvalidStateError")), OPENING);
    request.onupgradeneeded = () => {
      request.result.createObjectStore("chunks");
      request.result.createObjectStore("about");
    };
    request.onsuccess = () => {
      clearTimeout(late);
      resolve(request.result);
    };
    request.onerror = () => {
      clearTimeout(late);
      reject(request.error);
    };
  });
}

// Whether two chunks of equal length differ, 32 bits at a time.
function differ(a, b) {
  const words = a.length >> 2;
  const left = new Uint32Array(a.buffer, a.byteOffset, words), right = new Uint32Array(b.buffer, b.byteOffset, words);
  for (let i = 0; i < words; ++i) if (left[i] !== right[i]) return true;
  for (let i = words << 2; i < a.length; ++i) if (a[i] !== b[i]) return true;
  return false;
}

export class Store {
  #id;           // of this tab
  #db = null;
  #refused = ""; // why nothing can be kept, in the words of the line
  #last = null;  // the bytes that the store holds, when this tab knows
  #keeping = Promise.resolve();

  written = 0;   // chunks written so far, for measurements and tests

  constructor(id) { this.#id = id; }

  async #connect() {
    const db = await open();
    // Cleared by the person, or by the browser for want of space: nothing that was there is there.
    db.onclose = () => {
      if (this.#db === db) this.#db = this.#last = null;
    };
    db.onversionchange = () => {
      db.close();
      db.onclose();
    };
    this.#db = db;
  }

  // Reads the library: its bytes, or null where there is none or it can't be read. With sign, this tab
  // is the writer from the moment of reading, and a keep by any other tab fails from then on.
  async take(sign) {
    try {
      await this.#connect();
    } catch (fault) {
      this.#refused = classified(fault);
      if (!this.#refused.startsWith("failed")) this.#refused = "denied";
      return null;
    }
    try {
      return await this.#read(sign);
    } catch (fault) {
      // Writing now would replace what is there by an empty library.
      this.#refused = `failed: ${window.carriagewayWord("unread", fault?.message || String(fault))}`;
      return null;
    }
  }

  async #read(sign) {
    const work = this.#db.transaction(["about", "chunks"], sign ? "readwrite" : "readonly");
    const ended = new Promise((resolve, reject) => {
      work.oncomplete = resolve;
      work.onabort = () => reject(work.error ?? new Error("aborted"));
    });
    ended.catch(() => {});
    const about = work.objectStore("about"), chunks = work.objectStore("chunks");
    if (sign) about.put(this.#id, "writer");
    const [size, keys, parts] = await Promise.all([promised(about.get("size")), promised(chunks.getAllKeys()), promised(chunks.getAll())]);
    await ended;
    if (size === undefined) return null;
    const bytes = new Uint8Array(size);
    let filled = 0;
    keys.forEach((key, i) => {
      if (key * CHUNK >= size) return;
      bytes.set(parts[i].subarray(0, size - key * CHUNK), key * CHUNK);
      filled += Math.min(parts[i].length, size - key * CHUNK);
    });
    if (filled !== size) throw new Error(`${filled} / ${size}`);
    this.#last = bytes.slice();
    return bytes;
  }

  // Keeps these bytes (which must not change until it answers). Answers "" once they are on the disk,
  // otherwise what was wrong, and then the store holds what it held before: "full", "denied",
  // "failed: words", or "another" where another tab has become the writer.
  keep(bytes) {
    const kept = this.#keeping.then(() => this.#keep(bytes));
    this.#keeping = kept.then(() => {}, () => {});
    return kept;
  }

  // Settles when nothing is being kept.
  async quiet() {
    let seen;
    do {
      seen = this.#keeping;
      await seen;
    } while (seen !== this.#keeping);
  }

  async #keep(bytes) {
    if (this.#refused) return this.#refused;
    try {
      if (!this.#db) await this.#connect();
      let outcome = await this.#write(bytes);
      // The store was emptied behind this tab's back: everything has to go there again.
      if (outcome === "emptied") {
        this.#last = null;
        outcome = await this.#write(bytes);
      }
      return outcome;
    } catch (fault) {
      return classified(fault);
    }
  }

  #write(bytes) {
    return new Promise((resolve, reject) => {
      // "strict" asks the browser to answer only when the disk has it.
      const work = this.#db.transaction(["about", "chunks"], "readwrite", { durability: "strict" });
      let wrong = "";
      work.oncomplete = () => {
        this.#last = bytes;
        resolve("");
      };
      work.onabort = () => (wrong ? resolve(wrong) : reject(work.error ?? new Error("aborted")));
      const about = work.objectStore("about");
      about.get("writer").onsuccess = event => {
        const writer = event.target.result;
        if (writer === this.#id || (writer === undefined && !this.#last)) return;
        wrong = writer === undefined ? "emptied" : "another";
        work.abort();
      };
      // No waiting for that answer: an abort takes all of these back.
      this.#putChanged(work.objectStore("chunks"), bytes);
      about.put(bytes.length, "size");
      if (!this.#last) about.put(this.#id, "writer");
    });
  }

  #putChanged(chunks, bytes) {
    const last = this.#last, count = Math.ceil(bytes.length / CHUNK);
    if (!last) chunks.clear();
    else if (last.length > bytes.length) chunks.delete(IDBKeyRange.lowerBound(count));
    for (let i = 0; i < count; ++i) {
      const from = i * CHUNK, to = Math.min(from + CHUNK, bytes.length);
      const same = last && Math.min(from + CHUNK, last.length) === to && !differ(bytes.subarray(from, to), last.subarray(from, to));
      if (same) continue;
      // A copy: storing a view would store the whole buffer behind it.
      chunks.put(bytes.slice(from, to), i);
      ++this.written;
    }
  }
}
