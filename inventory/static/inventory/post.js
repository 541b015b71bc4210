// One line of the station on its way to the server: its key for life, and the answer that comes back.
"use strict";
window.capdatePost = (() => {
  const ANSWER_MS = 10000;

  // crypto.randomUUID is missing on plain HTTP; getRandomValues is not.
  function newKey() {
    const bytes = crypto.getRandomValues(new Uint8Array(16));
    bytes[6] = (bytes[6] & 0x0f) | 0x40;
    bytes[8] = (bytes[8] & 0x3f) | 0x80;
    const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
    return hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, "$1-$2-$3-$4-$5");
  }

  // Gives the new #station, or throws: with a status where the server answered something else, without one where it did not.
  async function send(bay, said) {
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

  return { newKey, send };
})();
