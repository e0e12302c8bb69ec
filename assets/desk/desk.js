// Keeps an open page up to date and spares the seller waiting. Every page works without this file.
"use strict";
(() => {
  const root = document.documentElement;
  root.classList.add("script");
  const main = () => document.getElementById("main");
  const isLive = document.body.dataset.live === "yes";
  if (isLive) fragments.learn(main(), document.body.dataset.has); // Before anything is changed on it.

  // ---- One place changes the page: by the answer to a question or to a form. ----
  let shown = 0; // Number of the newest answer that is shown; an older one that comes late is thrown away.
  let asked = 0;
  let sending = 0;

  const leadsToSignIn = (response) => response.redirected && new URL(response.url).pathname === "/sign-in";

  // Shows an answer: a whole page, or what of it is different; whether it could.
  function take({ response, text }, number, own) {
    if (number < shown) return true;
    if (response.status === 204) { shown = number; return true; }
    const next = new DOMParser().parseFromString(text, "text/html");
    const whole = next.getElementById("main");
    if (whole) fragments.learn(whole, next.body.dataset.has);
    const fresh = whole ?? fragments.change(next);
    if (!fresh) return false;
    shown = number;
    if (own && response.redirected && new URL(response.url).pathname !== location.pathname) {
      history.pushState(null, "", response.url);
      document.title = next.title;
      main().replaceWith(document.importNode(fresh, true));
      listenAnew();
      holdStill.anew();
      scrollTo(0, 0);
    } else {
      const told = main().querySelector(".trouble[data-until]");
      const stays = !own && told && Number(told.dataset.until) > Date.now() && !fresh.querySelector(".trouble:not([hidden])");
      if (stays) fresh.prepend(document.importNode(told, true));
      const before = whatIsTold();
      holdStill.during(() => { renewTree(main(), fresh, own); prepare(); });
      tellChange(before);
      return true;
    }
    prepare();
    return true;
  }

  // ---- Who can't see the page hears what has changed: a ticket that came, and what is still to do. ----
  const cardsOf = () => [...main().querySelectorAll("[data-key=waiting] a.ticket")];
  const whatIsTold = () => ({
    cards: new Set(cardsOf().map((card) => card.href)),
    count: Number(main().querySelector("[data-key=waiting] .tally")?.textContent ?? 0),
    toDo: main().querySelector("[data-tells]")?.textContent,
  });
  function tellChange(before) {
    const { count, toDo } = whatIsTold();
    // Where one has left, another may have moved up that was there all along.
    const fresh = count > before.count ? cardsOf().filter((card) => !before.cards.has(card.href)) : [];
    const came = fresh.map((card) => card.querySelector(".number").textContent);
    const what = came.join(", ");
    // What comes to the end of a long queue has no card on the page, and one that has moved up is not new.
    if (count > before.count && cardsOf().length < count) document.getElementById("live").textContent = say("queueGrew", { n: count });
    else if (came.length > 0) document.getElementById("live").textContent = say(came.length > 1 ? "newTickets" : "newTicket", { what });
    else if (toDo !== undefined && toDo !== before.toDo) document.getElementById("live").textContent = toDo;
  }

  let waiting = false; // A change came while a form or an earlier question was on its way.
  let renewing = false; // One question at a time: changes are told from what the page had when it asked.
  let again = null;
  let leaving = false; // A form was sent that leads to another page.
  async function renew(own = false) {
    clearTimeout(again);
    // What is told once or asked for one act stands until the seller goes on.
    if (!isLive || leaving || document.hidden || main().querySelector("[data-stands]")) return;
    if (sending > 0 || renewing) { waiting = true; return; }
    waiting = false;
    renewing = true;
    const number = ++asked;
    const has = fragments.has();
    try {
      const answer = await line.ask(location.href, { headers: { "x-live": "1", ...has }, cache: "no-store" });
      if (leadsToSignIn(answer.response)) { if (!leaving) location.assign(answer.response.url); return; }
      if (sending > 0) { waiting = true; return; }
      // What does not fit is forgotten, and the page is asked for as a whole.
      if (answer.response.ok && !take(answer, number, own)) waiting = "x-has" in has;
      if (answer.response.status >= 500) again = setTimeout(renew, 3000); else repeat();
    } catch { again = setTimeout(renew, 2000); } finally {
      renewing = false;
      if (waiting && sending === 0) renew();
    }
  }

  // ---- Forms are sent in place, so that the page keeps where the seller was. ----
  const NOT_ENTERED = "not-entered";
  let unanswered = null; // The form on which no answer came.

  const labelOf = (form, submitter) =>
    submitter?.getAttribute("aria-label") ?? submitter?.textContent.trim().replace(/\s+/g, " ") ?? form.querySelector("label")?.textContent ?? "";

  document.addEventListener("submit", (event) => {
    const form = event.target;
    if (form.matches("[data-check-number]") && !numberIsGood(form)) { event.preventDefault(); return; }
    if (isLive && form.matches("[data-in-place]") && !event.submitter?.hasAttribute("formmethod")) {
      event.preventDefault();
      chooseHome(form.elements.homes, event.submitter);
      if (event.submitter?.name === "for") form.elements.wearer.value = event.submitter.value;
      history.replaceState(null, "", `${form.getAttribute("action")}?${new URLSearchParams(new FormData(form))}`);
      renew(true);
      return;
    }
    // Signing out leads away by itself; meanwhile the page must not find that nobody is signed in and lead elsewhere.
    if (isLive && form.method === "post" && !main().contains(form)) leaving = true;
    if (!isLive || form.method !== "post" || !main().contains(form)) return;
    // A photo goes the browser's own way; a second touch means the first there as well.
    if (form.enctype === "multipart/form-data") {
      if (form.getAttribute("aria-busy") === "true") event.preventDefault();
      form.setAttribute("aria-busy", "true");
      leaving = true;
      return;
    }
    event.preventDefault();
    // A second touch means the first.
    if (form.getAttribute("aria-busy") === "true") return;
    form.setAttribute("aria-busy", "true");
    delete form.dataset.pending;
    const body = new URLSearchParams(new FormData(form, event.submitter)).toString();
    const secret = form.querySelector("input[type=password]") !== null;
    const action = event.submitter?.hasAttribute("formaction") ? event.submitter.formAction : form.action;
    send({ action, body, seen: seen(), label: labelOf(form, event.submitter), page: location.pathname, repeats: form.dataset.repeats !== undefined, secret });
  });

  // Which entry of its ticket was the last that the page shows: what another has changed since is told before it counts.
  const seen = () => {
    const last = main().querySelector("[data-seen]")?.dataset.seen;
    return last === undefined ? {} : { "x-seen": last };
  };

  async function send(entry) {
    const number = ++asked;
    sending += 1;
    unanswered = null;
    line.keep("");
    try {
      const answer = await line.ask(entry.action, { method: "POST", headers: { "x-in-place": "1", ...entry.seen }, body: new URLSearchParams(entry.body) });
      if (leadsToSignIn(answer.response)) { signInFor(entry); return; }
      take(answer, number, true);
      if (!answer.response.ok) keep(main().querySelector(".trouble"));
    } catch {
      unanswered = entry;
      line.keep(say("lost", { what: entry.label }), []);
      again = setTimeout(renew, 2000);
    } finally {
      sending -= 1;
      document.querySelectorAll("form[aria-busy]").forEach((form) => form.removeAttribute("aria-busy"));
      if (waiting) renew();
    }
  }

  // The desk is back: what says the same however often it is said is said again, all else is the seller's to decide.
  function repeat() {
    const entry = unanswered;
    if (!entry) return;
    unanswered = null;
    if (entry.repeats) { send(entry); return; }
    offer(entry, say("unsure", { what: entry.label }), say("again"));
  }

  function offer(entry, words, word) {
    line.keep(words, [
      // Whoever says so has looked again.
      [word, () => { line.keep(""); send({ ...entry, seen: seen() }); }],
      [say("leave"), () => line.keep("")],
    ]);
  }

  // The session has ended: what was entered waits in this window until the seller is back.
  function signInFor(entry) {
    if (!entry.secret) sessionStorage.setItem(NOT_ENTERED, JSON.stringify({ ...entry, since: Date.now() }));
    location.assign(`/sign-in?back=${encodeURI(location.pathname)}&lost=1`);
  }
  function notEntered() {
    const text = sessionStorage.getItem(NOT_ENTERED);
    if (!isLive || !text) return;
    sessionStorage.removeItem(NOT_ENTERED);
    const entry = JSON.parse(text);
    if (Date.now() - entry.since > 30 * 60000 || new URL(entry.action).origin !== location.origin) return;
    offer(entry, say("signedOut", { what: entry.label }), say("enter"));
  }

  // What went wrong stays readable although the page renews itself.
  function keep(words) {
    if (!words) return;
    words.dataset.until = String(Date.now() + 15000);
    words.scrollIntoView({ block: "center" });
  }
  addEventListener("popstate", () => location.reload());

  // ---- The check digit (Damm's method) is looked at before anything is sent. ----
  const DAMM = ["0317598642", "7092154863", "4206871359", "1750983426", "6123045978", "3674209581", "5869720134", "8945362017", "9438617205", "2581436790"];
  function numberIsGood(form) {
    const typed = form.querySelector("input[name=number]").value;
    // A scanner types the address that stands in a slip's code; the number is its end.
    const digits = typed.split("/").pop().replace(/[-\s.\u2011\u2013]/g, "");
    let words = "";
    if (!/^[0-9]{5}$/.test(digits)) words = say("fiveDigits");
    else if ([...digits].reduce((interim, digit) => DAMM[interim][digit], 0) != 0) {
      words = say("wrongDigit", { typed: typed.trim() });
    }
    const says = form.querySelector("[data-says]");
    says.textContent = words;
    says.hidden = words === "";
    return words === "";
  }

  // ---- A choice is sent as it is made; by the keyboard one passes other choices on the way, so there it is set by Enter. ----
  const byKey = new WeakSet();
  document.addEventListener("keydown", (event) => {
    const select = event.target.closest?.("select[data-submits]");
    if (!select) return;
    if (event.key === "Enter") { event.preventDefault(); if (select.form.dataset.pending !== undefined) select.form.requestSubmit(); }
    else if (event.key !== "Tab" && event.key !== "Shift") byKey.add(select);
  });
  document.addEventListener("pointerdown", (event) => byKey.delete(event.target.closest?.("select")));
  document.addEventListener("change", (event) => {
    const select = event.target;
    if (!select.matches("select[data-submits]")) return;
    if (byKey.has(select)) select.form.dataset.pending = ""; else select.form.requestSubmit();
  });

  // ---- Small things of single pages. ----
  // What was touched stands in the field at once: the next touch comes before the desk has answered.
  function chooseHome(field, button) {
    const homes = field.value.split(/[\s,;]+/).filter((home) => home !== "");
    if (button?.name === "add") homes.push(button.value);
    if (button?.name === "off") homes.splice(Number(button.value), 1);
    field.value = homes.join(" ");
  }
  // Keys for homes: a letter begins the next one, and what is rubbed out is the last sign.
  document.addEventListener("click", (event) => {
    const key = event.target.closest("[data-keypad] button");
    if (!key) return;
    const field = document.getElementById(key.parentElement.dataset.keypad);
    const sign = key.textContent.trim();
    if (key.dataset.key === "rub-out") field.value = field.value.trimEnd().slice(0, -1);
    else field.value += /[A-Z]/.test(sign) && field.value !== "" ? ` ${sign}` : sign;
  });
  function filter(input) {
    const words = input.value.trim().toLowerCase();
    document.querySelectorAll(input.dataset.filters).forEach((one) => { one.hidden = !one.dataset.words.toLowerCase().includes(words); });
    document.querySelectorAll(".choices").forEach((group) => { group.hidden = !group.querySelector("[data-words]:not([hidden])"); });
  }
  document.addEventListener("input", (event) => { if (event.target.matches("[data-filters]")) filter(event.target); });
  document.addEventListener("click", (event) => { if (event.target.closest("[data-prints]")) print(); });
  // The desk's clock counts: a phone's may be set to anything.
  const ahead = Date.now() - Date.parse(document.body.dataset.now);
  function tellTimes() {
    document.querySelectorAll("time").forEach((one) => {
      const minutes = Math.floor((Date.now() - ahead - Date.parse(one.dateTime)) / 60000);
      if (minutes < 0) return;
      const words = minutes < 1 ? say("justNow") : minutes < 60 ? say("minutes", { n: minutes }) : say("hours", { h: Math.floor(minutes / 60), n: minutes % 60 });
      if (one.textContent !== words) one.textContent = words;
    });
  }
  // What the desk does not say: it sends no fragment only because time has passed.
  function prepare() {
    tellTimes();
    document.querySelectorAll("[data-prints], [data-keypad], [data-strokes-form]").forEach((one) => { one.hidden = false; });
    document.querySelectorAll("[data-filters]").forEach((one) => { if (one.value) filter(one); });
  }
  setInterval(tellTimes, 20000);
  prepare();
  // Why something was refused, to which a browser without this file was led: the page that it belongs to follows.
  if (location.pathname.startsWith("/answers/")) keep(main().querySelector(".trouble"));
  notEntered();

  // ---- The desk says when something changed. One stream, and none while nobody looks. ----
  if (!isLive) return;
  const LOOK = 3000; // Milliseconds between looks at whether the desk is still there.
  const QUIET = 10000; // A desk that said nothing for so long is asked.
  let stream = null;
  let beat = null;
  let asking = false;
  function heard(number) {
    line.heard();
    // The first one too: something may have changed between the page and the first beat that it hears.
    if (beat !== number) renew();
    beat = number;
  }
  async function look() {
    if (leaving || document.hidden || asking || (line.quiet() < QUIET && !line.isSilent() && stream)) return;
    asking = true;
    try {
      const { response, text } = await line.ask("/events/now", { headers: { "x-live": "1" }, cache: "no-store" }, 4000);
      if (leadsToSignIn(response)) { if (!leaving) location.assign(`/sign-in?back=${encodeURI(location.pathname)}`); return; }
      if (!response.ok) return;
      heard(text);
      listen();
    } catch { /* It is told, and asked again soon. */ } finally { asking = false; }
  }
  function listen() {
    if (stream) return;
    stream = new EventSource(`/events?page=${encodeURIComponent(location.pathname)}`);
    stream.onmessage = (event) => heard(event.data);
    // A stream that the browser gave up is opened anew by the next look.
    stream.onerror = () => { if (stream && stream.readyState === EventSource.CLOSED) stream = null; };
  }
  function rest() {
    stream?.close();
    stream = null;
  }
  // Another page is open from now on.
  function listenAnew() {
    rest();
    listen();
  }
  setInterval(look, LOOK);
  document.addEventListener("visibilitychange", () => { if (document.hidden) rest(); else { listen(); renew(); } });
  addEventListener("pagehide", rest);
  addEventListener("pageshow", () => { leaving = false; if (!document.hidden) listen(); });
  listen();
})();
