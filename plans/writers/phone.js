"use strict";
(() => {
  const find = (id) => document.getElementById(id);
  const screens = Array.from(document.querySelectorAll("main > section"));
  const ticks = Array.from(document.querySelectorAll("main input"));
  const store = "setout " + document.documentElement.dataset.plan;
  const FAT_FINGER = 400; // milliseconds within which a second touch is the same finger

  // What is remembered: the screen, the last screen of every place, and what is ticked.
  const read = () => {
    try {
      const found = JSON.parse(localStorage.getItem(store));
      if (found && typeof found === "object") {
        return { screen: found.screen, places: found.places || {}, ticks: found.ticks || [] };
      }
    } catch (_) { /* nothing can be remembered here, or nothing sensible stood there */ }
    return { screen: "", places: {}, ticks: [] };
  };
  const kept = read();
  const write = () => {
    try {
      localStorage.setItem(store, JSON.stringify(kept));
    } catch (_) {
      find("forgets").hidden = false;
    }
  };

  const number = (key) => screens.findIndex((screen) => screen.id === key);
  let at = Math.max(0, number(kept.screen));

  const show = (next) => {
    at = Math.min(Math.max(0, next), screens.length - 1);
    const screen = screens[at];
    screens.forEach((other) => { other.hidden = other !== screen; });
    find("title").textContent = screen.dataset.title;
    find("count").textContent = screen.dataset.count;
    find("undo").disabled = at === 0;
    find("next").disabled = at === screens.length - 1;
    document.querySelector("main").scrollTop = 0;
    kept.screen = screen.id;
    kept.places[screen.dataset.place] = screen.id;
    write();
  };

  let touched = -FAT_FINGER;
  const onTouch = (button, act) => button.addEventListener("click", (event) => {
    if (event.timeStamp - touched < FAT_FINGER) return;
    touched = event.timeStamp;
    act();
  });

  const openPlaces = (isOpen) => { find("places").hidden = !isOpen; };
  onTouch(find("next"), () => show(at + 1));
  onTouch(find("undo"), () => show(at - 1));
  onTouch(find("where"), () => openPlaces(true));
  onTouch(find("close"), () => openPlaces(false));
  document.querySelectorAll("#places [data-to]").forEach((button) => onTouch(button, () => {
    const last = number(kept.places[button.dataset.to]);
    show(last < 0 ? number(button.dataset.to) : last);
    openPlaces(false);
  }));
  ticks.forEach((tick) => {
    tick.checked = kept.ticks.includes(tick.id);
    tick.addEventListener("change", () => {
      kept.ticks = ticks.filter((other) => other.checked).map((other) => other.id);
      write();
    });
  });

  // The screen stays on where the browser offers it; where it does not, nothing is lost.
  let awake = null;
  const stayAwake = () => {
    if (document.visibilityState !== "visible" || !navigator.wakeLock) return;
    if (awake && !awake.released) return;
    navigator.wakeLock.request("screen").then((lock) => { awake = lock; }, () => {});
  };
  document.addEventListener("visibilitychange", stayAwake);
  document.addEventListener("click", stayAwake);
  stayAwake();

  find("head").hidden = false;
  find("foot").hidden = false;
  document.body.classList.add("live");
  show(at);
})();
