// Says so at once where the program can't run. Classic and old JavaScript: it must run there.
(function () {
  var missing = "";
  if (!("noModule" in document.createElement("script"))) missing = "no_modules";
  else if (typeof WebAssembly !== "object" || typeof WebAssembly.instantiate !== "function") missing = "no_wasm";
  else {
    // The very context that the program draws with, which has the attributes of its first asking: a
    // second one would take its time, and phones allow few.
    var gl = null, wanted = { alpha: false, depth: false, antialias: false, powerPreference: "low-power" };
    try { gl = document.getElementById("canvas").getContext("webgl2", wanted); } catch (fault) { gl = null; }
    if (!gl) missing = "no_webgl";
  }
  window.carriagewayCannot = missing;
  if (missing) {
    window.carriagewayProblem("cannot_title", missing);
    return;
  }
  // Until start.js has taken over, whatever goes wrong is told: a module that didn't arrive, or one
  // in a newer JavaScript than this browser knows.
  window.addEventListener("error", function (event) {
    if (window.carriagewayStarted) return;
    if (event.message && /SyntaxError/.test(event.message)) window.carriagewayProblem("cannot_title", "no_modules");
    else if (event.target && event.target.tagName === "SCRIPT")
      window.carriagewayProblem("arrival_title", "arrival", event.target.getAttribute("src"));
  }, true);
})();
