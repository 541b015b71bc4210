// The station's sounds: recorded is one short high tone, a question two equal ones, a stop a falling pair, repeated.
"use strict";
window.capdateSounds = (() => {
  const LOUD = 0.35;
  // [frequency in Hz, start and length in seconds]
  const TUNES = {
    heard: [[1200, 0, 0.03]],
    recorded: [[1760, 0, 0.14]],
    ask: [[880, 0, 0.16], [880, 0.26, 0.16]],
    stop: [[660, 0, 0.2], [330, 0.2, 0.28], [660, 0.6, 0.2], [330, 0.8, 0.28]],
  };
  const TUNE_OF = { recorded: "recorded", ready: "recorded", tell: "recorded", ask: "ask", unknown: "stop", stop: "stop" };
  let air = null;

  // A browser lets a page sound only after a key or a touch; the first scan is one.
  function wake() {
    const Context = window.AudioContext || window.webkitAudioContext;
    if (!air && Context) air = new Context();
    if (air && air.state === "suspended") air.resume();
  }

  function tone([hertz, start, length]) {
    const wave = air.createOscillator();
    const volume = air.createGain();
    const at = air.currentTime + start;
    wave.type = "square";
    wave.frequency.value = hertz;
    volume.gain.setValueAtTime(LOUD, at);
    volume.gain.exponentialRampToValueAtTime(0.001, at + length);
    wave.connect(volume).connect(air.destination);
    wave.start(at);
    wave.stop(at + length);
  }

  return {
    wake,
    tune: (grade) => TUNE_OF[grade] || grade,
    play(grade) {
      const name = TUNE_OF[grade] || grade;
      document.documentElement.dataset.sounded = name;
      if (air) TUNES[name].forEach(tone);
    },
  };
})();
