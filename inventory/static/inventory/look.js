// The chosen look (light, dark, bay or the system's own), kept in a cookie so that the server writes it on <html>,
// and the button that folds the sections on a phone.
"use strict";
document.documentElement.classList.add("js");

function choose(look) {
  const system = look === "system";
  document.cookie = `look=${look}; path=/; SameSite=Lax; max-age=31536000`;
  if (system) delete document.documentElement.dataset.look;
  else document.documentElement.dataset.look = look;
  mark();
}

function mark() {
  const now = document.documentElement.dataset.look || "system";
  for (const button of document.querySelectorAll("[data-choose-look]")) {
    button.setAttribute("aria-pressed", String(button.dataset.chooseLook === now));
  }
}

document.addEventListener("DOMContentLoaded", () => {
  for (const bar of document.querySelectorAll("[data-looks]")) bar.hidden = false;
  mark();
});

document.addEventListener("click", (event) => {
  const look = event.target.closest("[data-choose-look]");
  if (look) choose(look.dataset.chooseLook);
  const menu = event.target.closest(".menu");
  if (menu) menu.setAttribute("aria-expanded", String(menu.getAttribute("aria-expanded") !== "true"));
});

// A summary of errors takes the focus, so that a screen reader and a keyboard start there.
document.addEventListener("DOMContentLoaded", () => document.querySelector(".errors")?.focus());
