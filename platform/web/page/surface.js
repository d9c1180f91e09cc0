// The size of the canvas in device pixels, the ratio, what the window's edges hide, light or dark.
import { tell } from "./line.js";
import { hurry } from "./turns.js";

const canvas = document.getElementById("canvas");
const insets = document.getElementById("insets");
const darkness = matchMedia("(prefers-color-scheme: dark)");

// page.surface = [width px, height px, device pixels per CSS px, inset left, top, right, bottom in
// CSS px] and page.dark, now and after every change.
export function watchSurface(page) {
  let exact = null;  // the observer's size in device pixels, where the browser tells it

  function measure() {
    const ratio = window.devicePixelRatio || 1;
    // Some browsers tell the exact size without the ratio (zoomed or emulated displays).
    const side = (told, css) => {
      const wanted = Math.round(css * ratio);
      return Math.max(1, told !== undefined && Math.abs(told - wanted) <= 2 ? told : wanted);
    };
    const width = side(exact?.width, canvas.clientWidth);
    const height = side(exact?.height, canvas.clientHeight);
    const style = getComputedStyle(insets);
    const inset = side => parseFloat(style["padding" + side]) || 0;
    const next = [width, height, ratio, inset("Left"), inset("Top"), inset("Right"), inset("Bottom")];
    const same = page.surface && next.every((value, i) => value === page.surface[i]);
    page.surface = next;
    if (same) return;
    // Setting a size empties the canvas, even the same one.
    if (canvas.width !== width) canvas.width = width;
    if (canvas.height !== height) canvas.height = height;
    tell("surface");
    hurry();
  }

  page.dark = darkness.matches;
  darkness.addEventListener("change", () => {
    page.dark = darkness.matches;
    tell("surface");
  });

  measure();
  const observer = new ResizeObserver(entries => {
    const box = entries[0].devicePixelContentBoxSize;
    exact = box ? { width: box[0].inlineSize, height: box[0].blockSize } : null;
    measure();
  });
  try {
    observer.observe(canvas, { box: "device-pixel-content-box" });
  } catch {
    observer.observe(canvas);
  }
  new ResizeObserver(measure).observe(insets, { box: "border-box" });
  window.addEventListener("orientationchange", measure);
  watchRatio(measure);
  watchKeyboard();
}

// A media query matches one ratio only, so the next one is asked for after each change.
function watchRatio(measure) {
  matchMedia(`(resolution: ${window.devicePixelRatio}dppx)`).addEventListener("change", () => {
    measure();
    watchRatio(measure);
  }, { once: true });
}

// Where the keyboard lies over the page and shrinks only what is seen of it (browsers that don't know
// interactive-widget), the canvas takes the height that is left. Not while the person has zoomed.
function watchKeyboard() {
  const seen = window.visualViewport;
  if (!seen) return;
  const root = document.documentElement;
  seen.addEventListener("resize", () => {
    const covered = window.innerHeight - seen.height;
    if (Math.abs(seen.scale - 1) < 0.01 && covered > 60) root.style.setProperty("--window-height", `${seen.height}px`);
    else root.style.removeProperty("--window-height");
    window.scrollTo(0, 0);
  });
}
