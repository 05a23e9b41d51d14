"use strict";
(() => {
  const main = document.querySelector("main[data-sheet]");
  const boxes = [...main.querySelectorAll("input[data-tick]")];
  const notes = [...main.querySelectorAll("textarea[data-note]")];
  const said = document.getElementById("kept");
  const place = "sizekeeper:" + main.dataset.sheet;

  // What this browser lets a page keep is found out by keeping something and reading it back.
  const keeps = (name) => {
    try {
      const store = window[name];
      store.setItem(place + ":try", "1");
      const kept = store.getItem(place + ":try") === "1";
      store.removeItem(place + ":try");
      return kept ? store : null;
    } catch {
      return null;
    }
  };
  const WORDS = {
    lasting: "Ticks and notes are kept on this device, in this browser. A private window forgets them when it is closed.",
    session: "Ticks and notes are kept until this page is closed: this browser keeps nothing longer here.",
    none: "Ticks and notes are not kept: they are gone when this page is closed or loaded again.",
    failed: "What was ticked or written last could not be kept: this browser has no room for it.",
  };
  const lasting = keeps("localStorage");
  const store = lasting || keeps("sessionStorage");
  const usual = lasting ? "lasting" : store ? "session" : "none";
  const say = (what) => {
    if (said && said.textContent !== WORDS[what]) said.textContent = WORDS[what];
  };

  const read = () => {
    try {
      const kept = JSON.parse(store.getItem(place));
      return { ticks: { ...kept.ticks }, notes: { ...kept.notes } };
    } catch {
      return { ticks: {}, notes: {} };
    }
  };
  const keep = (part, key, value) => {
    if (!store) return;
    const kept = read();
    kept[part][key] = value;
    try {
      store.setItem(place, JSON.stringify(kept));
      say(usual);
    } catch {
      say("failed");
    }
  };
  const count = () => {
    for (const line of main.querySelectorAll(".count")) {
      const inside = [...line.closest("section").querySelectorAll("input[data-tick]")];
      line.textContent = `${inside.filter((box) => box.checked).length} of ${inside.length} done`;
      line.hidden = false;
    }
  };
  const show = () => {
    const kept = store ? read() : { ticks: {}, notes: {} };
    for (const box of boxes) {
      const tick = kept.ticks[box.dataset.tick];
      box.checked = typeof tick === "boolean" ? tick : box.defaultChecked;
    }
    for (const note of notes) {
      const text = kept.notes[note.dataset.note];
      note.value = typeof text === "string" ? text : note.defaultValue;
    }
    count();
  };

  for (const box of boxes) {
    box.addEventListener("change", () => {
      keep("ticks", box.dataset.tick, box.checked);
      count();
    });
  }
  for (const note of notes) note.addEventListener("input", () => keep("notes", note.dataset.note, note.value));
  window.addEventListener("storage", (event) => {
    if (event.key === place || event.key === null) show();
  });
  show();
  say(usual);

  // The size to cut comes into view beside the names.
  const chosen = main.querySelector("thead th.chosen");
  if (chosen) {
    const box = chosen.closest(".scroll");
    const names = box.querySelector("th").offsetWidth;
    box.scrollLeft = chosen.offsetLeft - names - (box.clientWidth - names - chosen.offsetWidth) / 2;
  }
})();
