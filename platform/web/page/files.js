// Files and text in and out: picked, dropped, handed out, copied, shared.
import { tell } from "./line.js";

// Larger ones aren't job files. One byte more is read, so that the program can say that it is too large.
const LARGEST = 64 * 1024 * 1024;

const types = { json: "application/json", png: "image/png", svg: "image/svg+xml", pdf: "application/pdf", db: "application/vnd.sqlite3", txt: "text/plain", csv: "text/csv" };

let files = null;  // the program's own file system
export function useFiles(fs) { files = fs; }

// A name that is one part of a path and nothing else, whatever the file was called.
function plainName(name) {
  const plain = name.replace(/[\u0000-\u001f\u007f/\\]/g, "_").slice(-120);
  return plain === "" || plain === "." || plain === ".." ? "file" : plain;
}

async function bringIn(file) {
  const path = `/incoming/${plainName(file.name)}`;
  try {
    const bytes = new Uint8Array(await file.slice(0, LARGEST + 1).arrayBuffer());
    if (!files.analyzePath("/incoming").exists) files.mkdir("/incoming");
    files.writeFile(path, bytes);
  } catch (fault) {
    // The program finds no file there and says what to do.
    console.error(fault);
    if (files.analyzePath(path).exists) files.unlink(path);
  }
  tell("file", path);
}

const picker = document.createElement("input");
picker.type = "file";
picker.accept = ".json,application/json,.png,image/png";
picker.addEventListener("change", () => {
  for (const file of picker.files) bringIn(file);
  // The same file chosen again is a change again.
  picker.value = "";
});

// Some browsers open it only for an element of the page.
picker.hidden = true;
document.body.append(picker);

export function pick() { picker.click(); }

export function watchDrops() {
  const holdsFiles = event => event.dataTransfer?.types.includes("Files");
  window.addEventListener("dragover", event => {
    event.preventDefault();
    if (event.dataTransfer) event.dataTransfer.dropEffect = holdsFiles(event) ? "copy" : "none";
  });
  window.addEventListener("drop", event => {
    event.preventDefault();
    for (const file of event.dataTransfer?.files ?? []) bringIn(file);
  });
}

// Hands out a file of the program: to the phone's share sheet where it takes it, else as a download.
export async function give(path) {
  const name = path.slice(path.lastIndexOf("/") + 1);
  const type = types[name.slice(name.lastIndexOf(".") + 1).toLowerCase()] ?? "application/octet-stream";
  const file = new File([files.readFile(path)], name, { type });
  if (matchMedia("(pointer: coarse)").matches && navigator.canShare?.({ files: [file] })) {
    try {
      return await navigator.share({ files: [file], title: name });
    } catch (fault) {
      // The person closed the share sheet. Anything else (a type that it won't take): a download.
      if (fault.name === "AbortError") return undefined;
    }
  }
  return download(file);
}

function download(file) {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(file);
  link.download = file.name;
  link.click();
  // Some browsers read it only after the person has answered where to put it.
  setTimeout(() => URL.revokeObjectURL(link.href), 120000);
}

export async function copy(text) {
  tell(await copied(text) ? "copied" : "not-copied");
}

async function copied(text) {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return copiedTheOldWay(text);
  }
}

// Where there is no clipboard (plain http) or it is refused.
function copiedTheOldWay(text) {
  const before = document.activeElement;
  const area = document.createElement("textarea");
  area.value = text;
  area.className = "unseen";
  document.getElementById("splash").before(area);
  area.select();
  let done = false;
  try {
    done = document.execCommand("copy");
  } catch {
    done = false;
  }
  area.remove();
  before?.focus?.({ preventScroll: true });
  return done;
}

// Text or a link to the phone's share sheet; where there is none, to the clipboard.
export async function share(text) {
  if (navigator.share) {
    try {
      return await navigator.share(/^https?:\/\/\S+$/.test(text) ? { url: text } : { text });
    } catch (fault) {
      if (fault.name === "AbortError") return undefined;
    }
  }
  return copy(text);
}
