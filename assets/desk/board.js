// Keeps the board as the desk has it, and says when the desk is not heard: a number that stands there from before may be wrong.
"use strict";
(() => {
  const EVERY_MS = 4000, SILENT_MS = 20000;
  let heard = Date.now();
  async function renew() {
    const stop = new AbortController();
    const limit = setTimeout(() => stop.abort(), EVERY_MS * 2);
    try {
      const answer = await fetch("/board/now", { cache: "no-store", signal: stop.signal });
      if (!answer.ok) throw new Error(String(answer.status));
      const fresh = new DOMParser().parseFromString(await answer.text(), "text/html").getElementById("main");
      const old = document.getElementById("main");
      if (fresh && fresh.innerHTML !== old.innerHTML) old.replaceWith(fresh);
      heard = Date.now();
    } catch {
      const silent = document.getElementById("silent");
      if (Date.now() - heard > SILENT_MS && silent.hidden) {
        silent.textContent = document.body.dataset.silent;
        silent.hidden = false;
      }
    } finally {
      clearTimeout(limit);
      setTimeout(renew, EVERY_MS);
    }
  }
  setTimeout(renew, EVERY_MS);
})();
