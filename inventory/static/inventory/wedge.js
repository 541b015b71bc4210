// A scanner that types like a keyboard, caught at document level: what it types never lands in a field.
// A fast burst ended by Enter or Tab is a scan; anything slower is a person's typing and goes to the line that is ours.
"use strict";
window.capdateWedge = (() => {
  // Scanners send a character every 1-20 ms, people hardly below 60 (common practice, no source).
  const FAST_MS = 50;
  // Longer than a scanner ever waits inside a line, shorter than a hand takes from the keyboard to the scanner.
  const PAUSE_MS = 300;
  const SHOWN_MS = 80;
  const SHORTEST_SCAN = 3;
  // A scanner set to end with CR LF sends a second Enter: it is the same scan's.
  const SAME_ENTER_MS = 300;
  const GROUP_SEPARATOR = "\u001d";
  // On a layout with dead keys the sign itself never arrives; this is what stands on that key.
  const DEAD = { Quote: "'", Backquote: "`", BracketLeft: "^", Digit6: "^", Equal: "´", BracketRight: "¨" };

  // `typed` is a person's, `burst` what came since the last pause, `gaps` the milliseconds between its characters.
  let typed = "";
  let burst = "";
  let gaps = [];
  let lastAt = -Infinity;
  let endedAt = -Infinity;
  let timer = 0;
  let heard = { scan() {}, typing() {}, enter() { return false; }, escape() { return false; } };

  function show() {
    clearTimeout(timer);
    timer = setTimeout(() => heard.typing(typed + burst), SHOWN_MS);
  }

  function add(sign, at) {
    if (at - lastAt > PAUSE_MS) settle();
    else gaps.push(at - lastAt);
    burst += sign;
    lastAt = at;
    show();
  }

  function settle() {
    typed += burst;
    burst = "";
    gaps = [];
  }

  // The middle gap counts, so that one hiccup of a radio scanner does not cut its line in two.
  function isScan(at) {
    const middle = [...gaps].sort((one, other) => one - other)[gaps.length >> 1];
    return burst.length >= SHORTEST_SCAN && middle <= FAST_MS && at - lastAt <= PAUSE_MS;
  }

  function signOf(event) {
    const altGr = event.getModifierState("AltGraph") || (event.ctrlKey && event.altKey);
    if (event.ctrlKey && !event.altKey && (event.key === "]" || event.key === GROUP_SEPARATOR || event.code === "BracketRight")) {
      return GROUP_SEPARATOR;
    }
    if (event.key === GROUP_SEPARATOR) return GROUP_SEPARATOR;
    if (event.metaKey || ((event.ctrlKey || event.altKey) && !altGr)) return "";
    if (event.key === "Dead") return DEAD[event.code] || "";
    return [...event.key].length === 1 ? event.key : "";
  }

  function end(at) {
    const scan = isScan(at);
    const line = scan ? burst : typed + burst;
    if (!scan) typed = "";
    burst = "";
    gaps = [];
    endedAt = at;
    clearTimeout(timer);
    heard.typing(typed);
    if (line.trim()) heard.scan(line.trim(), scan);
  }

  function rub() {
    settle();
    typed = [...typed].slice(0, -1).join("");
    heard.typing(typed);
  }

  function clear() {
    settle();
    typed = "";
    clearTimeout(timer);
    heard.typing("");
  }

  // Keys that are ours go no further; all others (Tab through the keys, browser shortcuts) stay the browser's.
  function key(event) {
    if (event.isComposing) return;
    const at = event.timeStamp;
    const something = typed + burst !== "";
    const onKey = event.target instanceof Element && event.target.closest("button, a, summary");
    let ours = false;
    if (event.key === "Enter" || (event.key === "Tab" && isScan(at))) {
      ours = something || at - endedAt < SAME_ENTER_MS;
      if (something) end(at);
      else if (!ours && !onKey) ours = heard.enter();
    } else if (event.key === "Escape") {
      ours = something || heard.escape();
      if (something) clear();
    } else if (event.key === "Backspace") {
      ours = true;
      rub();
    } else if (event.key === " " && onKey && !something) {
      ours = false;
    } else {
      const sign = signOf(event);
      ours = sign !== "";
      // A key held down repeats as fast as a scanner types; only its first press counts.
      if (sign && !event.repeat) add(sign, at);
    }
    if (ours) {
      event.preventDefault();
      event.stopPropagation();
    }
  }

  return {
    listen(handlers) {
      heard = { ...heard, ...handlers };
      document.addEventListener("keydown", key, true);
    },
    type(text) {
      settle();
      typed += text;
      heard.typing(typed);
    },
    rub,
    clear,
    say() {
      settle();
      end(performance.now());
    },
  };
})();
