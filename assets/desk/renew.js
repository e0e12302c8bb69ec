// Makes a part of the page say what a fresh one says, and leaves everything that is the same in its place: what has the
// focus keeps it, what lies under a finger stays there, what is being typed stays typed.
"use strict";
const renewTree = (() => {
  // What a page notes on its own elements; a fresh page knows nothing of it.
  const OWN = ["data-pending", "aria-busy", "data-until", "style", "tabindex", "open"];

  // Who an element is. What acts is only ever the same if it does the same; after an own act a switch is still the switch.
  function identity(one, own) {
    if (one.nodeType !== Node.ELEMENT_NODE) return `#${one.nodeType}`;
    const tag = one.tagName;
    if (one.id) return `#${one.id}`;
    if (one.dataset.key) return `${tag}~${one.dataset.key}`;
    switch (tag) {
      case "A": return `A ${one.getAttribute("href")}`;
      case "FORM": return `FORM ${one.getAttribute("action")} ${one.querySelector("input[name=part], input[name=line]")?.value ?? ""}`;
      case "BUTTON": return own && one.dataset.switch !== undefined ? `BUTTON ${one.name}` : `BUTTON ${one.name}=${one.value}`;
      case "INPUT": case "SELECT": return `${tag} ${one.name}`;
      case "OPTION": return `OPTION ${one.value}`;
      case "LI": { const link = one.querySelector("a[href], form[action]"); return `LI ${link ? identity(link, own) : one.className}`; }
      case "SECTION": return `SECTION ${one.getAttribute("aria-label") ?? one.className}`;
      default: return `${tag}.${one.getAttribute("class") ?? ""}`;
    }
  }

  function attributes(old, fresh) {
    for (const { name } of [...old.attributes]) if (!OWN.includes(name) && !fresh.hasAttribute(name)) old.removeAttribute(name);
    for (const { name, value } of fresh.attributes) if (!OWN.includes(name) && old.getAttribute(name) !== value) old.setAttribute(name, value);
  }

  const isTyped = (one) => one.tagName === "INPUT" && one.type !== "hidden" && one.value !== one.defaultValue;

  // A choice that is not sent yet is as good as what was typed. What sends itself once it is chosen shows what the desk knows.
  const isChosen = (one) => one.tagName === "SELECT" && one.dataset.submits === undefined
    && one.value !== ([...one.options].find((option) => option.defaultSelected) ?? one.options[0])?.value;

  function element(old, fresh, own) {
    // A PIN that was just sent is typed anew, whatever became of it.
    const typed = isTyped(old) && !(own && old.type === "password");
    const chosen = old.tagName === "SELECT" && (old.form?.dataset.pending !== undefined || (!own && isChosen(old)));
    const value = old.value;
    attributes(old, fresh);
    children(old, fresh, own);
    if (old.tagName === "INPUT" && !typed) old.value = fresh.defaultValue;
    if (old.tagName === "SELECT") {
      // A list that is open just now is closed by being set, even to what it is.
      const wanted = chosen && [...old.options].some((option) => option.value === value) ? value : fresh.value;
      if (old.value !== wanted) old.value = wanted;
    }
  }

  function children(old, fresh, own) {
    const known = new Map();
    for (const one of old.childNodes) {
      const who = identity(one, own);
      if (!known.has(who)) known.set(who, []);
      known.get(who).push(one);
    }
    const wanted = [...fresh.childNodes].map((one) => [known.get(identity(one, own))?.shift(), one]);
    const kept = new Set(wanted.map(([before]) => before));
    for (const one of [...old.childNodes]) if (!kept.has(one)) one.remove();
    let at = old.firstChild;
    for (const [before, one] of wanted) {
      if (!before) { old.insertBefore(document.importNode(one, true), at); continue; }
      if (before === at) at = at.nextSibling; else old.insertBefore(before, at);
      if (before.nodeType === Node.ELEMENT_NODE) element(before, one, own);
      else if (before.nodeValue !== one.nodeValue) before.nodeValue = one.nodeValue;
    }
  }

  return (old, fresh, own) => {
    const held = document.activeElement;
    attributes(old, fresh);
    children(old, fresh, own);
    if (!held || held === document.body || held === document.activeElement) return;
    // Moved within its list it is still the same; where it is gone, nothing that acts gets the focus.
    if (held.isConnected) held.focus({ preventScroll: true });
    else { old.tabIndex = -1; old.focus({ preventScroll: true }); }
  };
})();
