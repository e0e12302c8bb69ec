// The line to the desk: every question has a time limit, and a desk that does not answer is told.
"use strict";
// What the script says stands in the page, in its language; what has a place in it is put there.
const said = JSON.parse(document.body.dataset.words);
const say = (name, places = {}) => said[name].replace(/\{(\w+)\}/g, (_, place) => places[place]);

const line = (() => {
  const LIMIT = 8000; // Milliseconds a question may take.
  const SLOW = 2000; // Milliseconds after which a wait is told.
  let last = Date.now(); // When the desk answered last.
  let silent = false;
  const waiting = new Set();

  const bar = () => document.getElementById("line");
  const clock = (time) => new Date(time).toTimeString().slice(0, 8);

  // `acts` are the words and works of buttons.
  function tell(words, acts = []) {
    const place = bar();
    if (!place) return;
    place.replaceChildren();
    place.hidden = words === "";
    if (words === "") return;
    const text = document.createElement("span");
    text.textContent = words;
    place.append(text);
    for (const [word, work] of acts) {
      const button = document.createElement("button");
      button.type = "button";
      button.textContent = word;
      button.addEventListener("click", work);
      place.append(button);
    }
    holdStill.covered();
  }

  let kept = null; // What stays told while the desk answers: something the seller has to decide.
  function show() {
    if (silent) tell(`${say("silent", { time: clock(last) })}${kept ? ` ${kept.words}` : ""}`);
    else if (kept) tell(kept.words, kept.acts);
    else if (waiting.size > 0) tell(say("waiting"));
    else tell("");
  }

  return {
    // Asks the desk; throws where no answer comes in time.
    async ask(address, options = {}, limit = LIMIT) {
      const slow = setTimeout(() => { waiting.add(slow); show(); }, SLOW);
      try {
        const response = await fetch(address, { ...options, signal: AbortSignal.timeout(limit) });
        const text = await response.text();
        last = Date.now();
        silent = false;
        return { response, text };
      } catch (error) {
        silent = true;
        throw error;
      } finally {
        clearTimeout(slow);
        waiting.delete(slow);
        show();
      }
    },
    // The desk has said something by itself.
    heard() { last = Date.now(); if (silent) { silent = false; show(); } },
    quiet: () => Date.now() - last,
    isSilent: () => silent,
    keep(words, acts) { kept = words ? { words, acts } : null; show(); },
  };
})();
