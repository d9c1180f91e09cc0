// The library's bytes in the browser's store: in chunks, so that an edit writes only what it changed,
// and every keep in one transaction that the browser has put on the disk when it answers.
//
// Database "carriageway": object store "chunks" holds Uint8Arrays under their index; "about" holds
// "size" (bytes of the library), "writer" (the one tab that may write) and "writing" (true while a keep
// is under way, so that a start finds out that the last one was cut off).
import { classified, open, transact } from "./database.js";

// Two pages of the library's own file: an edit changes few of them.
const CHUNK = 8 * 1024;
const PADDING = 6 * 1024 * 1024;  // bytes, see padOut

// Whether two arrays of equal length differ, 32 bits at a time.
function differ(a, b) {
  const words = a.length >> 2;
  const left = new Uint32Array(a.buffer, a.byteOffset, words), right = new Uint32Array(b.buffer, b.byteOffset, words);
  for (let i = 0; i < words; ++i) if (left[i] !== right[i]) return true;
  for (let i = words << 2; i < a.length; ++i) if (a[i] !== b[i]) return true;
  return false;
}

// Whether a keep has failed in an earlier page, remembered in a storage of its own: see padOut.
function cutOff(now) {
  try {
    if (now === true) localStorage.setItem("carriageway store", "cut off");
    if (now === false) localStorage.removeItem("carriageway store");
    return localStorage.getItem("carriageway store") !== null;
  } catch {
    return false;
  }
}

export class Store {
  #id;           // of this tab
  #writer;       // who the store says may write, as far as this tab knows
  #database = null;
  #refused = ""; // why nothing can be kept, in the words of the line
  #last = null;  // the bytes that the store holds, when this tab knows
  #torn = false; // a keep was cut off, see padOut
  #full = false; // the last keep found no space
  #keeping = Promise.resolve();

  constructor(id) { this.#id = id; }

  async #connect() {
    this.#database = await open("carriageway", ["about", "chunks"], () => { this.#database = this.#last = null; });
  }

  // Reads the library: its bytes, or null where there is none or it can't be read. With sign, this tab
  // is the writer from the moment of reading, and a keep by any other tab fails from then on.
  async take(sign) {
    try {
      await this.#connect();
    } catch (fault) {
      console.error(fault);
      this.#refused = "denied";
      return null;
    }
    try {
      if (sign) await this.#mend();
    } catch (fault) {
      // No space, as a rule. The library can be read, and the next keep tries again.
      console.error(fault);
    }
    try {
      if (!this.#database) await this.#connect();
      // Without space even a signature doesn't fit: the first keep that does signs.
      return await this.#read(sign).catch(fault => (sign ? this.#read(false) : Promise.reject(fault)));
    } catch (fault) {
      // Writing now would replace what is there by an empty library.
      this.#refused = `failed: ${window.carriagewayWord("unread", fault?.message || String(fault))}`;
      return null;
    }
  }

  async #mend() {
    const writing = await transact(this.#database, "readonly", "default", stores => stores.about.get("writing"));
    this.#torn = writing.result === true || cutOff();
    if (this.#torn) await this.#padOut();
  }

  async #read(sign) {
    const got = await transact(this.#database, sign ? "readwrite" : "readonly", "default", ({ about, chunks }) => {
      if (sign) about.put(this.#id, "writer");
      return { writer: about.get("writer"), size: about.get("size"), keys: chunks.getAllKeys(), parts: chunks.getAll() };
    });
    this.#writer = got.writer.result;
    const size = got.size.result, keys = got.keys.result, parts = got.parts.result;
    if (size === undefined) return null;
    const bytes = new Uint8Array(size);
    let at = 0;
    keys.forEach((key, i) => {
      if (key !== i || at + parts[i].length > size) throw new Error(`chunk ${key}`);
      bytes.set(parts[i], at);
      at += parts[i].length;
    });
    if (at !== size) throw new Error(`${at} / ${size}`);
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
      if (!this.#database) await this.#connect();
      if (this.#torn) await this.#padOut();
      if (await this.#begin() === "another") return "another";
      let outcome = await this.#write(bytes);
      // The store was emptied behind this tab's back: everything has to go there again.
      if (outcome === "emptied") {
        this.#last = null;
        outcome = await this.#write(bytes);
      }
      this.#full = false;
      return outcome;
    } catch (fault) {
      return this.#failed(fault);
    }
  }

  #failed(fault) {
    const outcome = classified(fault);
    // The browser's own quota is checked before anything is written; a full disk is not.
    if (fault?.name !== "QuotaExceededError") this.#torn = cutOff(true) || true;
    else this.#noLongerWriting();
    // Chromium closes the database on a full disk, and can't open it again until there is space.
    if (outcome.startsWith("failed") && this.#full) return "full";
    this.#full = outcome === "full";
    return outcome;
  }

  // A keep that the browser has refused as a whole is not one that was cut off.
  #noLongerWriting() {
    transact(this.#database, "readwrite", "relaxed", ({ about }) => { about.put(false, "writing"); }).catch(() => {});
  }

  // After a write that was cut off (full disk, killed process) Chromium goes on with the same log, finds
  // it damaged the next time it starts, and then throws the whole database away (seen with a full disk
  // in version 156). Writing more than the log may hold makes it begin a new one, before anything
  // that was acknowledged depends on the old one.
  async #padOut() {
    await transact(this.#database, "readwrite", "strict", ({ about }) => {
      for (let i = 0; i < PADDING / CHUNK; ++i) about.put(new Uint8Array(CHUNK), `padding ${i}`);
    });
    await transact(this.#database, "readwrite", "strict", ({ about }) => {
      about.delete(IDBKeyRange.bound("padding", "padding~"));
      about.put(false, "writing");
    });
    this.#torn = cutOff(false);
  }

  // Says in the store that a keep is under way.
  #begin() {
    return transact(this.#database, "readwrite", "relaxed", ({ about }, abort) => {
      this.#onlyAsWriter(about, abort);
      about.put(true, "writing");
    });
  }

  #onlyAsWriter(about, abort) {
    about.get("writer").onsuccess = event => {
      const writer = event.target.result;
      if (writer !== undefined && writer !== this.#writer) abort("another");
      else if (writer === undefined && this.#last) abort("emptied");
    };
  }

  async #write(bytes) {
    const outcome = await transact(this.#database, "readwrite", "strict", ({ about, chunks }, abort) => {
      this.#onlyAsWriter(about, abort);
      // No waiting for the answer: an abort takes all of these back.
      this.#putChanged(chunks, bytes);
      about.put(bytes.length, "size");
      about.put(this.#id, "writer");
      about.put(false, "writing");
      return "";
    });
    if (outcome === "") {
      this.#last = bytes;
      this.#writer = this.#id;
    }
    return outcome;
  }

  #putChanged(chunks, bytes) {
    const last = this.#last, count = Math.ceil(bytes.length / CHUNK);
    if (!last) chunks.clear();
    else if (last.length > bytes.length) chunks.delete(IDBKeyRange.lowerBound(count));
    for (let i = 0; i < count; ++i) {
      const from = i * CHUNK, to = Math.min(from + CHUNK, bytes.length);
      const same = last && Math.min(from + CHUNK, last.length) === to && !differ(bytes.subarray(from, to), last.subarray(from, to));
      // A copy: storing a view would store the whole buffer behind it.
      if (!same) chunks.put(bytes.slice(from, to), i);
    }
  }
}
