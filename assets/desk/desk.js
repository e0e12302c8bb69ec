// Keeps an open page up to date and spares the seller waiting. Every page works without this file.
"use strict";
(() => {
  const root = document.documentElement;
  root.classList.add("script");
  const main = () => document.getElementById("main");

  // ---- One place changes the page: by the answer to a question or to a form. ----
  let shown = 0; // Number of the newest answer that is shown; an older one that comes late is thrown away.
  let asked = 0;
  let sending = 0;

  async function take(response, number, push) {
    if (response.redirected && new URL(response.url).pathname === "/sign-in") { location.assign("/sign-in"); return; }
    const text = await response.text();
    if (number < shown) return;
    const next = new DOMParser().parseFromString(text, "text/html");
    const fresh = next.getElementById("main");
    if (!fresh) return;
    shown = number;
    if (push && response.url !== location.href) {
      history.pushState(null, "", response.url);
      document.title = next.title;
    }
    const old = main();
    const told = old.querySelector(".trouble[data-until]");
    if (!push && told && Number(told.dataset.until) > Date.now() && !fresh.querySelector(".trouble:not([hidden])")) fresh.prepend(told.cloneNode(true));
    if (fresh.innerHTML === old.dataset.was && !push) return;
    const held = document.activeElement && old.contains(document.activeElement) ? pathTo(document.activeElement) : null;
    const open = [...old.querySelectorAll("details")].map((one) => one.open);
    const was = fresh.innerHTML;
    old.replaceWith(fresh);
    fresh.dataset.was = was;
    const again = [...fresh.querySelectorAll("details")];
    if (again.length === open.length) again.forEach((one, n) => { one.open = open[n]; });
    if (held) find(held)?.focus({ preventScroll: true });
    prepare();
  }

  // The form's address and the control's name tell it again on the fresh page.
  function pathTo(one) {
    const form = one.closest("form");
    const part = form?.querySelector("input[name=part], input[name=line]")?.value;
    return { id: one.id, action: form?.getAttribute("action"), part, name: one.getAttribute("name"), href: one.getAttribute("href") };
  }
  function find(held) {
    if (held.id) return document.getElementById(held.id);
    return [...main().querySelectorAll("button, a, input, select")].find((one) => {
      const path = pathTo(one);
      return path.action === held.action && path.part === held.part && path.name === held.name && path.href === held.href;
    });
  }

  const typing = () => {
    const one = document.activeElement;
    if (!one || !main().contains(one)) return false;
    if (one.tagName === "SELECT") return true;
    return one.tagName === "INPUT" && one.value !== one.defaultValue;
  };

  let waiting = false; // A change came while the seller was typing.
  async function renew() {
    if (document.body.dataset.live !== "yes" || document.hidden) return;
    if (typing() || sending > 0) { waiting = true; return; }
    waiting = false;
    const number = ++asked;
    try {
      const response = await fetch(location.href, { headers: { "x-live": "1" }, cache: "no-store" });
      if (sending > 0 || typing()) { waiting = true; return; }
      if (response.ok || response.redirected) await take(response, number, false);
    } catch { /* The desk is away; the stream says when it is back. */ }
  }
  document.addEventListener("focusout", () => setTimeout(() => { if (waiting) renew(); }, 0));

  // ---- Forms are sent in place, so that the page keeps where the seller was. ----
  document.addEventListener("submit", (event) => {
    const form = event.target;
    if (form.matches("[data-check-number]") && !numberIsGood(form)) { event.preventDefault(); return; }
    if (document.body.dataset.live !== "yes" || form.method !== "post" || !main().contains(form)) return;
    event.preventDefault();
    const body = new URLSearchParams(new FormData(form, event.submitter));
    const number = ++asked;
    sending += 1;
    form.setAttribute("aria-busy", "true");
    fetch(form.action, { method: "POST", body })
      .then((response) => {
        const same = new URL(response.url).pathname === location.pathname || !response.redirected;
        return take(response, number, !same).then(() => {
          if (!same) scrollTo(0, 0);
          if (!response.ok) keep(main().querySelector(".trouble"));
        });
      })
      .catch(() => {
        form.removeAttribute("aria-busy");
        const words = document.createElement("p");
        words.className = "trouble";
        words.setAttribute("role", "alert");
        words.textContent = "The desk did not answer. Look whether it was done before you repeat it.";
        main().querySelector(".trouble[data-until]")?.remove();
        main().prepend(words);
        keep(words);
      })
      .finally(() => { sending -= 1; if (waiting) renew(); });
  });
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
    const digits = typed.replace(/[-\s.\u2011\u2013]/g, "");
    let words = "";
    if (!/^[0-9]{5}$/.test(digits)) words = "A ticket number has five digits, as in 3-042-6.";
    else if ([...digits].reduce((interim, digit) => DAMM[interim][digit], 0) != 0) {
      words = `${typed.trim()} is not a ticket number: one digit is wrong or two are swapped; look at the ticket again.`;
    }
    const says = form.querySelector("[data-says]");
    says.textContent = words;
    says.hidden = words === "";
    return words === "";
  }

  // ---- Small things of single pages. ----
  function filter(input) {
    const words = input.value.trim().toLowerCase();
    document.querySelectorAll(input.dataset.filters).forEach((one) => { one.hidden = !one.dataset.words.toLowerCase().includes(words); });
    document.querySelectorAll(".choices").forEach((group) => { group.hidden = !group.querySelector("[data-words]:not([hidden])"); });
  }
  document.addEventListener("input", (event) => { if (event.target.matches("[data-filters]")) filter(event.target); });
  document.addEventListener("change", (event) => { if (event.target.matches("select[data-submits]")) { event.target.form.requestSubmit(); event.target.blur(); } });
  document.addEventListener("click", (event) => { if (event.target.closest("[data-prints]")) print(); });
  // The desk's clock counts: a phone's may be set to anything.
  const ahead = Date.now() - Date.parse(document.body.dataset.now);
  function tellTimes() {
    document.querySelectorAll("time").forEach((one) => {
      const minutes = Math.floor((Date.now() - ahead - Date.parse(one.dateTime)) / 60000);
      if (minutes >= 0 && minutes < 60 * 24) {
        one.textContent = minutes < 1 ? "just now" : minutes < 60 ? `${minutes} min ago` : `${Math.floor(minutes / 60)} h ${minutes % 60} min ago`;
      }
    });
  }
  function prepare() {
    document.querySelectorAll("[data-prints]").forEach((one) => { one.hidden = false; });
    document.querySelectorAll("[data-filters]").forEach((one) => { if (one.value) filter(one); });
  }
  setInterval(tellTimes, 20000);
  if (main()) main().dataset.was = main().innerHTML;
  prepare();

  // ---- The desk says when something changed. One stream, and none while nobody looks. ----
  if (document.body.dataset.live !== "yes") return;
  let stream = null;
  let beat = null;
  let poll = null;
  function heard(number) {
    if (beat !== null && beat !== number) renew();
    beat = number;
  }
  async function ask() {
    try {
      const response = await fetch("/events/now", { headers: { "x-live": "1" }, cache: "no-store" });
      if (response.redirected) { location.assign("/sign-in"); return; }
      if (!response.ok) return;
      heard(await response.text());
      listen();
    } catch { /* Asked again soon. */ }
  }
  function listen() {
    if (stream) return;
    stream = new EventSource("/events");
    stream.onmessage = (event) => { clearInterval(poll); poll = null; heard(event.data); };
    stream.onerror = () => {
      if (!poll) poll = setInterval(ask, 3000);
      // A stream that the browser gave up is opened anew by the next look at the page.
      if (stream && stream.readyState === EventSource.CLOSED) { stream = null; }
    };
  }
  function rest() {
    stream?.close();
    stream = null;
    clearInterval(poll);
    poll = null;
  }
  document.addEventListener("visibilitychange", () => { if (document.hidden) rest(); else { listen(); renew(); } });
  addEventListener("pagehide", rest);
  addEventListener("pageshow", () => { if (!document.hidden) listen(); });
  listen();
})();
