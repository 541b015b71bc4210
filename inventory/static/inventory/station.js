// The scan station: what is scanned or tapped waits in one queue, goes to the server in order, and comes back as an answer.
// A line carries its idempotency key for life, so that sending it again never records it twice.
"use strict";
(() => {
  const bay = document.querySelector(".bay");
  const typedPanel = document.querySelector("[data-typed]");
  const card = document.getElementById("emergency");
  const sounds = window.capdateSounds;
  const wedge = window.capdateWedge;
  const post = window.capdatePost;

  const KEPT = "capdate-unsent";
  const TWICE_MS = 2000;
  const LONGEST_WAIT_MS = 30000;
  // Our own codes of a bottle, place, job or person: the same one within two seconds is one scan, held too long.
  const OWN_THING = /^[BHJP][BCDEFGHJKLNPRSTVX]{7}$/;
  const COMMAND = /^(C[BCDEFGHJKLNPRSTVX]{7}|YES|NO|UNDO)$/;
  const HOLDS = ["stop", "unknown"];

  let queue = JSON.parse(localStorage.getItem(KEPT) || "[]");
  let sending = false;
  let failures = 0;
  // Why further scans wait: "answer" (a stop to be seen), "network" (the first line that could not be sent), or not.
  let holding = HOLDS.includes(station().dataset.grade) ? "answer" : "";
  let before = { line: "", at: -Infinity };
  let padOpen = false;

  function station() {
    return document.getElementById("station");
  }

  function keep() {
    localStorage.setItem(KEPT, JSON.stringify(queue));
    const unsent = station().querySelector("[data-unsent]");
    unsent.textContent = queue.length ? String(queue.length) : "none";
    unsent.toggleAttribute("data-some", queue.length > 0);
  }

  function heldTooLong(line) {
    return OWN_THING.test(plain(line)) && plain(line) === before.line && performance.now() - before.at < TWICE_MS;
  }

  // A command is printed as a code or typed as its word; the two that the page knows itself are one here.
  function plain(line) {
    const code = line.replace(/\s/g, "").toUpperCase();
    return { [bay.dataset.yes]: "YES", [bay.dataset.help]: "EMERGENCY" }[code] || code;
  }

  function offered(line) {
    return [...station().querySelectorAll("[data-line]")].some((key) => plain(key.dataset.line) === plain(line));
  }

  // While an answer waits to be seen, only a command or a word on a key gets through.
  function isCommand(line) {
    return offered(line) || COMMAND.test(plain(line));
  }

  function hear(line) {
    sounds.wake();
    if (plain(line) === "EMERGENCY") return openCard();
    if (heldTooLong(line)) return undefined;
    if (holding && !isCommand(line)) return refuse();
    // YES to an answer that asks nothing says no more than "seen".
    if (holding && plain(line) === "YES" && !offered(line)) return carryOn();
    before = { line: plain(line), at: performance.now() };
    sounds.play("heard");
    const said = { line, key: post.newKey(), at: new Date().toISOString() };
    // A command answers what is on screen, so it goes before scans that were made without seeing it.
    if (holding === "answer") queue.unshift(said);
    else queue.push(said);
    keep();
    if (holding) return carryOn();
    if (failures) tell(`Kept here, not sent: ${queue.length}.`);
    return send();
  }

  function refuse() {
    station().querySelector("[data-refused]").hidden = false;
    speak("stop", "That scan was not taken. Carry on first, then scan it again.");
  }

  function carryOn() {
    holding = "";
    for (const key of station().querySelectorAll("[data-carry-on]")) key.remove();
    station().querySelector("[data-refused]").hidden = true;
    send();
  }

  async function send() {
    if (sending || holding === "answer" || !queue.length) return;
    sending = true;
    const [first] = queue;
    if (!failures) wait(first.line);
    try {
      show(await post.send(bay, first));
      queue.shift();
      failures = 0;
    } catch (trouble) {
      fail(trouble);
    }
    sending = false;
    keep();
    if (failures) setTimeout(send, Math.min(1000 * 2 ** (failures - 1), LONGEST_WAIT_MS));
    else send();
  }

  // Nothing is green before the verdict, and no key answers a question that is no longer on screen.
  function wait(line) {
    station().classList.add("waiting");
    tell(`Heard ${line}.`);
    station().querySelector("[data-next]")?.remove();
    for (const key of station().querySelectorAll("[data-line]")) key.disabled = true;
  }

  function tell(says) {
    station().querySelector("[data-says]").textContent = says;
  }

  function show(fresh) {
    station().replaceWith(fresh);
    const grade = fresh.dataset.grade;
    holding = HOLDS.includes(grade) ? "answer" : "";
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
    holding = never ? "answer" : "network";
  }

  // An answer of this page's own, when the server has none to give.
  function local(grade, says, next) {
    station().classList.remove("waiting");
    const answer = station().querySelector(".answer");
    answer.className = `answer is-${grade}`;
    answer.querySelector(".icon").replaceWith(iconOf(grade));
    tell(says);
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
    typedPanel.toggleAttribute("data-pad", open);
    if (!open) wedge.clear();
    typedPanel.hidden = !open;
  }

  // A key whose line goes on: its beginning stands typed, the pad is open for the rest.
  function begin(line) {
    if (holding) carryOn();
    openPad(true);
    wedge.type(line.slice(0, -1));
  }

  const taps = {
    "[data-line]": (key) => (key.dataset.line.endsWith("…") ? begin(key.dataset.line) : hear(key.dataset.line)),
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
  // A bottle's own page hands its code on; a link from anywhere else is not a scan.
  function handedOn() {
    const line = new URLSearchParams(location.search).get("line");
    if (!line) return;
    history.replaceState(null, "", location.pathname);
    if (document.referrer.startsWith(`${location.origin}/`)) hear(line);
  }

  keep();
  send();
  handedOn();
})();
