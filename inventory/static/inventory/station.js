// The scan station: what is scanned or tapped waits in one queue, goes to the server in order, and comes back as an answer.
// A line carries its idempotency key for life, so that sending it again never records it twice.
"use strict";
(() => {
  const bay = document.querySelector(".bay");
  const typedPanel = document.querySelector("[data-typed]");
  const card = document.getElementById("emergency");
  const sounds = window.capdateSounds;
  const wedge = window.capdateWedge;

  const KEPT = "capdate-unsent";
  const TWICE_MS = 2000;
  const ANSWER_MS = 10000;
  const LONGEST_WAIT_MS = 30000;
  // Our own codes of a bottle, place, job or person: the same one within two seconds is one scan, held too long.
  const OWN_THING = /^[BHJP][BCDEFGHJKLNPRSTVX]{7}$/;
  const HOLDS = ["stop", "unknown"];

  let queue = JSON.parse(localStorage.getItem(KEPT) || "[]");
  let sending = false;
  let failures = 0;
  let holding = HOLDS.includes(station().dataset.grade);
  let before = { line: "", at: -Infinity };
  let padOpen = false;

  function station() {
    return document.getElementById("station");
  }

  // crypto.randomUUID is missing on plain HTTP; getRandomValues is not.
  function newKey() {
    const bytes = crypto.getRandomValues(new Uint8Array(16));
    bytes[6] = (bytes[6] & 0x0f) | 0x40;
    bytes[8] = (bytes[8] & 0x3f) | 0x80;
    const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
    return hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, "$1-$2-$3-$4-$5");
  }

  function keep() {
    localStorage.setItem(KEPT, JSON.stringify(queue));
    const unsent = station().querySelector("[data-unsent]");
    unsent.textContent = queue.length ? String(queue.length) : "none";
    unsent.toggleAttribute("data-some", queue.length > 0);
  }

  function heldTooLong(line) {
    const now = performance.now();
    const code = line.replace(/\s/g, "").toUpperCase();
    const twice = OWN_THING.test(code) && code === before.line && now - before.at < TWICE_MS;
    before = { line: code, at: now };
    return twice;
  }

  // While an answer waits to be seen, only a command gets through: one of the keys on screen, or a word.
  function isCommand(line) {
    const offered = [...station().querySelectorAll("[data-line]")].some((key) => sameLine(key.dataset.line, line));
    return offered || /^K[BCDEFGHJKLNPRSTVX]{7}$/i.test(line.replace(/\s/g, "")) || /^(yes|no|undo|emergency)$/i.test(line);
  }

  function sameLine(one, other) {
    return one.trim().toUpperCase() === other.trim().toUpperCase();
  }

  function hear(line) {
    sounds.wake();
    if (/^emergency$/i.test(line)) return openCard();
    if (heldTooLong(line)) return undefined;
    if (holding && !isCommand(line)) return refuse();
    const only = holding && /^yes$/i.test(line) && !station().querySelector('[data-line="YES" i]');
    if (holding) carryOn();
    if (only) return undefined;
    sounds.play("heard");
    queue.push({ line, key: newKey(), at: new Date().toISOString() });
    keep();
    return send();
  }

  function refuse() {
    station().querySelector("[data-refused]").hidden = false;
    speak("stop", "That scan was not taken. Carry on first, then scan it again.");
  }

  function carryOn() {
    holding = false;
    for (const key of station().querySelectorAll("[data-carry-on]")) key.remove();
    station().querySelector("[data-refused]").hidden = true;
    send();
  }

  async function send() {
    if (sending || holding || !queue.length) return;
    sending = true;
    const [first] = queue;
    station().classList.add("waiting");
    try {
      show(await post(first));
      queue.shift();
      failures = 0;
    } catch (trouble) {
      if (trouble.drop) queue.shift();
      fail(trouble);
    }
    station().classList.remove("waiting");
    sending = false;
    keep();
    if (failures) setTimeout(send, Math.min(1000 * 2 ** (failures - 1), LONGEST_WAIT_MS));
    else send();
  }

  async function post(said) {
    const patience = new AbortController();
    const timer = setTimeout(() => patience.abort(), ANSWER_MS);
    try {
      const answer = await fetch(bay.dataset.say, {
        method: "POST",
        body: new URLSearchParams(said),
        headers: { "X-CSRFToken": bay.querySelector("[name=csrfmiddlewaretoken]").value, "HX-Request": "true" },
        credentials: "same-origin",
        signal: patience.signal,
      });
      const page = document.createElement("template");
      page.innerHTML = await answer.text();
      const fresh = page.content.querySelector("#station");
      if (fresh) return fresh;
      throw Object.assign(new Error(), { status: answer.redirected ? 403 : answer.status });
    } finally {
      clearTimeout(timer);
    }
  }

  function show(fresh) {
    station().replaceWith(fresh);
    const grade = fresh.dataset.grade;
    holding = HOLDS.includes(grade);
    if (fresh.dataset.opens === "emergency") openCard();
    speak(grade, fresh.querySelector("[data-says]").textContent);
  }

  // A line that cannot be sent stays in the queue, except one that the server will never take.
  function fail(trouble) {
    const never = [400, 413, 422].includes(trouble.status);
    if (never) queue.shift();
    else failures += 1;
    if (failures > 1) return;
    const away = trouble.status === 401 || trouble.status === 403;
    const says = never
      ? "The server would not take that scan."
      : away
        ? "The server does not know this station any more."
        : "Not sent: the server does not answer.";
    const next = never
      ? "Scan it again. If it happens twice, type the code and tell the owner."
      : away
        ? "It is kept here. Sign in again on this screen and it is sent."
        : "It is kept here and goes by itself when the network is back. Nothing is recorded before that.";
    local("stop", says, next);
  }

  // An answer of this page's own, when the server has none to give.
  function local(grade, says, next) {
    const answer = station().querySelector(".answer");
    answer.className = `answer is-${grade}`;
    answer.querySelector(".icon").replaceWith(iconOf(grade));
    answer.querySelector("[data-says]").textContent = says;
    let line = answer.querySelector("[data-next]");
    if (!line) {
      line = document.createElement("p");
      line.dataset.next = "";
      answer.querySelector("[data-says]").after(line);
    }
    line.textContent = next;
    for (const key of station().querySelectorAll("[data-line], [data-carry-on]")) key.remove();
    const key = Object.assign(document.createElement("button"), { type: "button", className: "key main", textContent: "Carry on" });
    key.dataset.carryOn = "";
    station().querySelector(".keys").prepend(key);
    holding = true;
    speak(grade, `${says} ${next}`);
  }

  function iconOf(grade) {
    return document.querySelector(`template[data-icon="${grade}"]`).content.firstElementChild.cloneNode(true);
  }

  function speak(grade, says) {
    sounds.play(grade);
    document.querySelector("[data-spoken]").textContent = `${grade === "tell" ? "note" : grade}: ${says}`;
  }

  function openCard() {
    if (!card.open) card.showModal();
  }

  function openPad(open) {
    padOpen = open;
    if (!open) wedge.clear();
    typedPanel.hidden = !open;
  }

  const taps = {
    "[data-line]": (key) => hear(key.dataset.line),
    "[data-carry-on]": carryOn,
    "[data-type-in]": () => openPad(!padOpen),
    "[data-emergency]": openCard,
    "[data-emergency-away]": () => card.close(),
    "[data-sign]": (key) => wedge.type(key.dataset.sign),
    "[data-rub]": () => wedge.rub(),
    "[data-typed-away]": () => openPad(false),
    "[data-typed-say]": () => wedge.say(),
  };

  document.addEventListener("click", (event) => {
    sounds.wake();
    for (const [what, does] of Object.entries(taps)) {
      const key = event.target.closest(what);
      if (key) return does(key);
    }
    return undefined;
  });

  wedge.listen({
    scan(line, scanned) {
      if (!scanned) openPad(false);
      hear(line);
    },
    typing(text) {
      typedPanel.querySelector("[data-typed-line]").textContent = text;
      typedPanel.hidden = !(text || padOpen);
    },
    enter() {
      if (holding) carryOn();
      return true;
    },
    escape() {
      if (card.open || !holding) return false;
      carryOn();
      return true;
    },
  });
  window.addEventListener("online", send);
  keep();
  send();
})();
