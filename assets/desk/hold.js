// A page that changes by itself moves nothing away from under a finger: it is scrolled along, and given room where it has
// none to scroll. When nobody has touched it for a while, it goes back to its top and shows what is new.
"use strict";
const holdStill = (() => {
  const LEFT_ALONE = 20000; // Milliseconds after which nobody's finger is near.
  const BLIND = 600; // Milliseconds in which a touch was meant for what lay there before.
  const ACTS = "a[href], button, input, select, summary";
  let finger = null;
  let touched = Date.now();
  let blind = null;
  let atTop = true; // Whether the seller looks at the top of the list, scrolled along or not.
  let room = { above: 0, below: 0 };
  let scrolledByUs = -1;
  const unseen = new Set(); // The addresses of tickets that came where they can't be seen yet.
  let owed = 0; // What rounding to whole pixels left over; many changes must not add up.

  const main = () => document.getElementById("main");
  const top = () => document.querySelector(".top")?.getBoundingClientRect().bottom ?? 0;
  for (const kind of ["pointerdown", "pointermove"]) {
    document.addEventListener(kind, (event) => { finger = { x: event.clientX, y: event.clientY }; touched = Date.now(); }, { passive: true, capture: true });
  }
  document.addEventListener("keydown", () => { finger = null; touched = Date.now(); }, true);
  addEventListener("scroll", () => {
    tellUnseen();
    if (Math.abs(scrollY - scrolledByUs) < 2) return;
    touched = Date.now();
    atTop = scrollY < 4;
  }, { passive: true });

  const under = () => (finger ? document.elementFromPoint(finger.x, finger.y) : null);
  const acting = (one) => one?.closest?.(ACTS) ?? null;

  // A touch that comes just after something else has come to lie there is not taken.
  document.addEventListener("click", (event) => {
    if (!blind || !event.isTrusted || event.detail === 0 || Date.now() > blind.until) return;
    if (Math.hypot(event.clientX - blind.x, event.clientY - blind.y) > 40) return;
    event.preventDefault();
    event.stopImmediatePropagation();
  }, true);

  // What may not move, the most important first: what lies under the finger, what has the focus, what can be seen.
  function anchors() {
    const seen = [...main().querySelectorAll(`${ACTS}, li, [id]`)].filter((one) => {
      const box = one.getBoundingClientRect();
      return box.height > 0 && box.bottom > top() && box.top < innerHeight;
    });
    const first = [under()?.closest?.(`${ACTS}, li, [id]`), document.activeElement].filter((one) => one && one !== main() && main().contains(one));
    const y = finger ? finger.y : top();
    seen.sort((a, b) => Math.abs(a.getBoundingClientRect().top - y) - Math.abs(b.getBoundingClientRect().top - y));
    return [...first, ...seen].map((one) => ({ one, top: one.getBoundingClientRect().top }));
  }

  function makeRoom(above, below) {
    room = { above: Math.max(0, above), below: Math.max(0, below) };
    main().style.marginTop = room.above ? `${room.above}px` : "";
    main().style.marginBottom = room.below ? `${room.below}px` : "";
  }

  function scrollAlong(by) {
    if (Math.abs(by) < 0.5) return;
    const target = scrollY + by;
    if (target < 0) { makeRoom(room.above - target, room.below); scrolledByUs = 0; scrollTo({ top: 0, behavior: "instant" }); return; }
    const most = document.documentElement.scrollHeight - innerHeight;
    if (target > most) makeRoom(room.above, room.below + Math.ceil(target - most));
    scrolledByUs = target;
    scrollTo({ top: target, behavior: "instant" });
  }

  // Says at the tab how many have come above or below what can be seen; what has been seen once is not new any more.
  function tellUnseen() {
    const count = { above: 0, below: 0 };
    const cards = new Map(unseen.size > 0 ? cardsOf().map((card) => [card.href, card]) : []);
    for (const href of [...unseen]) {
      const box = cards.get(href)?.getBoundingClientRect();
      if (box && box.bottom <= top() + 1) count.above += 1;
      else if (box && box.top >= innerHeight - 1) count.below += 1;
      else unseen.delete(href);
    }
    const tab = document.querySelector(".top a[aria-current]");
    if (!tab) return;
    if (unseen.size === 0) { delete tab.dataset.new; tab.removeAttribute("title"); return; }
    tab.dataset.new = unseen.size;
    tab.title = count.above > 0 ? say("newAbove", { n: count.above }) : say("newBelow", { n: count.below });
  }
  const cardsOf = () => [...main().querySelectorAll("a.ticket")];

  function backToTop() {
    makeRoom(0, 0);
    scrolledByUs = 0;
    scrollTo({ top: 0, behavior: "instant" });
    tellUnseen();
  }
  const isAlone = () => Date.now() - touched > LEFT_ALONE && !main().contains(document.activeElement);
  setInterval(() => { if (isAlone() && atTop && (scrollY > 0 || room.above || room.below)) backToTop(); }, 2000);

  return {
    // Changes the page by `change` without moving anything.
    during(change) {
      const before = acting(under());
      const cards = new Set(cardsOf().map((card) => card.href));
      const held = anchors();
      const alone = isAlone() && atTop;
      change();
      if (alone) backToTop();
      else {
        const still = held.find(({ one }) => one.isConnected && one.getBoundingClientRect().height > 0);
        if (still) {
          const off = () => still.one.getBoundingClientRect().top - still.top;
          scrollAlong(off() + owed);
          owed = Math.abs(off() + owed) < 1 ? off() + owed : 0;
        }
      }
      for (const { href } of cardsOf()) if (!cards.has(href)) unseen.add(href);
      tellUnseen();
      if (finger && acting(under()) !== before) blind = { ...finger, until: Date.now() + BLIND };
    },
    // Another page begins at its top.
    anew() { makeRoom(0, 0); unseen.clear(); tellUnseen(); atTop = true; scrolledByUs = 0; if (finger) blind = { ...finger, until: Date.now() + BLIND }; },
    // Something has come to lie over the page.
    covered() { if (finger) blind = { ...finger, until: Date.now() + BLIND }; },
  };
})();
