// Keeps the board as the desk has it, and says when the desk is not heard: a number that stands there from before may be wrong.
// In the oldest form of the language, for the oldest phone that somebody puts up.
"use strict";
(function () {
  var EVERY_MS = 4000, SILENT_MS = 20000, heard = Date.now();

  function silent() {
    var says = document.getElementById("silent");
    if (says && says.hidden && Date.now() - heard > SILENT_MS) {
      says.textContent = document.body.getAttribute("data-silent");
      says.hidden = false;
    }
  }

  function show(text) {
    var fresh = new DOMParser().parseFromString(text, "text/html").getElementById("main");
    var old = document.getElementById("main");
    if (!fresh || !old) return;
    heard = Date.now();
    if (fresh.innerHTML !== old.innerHTML) old.parentNode.replaceChild(document.importNode(fresh, true), old);
  }

  function renew() {
    var asked = new XMLHttpRequest();
    asked.open("GET", "/board/now?" + Date.now());
    asked.timeout = EVERY_MS * 2;
    asked.onloadend = function () {
      if (asked.status === 200) show(asked.responseText);
      silent();
      setTimeout(renew, EVERY_MS);
    };
    asked.send();
  }

  setTimeout(renew, EVERY_MS);
})();
