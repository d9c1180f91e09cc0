// Says so at once where the program can't run. Classic and old JavaScript: it must run there.
(function () {
  var missing = "";
  if (!("noModule" in document.createElement("script"))) missing = "no_modules";
  else if (typeof WebAssembly !== "object" || typeof WebAssembly.instantiate !== "function") missing = "no_wasm";
  else {
    var gl = null;
    try { gl = document.createElement("canvas").getContext("webgl2"); } catch (fault) { gl = null; }
    if (!gl) missing = "no_webgl";
    else {
      // Phones allow few contexts at a time: this one is given back at once.
      var losing = gl.getExtension("WEBGL_lose_context");
      if (losing) losing.loseContext();
    }
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
