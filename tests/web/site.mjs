// Serves the built folder on a free port of this machine, as any static host would.
import { createReadStream, statSync } from "node:fs";
import { createServer } from "node:http";
import { extname, join, normalize } from "node:path";

const TYPES = {
  ".html": "text/html; charset=utf-8", ".js": "text/javascript", ".css": "text/css", ".wasm": "application/wasm",
  ".json": "application/json", ".webmanifest": "application/manifest+json", ".svg": "image/svg+xml", ".png": "image/png",
};

export const SITE = process.env.CARRIAGEWAY_SITE;
if (!SITE) throw new Error("CARRIAGEWAY_SITE must name the built folder; platform/web/check sets it.");

// Answers {address, close}. `folder` may be changed later: a newer version of the program.
export async function serve(folder = SITE) {
  const site = { folder, address: "", close: null };
  const server = createServer((request, answer) => {
    const path = normalize(decodeURIComponent(new URL(request.url, "http://localhost").pathname));
    const file = join(site.folder, path.endsWith("/") ? `${path}index.html` : path);
    try {
      if (!file.startsWith(site.folder) || !statSync(file).isFile()) throw new Error("none");
    } catch {
      answer.writeHead(404).end();
      return;
    }
    answer.writeHead(200, { "content-type": TYPES[extname(file)] ?? "application/octet-stream", "cache-control": "no-cache" });
    createReadStream(file).pipe(answer);
  });
  await new Promise(resolve => server.listen(0, "127.0.0.1", resolve));
  site.address = `http://localhost:${server.address().port}/`;
  site.close = () => new Promise(resolve => { server.closeAllConnections(); server.close(resolve); });
  return site;
}
