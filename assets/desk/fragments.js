// What the desk has said of the page so far, in fragments, so that it has to say only what is different. The desk cuts a
// page where an element has an identity; what changes on the page by itself, or by the seller's hand, is none of this.
"use strict";
const fragments = (() => {
  const away = document.implementation.createHTMLDocument(""); // Nothing in here is seen, or loads a picture.
  let known = new Map(); // By key: the digest, and the element with an empty one where another fragment stands in it.
  let all = ""; // For a page with too much to list: one digest for everything.

  // The first element with a key has it, as at the desk.
  function byKey(whole) {
    const found = new Map();
    for (const one of [whole, ...whole.querySelectorAll("[id], [data-key]")]) {
      const key = one.id || one.dataset.key;
      if (!found.has(key)) found.set(key, one);
    }
    return found;
  }

  function forget() { known = new Map(); all = ""; }

  // Puts an element together again with what stands in it, and notes in `used` which fragments that took.
  function build(key, used) {
    used.set(key, known.get(key));
    const one = away.importNode(known.get(key).own, true);
    for (const hole of [...one.querySelectorAll("[data-at]")]) hole.replaceWith(build(hole.dataset.at, used));
    return one;
  }

  return {
    // What is told the desk.
    has() {
      const list = all || [...known].map(([key, { digest }]) => `${key}=${digest}`).join(",");
      return list ? { "x-has": list } : {};
    },
    // A whole page, and the list of its fragments. It is taken apart from within, and put into the order of the page again.
    learn(whole, list) {
      forget();
      if (!list) return;
      if (list.startsWith("*")) { all = list; return; }
      const found = byKey(away.importNode(whole, true));
      const pairs = list.split(",").map((pair) => pair.split("="));
      for (const [key] of [...pairs].reverse()) {
        const own = found.get(key);
        if (!own?.parentNode) continue;
        const hole = away.createElement(own.tagName);
        hole.dataset.at = key;
        own.replaceWith(hole);
      }
      for (const [key, digest] of pairs) known.set(key, { digest, own: found.get(key) });
    },
    // The page as it is with these changes; nothing where they don't fit, so that the whole page is asked for.
    change(answer) {
      try {
        for (const { dataset, content } of answer.querySelectorAll("template[data-digest]")) known.set(dataset.key, { digest: dataset.digest, own: content.firstElementChild });
        const used = new Map();
        const whole = build("main", used);
        known = used;
        return whole;
      } catch { forget(); return null; }
    },
  };
})();
