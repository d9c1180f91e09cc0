// The page's own few words: what the program can't say because it isn't running, or not yet.
//
// A classic script in old JavaScript, so that it also runs where modules don't. The program's words
// are in app/text/catalogue.inc; the style is the same. One row: key, English, Spanish; {0} is filled.
(function () {
  var words = {
    loading: ["Loading", "Cargando"],
    reload: ["Load again", "Volver a cargar"],
    cannot_title: ["This browser can't run Carriageway", "Este navegador no puede abrir Carriageway"],
    no_wasm: [
      "It lacks WebAssembly, or a setting turns it off. Update the browser, or open this page in another one: any current browser will do.",
      "Le falta WebAssembly, o un ajuste lo tiene apagado. Actualice el navegador o abra esta página en otro: sirve cualquiera que esté al día."],
    no_webgl: [
      "It lacks WebGL 2, or a setting turns it off. Turn on graphics acceleration in the browser's settings and start the browser again, or open this page in another browser.",
      "Le falta WebGL 2, o un ajuste lo tiene apagado. Active la aceleración de gráficos en los ajustes del navegador y ábralo de nuevo, o abra esta página en otro navegador."],
    no_modules: [
      "It is too old. Update the browser, or open this page in another one: any current browser will do.",
      "Es demasiado antiguo. Actualice el navegador o abra esta página en otro: sirve cualquiera que esté al día."],
    arrival_title: ["Carriageway did not arrive", "Carriageway no ha llegado"],
    arrival: [
      "Part of the program could not be loaded ({0}). Check the connection, then load the page again.",
      "Una parte del programa no se pudo cargar ({0}). Revise la conexión y vuelva a cargar la página."],
    stopped_title: ["Carriageway has stopped", "Carriageway se ha parado"],
    stopped: [
      "A fault in the program stopped it ({0}). Load the page again: what was marked as saved is still there.",
      "Un fallo del programa lo ha parado ({0}). Vuelva a cargar la página: lo marcado como guardado sigue ahí."],
    another_tab: ["another tab has this library", "otra pestaña tiene esta biblioteca"],
    unread: [
      "what this browser had kept could not be read ({0}), so it is not written over",
      "no se pudo leer lo que guardaba este navegador ({0}), así que no se escribe encima"]
  };
  var own = (navigator.languages && navigator.languages[0]) || navigator.language || "en";
  document.documentElement.lang = /^es\b/i.test(own) ? "es" : "en";

  // The words of a key in the document's language, which the program may change later.
  window.carriagewayWord = function (key, filling) {
    var both = words[key];
    var text = both[/^es\b/i.test(document.documentElement.lang) ? 1 : 0];
    return text.replace("{0}", filling === undefined ? "" : filling);
  };

  // Puts a message in place of the splash's drawing: nothing else will come. Only the first one stays.
  window.carriagewayProblem = function (title, text, filling) {
    var splash = document.getElementById("splash"), problem = document.getElementById("problem");
    if (!problem.hidden) return;
    document.getElementById("problem-title").textContent = window.carriagewayWord(title);
    document.getElementById("problem-text").textContent = window.carriagewayWord(text, filling);
    if (title !== "cannot_title") {
      var button = document.getElementById("problem-button");
      button.textContent = window.carriagewayWord("reload");
      button.onclick = function () { location.reload(); };
      button.hidden = false;
    }
    splash.hidden = false;
    splash.className = "troubled";
    problem.hidden = false;
  };
  document.getElementById("travel").setAttribute("aria-label", window.carriagewayWord("loading"));
})();
