// Makes the station answer fast. Without this file every scan is an ordinary form, and everything still works.
// Scans are sent one after the other, each with its own key: sent again after a lost network, it is still recorded once.
(() => {
  "use strict";
  const page = document.getElementById("station");
  const form = document.getElementById("scan-form");
  const box = document.getElementById("scan");
  const notice = document.getElementById("st-notice");
  const verdict = document.getElementById("st-verdict");
  const waitingKey = "station-waiting";
  const typedKey = "station-typed";
  const fastestHandMs = 35;
  const longestStutterMs = 150;
  const shortestScan = 4;
  const swapped = new Map();
  let waiting = read(waitingKey) || [];
  let typedFor = null;
  let unsent = "";
  let isBusy = false;
  let sound = null;

  const state = () => document.getElementById("st-state").dataset;
  const say = template => value => template.replace("{0}", value);

  function read(key) {
    try { return JSON.parse(sessionStorage.getItem(key)); } catch { return null; }
  }

  function keep(key, value) {
    try { sessionStorage.setItem(key, JSON.stringify(value)); } catch { /* a full or forbidden store loses only the comfort */ }
  }

  // Not crypto.randomUUID: a workshop's plain http address is no secure context.
  const newKey = () => Array.from(crypto.getRandomValues(new Uint8Array(16)), b => b.toString(16).padStart(2, "0")).join("");

  function focusBox() {
    if (document.activeElement === null || document.activeElement === document.body || document.activeElement.id === "main") box.focus();
  }

  // A PIN follows a badge, perhaps before the answer is here: nothing typed then may be seen or kept.
  const mayBePin = () => box.type === "password" || state().signed === "no";

  // What a scan answers: what this page shows, or, while a scan before it is on its way, what that one will leave. The service
  // refuses it when things stand otherwise.
  function answered() {
    if (waiting.length > 0) return { After: waiting[waiting.length - 1].key };
    return Object.fromEntries(["Part", "Attempt", "Prompt"].map(name => [name, form.elements[name].value]));
  }

  function take(text, answers, wasTyped) {
    waiting.push({ text, key: newKey(), answers, wasTyped, secret: mayBePin() });
    if (state().signed === "no") box.type = "password";
    keepWaiting();
    send();
  }

  function keepWaiting() { keep(waitingKey, waiting.filter(scan => !scan.secret)); }

  async function send() {
    if (isBusy) return;
    isBusy = true;
    for (let pause = 500; waiting.length > 0;) {
      const scan = waiting[0];
      let answer;
      try {
        answer = await post(scan);
      } catch {
        tell(say(page.dataset.offline)(waiting.length));
        await new Promise(done => setTimeout(done, pause));
        pause = Math.min(pause * 2, 8000);
        continue;
      }
      waiting.shift();
      keepWaiting();
      tell(unsent === "" ? "" : say(page.dataset.unsent)(unsent));
      unsent = "";
      if (answer === null) {
        giveBack(scan);
        break;
      }
      show(answer);
      if (state().severity !== "refused") continue;
      if (waiting.length > 0) dropWaiting();
      offerAgain(scan);
    }
    isBusy = false;
  }

  async function post(scan) {
    const body = new URLSearchParams({ Scan: scan.text, Key: scan.key, ...scan.answers, __RequestVerificationToken: form.elements.__RequestVerificationToken.value });
    const answer = await fetch(form.action, { method: "POST", body, headers: { Accept: "text/html" }, signal: AbortSignal.timeout(10000) });
    if (answer.status === 503 || answer.status === 502) throw new Error("not now");
    return answer.ok ? await answer.text() : null;
  }

  function giveBack(scan) {
    waiting = [];
    keepWaiting();
    if (!scan.secret && box.value === "") { box.value = scan.text; typedFor = scan.answers; }
    tell(page.dataset.failed);
    alarm();
  }

  // What was refused stands in the box to be looked at, and whatever is typed or scanned next takes its place.
  function offerAgain(scan) {
    if (scan.wasTyped && !scan.secret && !mayBePin() && box.value === "") { box.value = scan.text; typedFor = answered(); }
    box.select();
    judge();
    keepTyped();
  }

  // What was scanned ahead of a refusal was meant for a state that did not come.
  function dropWaiting() {
    const dropped = waiting.filter(scan => !scan.secret).map(scan => scan.text).join(", ");
    waiting = [];
    keepWaiting();
    tell(say(page.dataset.dropped)(dropped));
  }

  function show(html) {
    const next = new DOMParser().parseFromString(html, "text/html");
    if (next.getElementById("station") === null) { location.reload(); return; }
    for (const part of next.querySelectorAll("[data-swap]")) {
      if (swapped.get(part.id) === comparable(part)) continue;
      swapped.set(part.id, comparable(part));
      document.getElementById(part.id).replaceChildren(...document.importNode(part, true).childNodes);
    }
    document.querySelector(".masthead").replaceWith(document.importNode(next.querySelector(".masthead"), true));
    document.title = next.title;
    box.type = state().secret === "yes" ? "password" : "text";
    if (state().offered && box.value === "") { box.value = state().offered; box.select(); }
    judge();
    keepTyped();
    if (state().severity === "refused" || state().severity === "outside") alarm();
    focusBox();
  }

  // A file form that differs only in its key is left alone: somebody may be choosing a file in it.
  const comparable = part => part.id === "st-hidden" ? Math.random() : part.innerHTML.replace(/name="(Key|__RequestVerificationToken)"[^>]*value="[^"]*"/g, "");

  function tell(text) {
    notice.textContent = text;
    notice.hidden = text === "";
  }

  function alarm() {
    page.classList.remove("st-flash");
    void page.offsetWidth;
    page.classList.add("st-flash");
    try {
      sound ??= new AudioContext();
      const tone = sound.createOscillator();
      const volume = sound.createGain();
      tone.type = "square";
      tone.frequency.value = 196;
      volume.gain.setValueAtTime(0.08, sound.currentTime);
      volume.gain.exponentialRampToValueAtTime(0.001, sound.currentTime + 0.25);
      tone.connect(volume).connect(sound.destination);
      tone.start();
      tone.stop(sound.currentTime + 0.25);
    } catch { /* no loudspeaker: the flash is enough */ }
  }

  // A first word while typing; what counts is judged by the service.
  function judge() {
    const { lower, upper, band } = document.getElementById("st-limits").dataset;
    const typed = box.value.trim().replace("\u2212", "-");
    const isNumber = box.type === "text" && (lower || upper) && /^[+-]?(\d+([.,]\d+)?|[.,]\d+)(e[+-]?\d{1,2})?$/i.test(typed);
    const value = isNumber ? Number(typed.replace(",", ".")) : NaN;
    const isMet = isNumber && (!lower || value >= Number(lower)) && (!upper || value <= Number(upper));
    const isSure = isMet && (!lower || value >= Number(lower) + Number(band)) && (!upper || value <= Number(upper) - Number(band));
    verdict.dataset.met = !isNumber ? "" : isSure ? "yes" : isMet ? "near" : "no";
    verdict.textContent = !isNumber ? "" : isSure ? page.dataset.inside : isMet ? page.dataset.near : page.dataset.outside;
  }

  function keepTyped() { keep(typedKey, mayBePin() || box.value === "" ? null : { text: box.value, answers: typedFor }); }

  function put(text, answers) {
    box.value = text;
    typedFor = text === "" ? null : answers;
    judge();
    keepTyped();
  }

  form.addEventListener("submit", event => {
    event.preventDefault();
    const word = event.submitter && event.submitter.name === "Scan" ? event.submitter.value : null;
    take(word ?? box.value, word === null && typedFor || answered(), word === null);
    if (word === null) put("", null);
    box.focus();
  });
  box.addEventListener("input", () => { typedFor = box.value === "" ? null : typedFor ?? answered(); judge(); keepTyped(); });
  window.addEventListener("focus", focusBox);

  // A scanner types faster than a hand. Four characters and more within 35 ms of each other are a scan, whatever has the focus: they
  // go into the box alone, and the Enter or Tab that follows sends them. Any other key means what it means where the focus is. A
  // scanner that stutters once it is fast (radio, a busy machine) is still the same scan: half a code must not pass for a whole one.
  let burst = null;
  let endedAt = -Infinity;
  document.addEventListener("keydown", event => {
    if (event.isComposing || event.key === "Shift" || event.key === "AltGraph") return;
    const pause = burst === null ? Infinity : event.timeStamp - burst.at;
    const isFast = pause <= fastestHandMs;
    if (event.key === "Enter" || event.key === "Tab") {
      const isEnd = burst?.isScan && pause <= longestStutterMs;
      if (isEnd || event.timeStamp - endedAt <= fastestHandMs) {
        event.preventDefault();
        endedAt = event.timeStamp;
      }
      if (isEnd) sendBurst();
      burst = null;
      return;
    }
    const isCommand = (event.ctrlKey || event.altKey || event.metaKey) && !event.getModifierState("AltGraph");
    if (event.key.length !== 1 || event.repeat || isCommand) {
      if (!isFast || event.repeat) burst = null;
      return;
    }
    endedAt = -Infinity;
    const isStutter = !isFast && pause <= longestStutterMs && (burst.isScan || burst.quick >= 2);
    if (!isFast && !isStutter) burst = begin();
    burst.text += event.key;
    burst.at = event.timeStamp;
    burst.quick = isFast ? burst.quick + 1 : 1;
    if (!burst.isScan && burst.quick === shortestScan) recognise();
    if (burst.isScan) {
      event.preventDefault();
      put(burst.text, burst.answers);
      box.setSelectionRange(box.value.length, box.value.length);
    } else if (event.key === " " && isFast && !burst.isText) {
      event.preventDefault();
    }
  }, true);

  function begin() {
    if (!document.activeElement.matches("input, textarea, select, button, a, summary")) box.focus();
    const target = document.activeElement;
    const isText = target.matches("textarea, input:not([type=file], [type=radio], [type=checkbox])");
    const halfTyped = box.value.slice(0, box.selectionStart) + box.value.slice(box.selectionEnd);
    return { text: "", at: 0, quick: 0, isScan: false, answers: answered(), target, isText, value: target.value, halfTyped };
  }

  // The first characters went where the focus was; that is as it was before. What somebody had begun to type is told, not sent along.
  function recognise() {
    burst.isScan = true;
    if (burst.target !== box && (burst.isText || burst.target.matches("select"))) burst.target.value = burst.value;
    if (!mayBePin() && burst.halfTyped !== "") unsent = burst.halfTyped;
    box.focus();
  }

  function sendBurst() {
    take(burst.text, burst.answers, true);
    put("", null);
    box.focus();
  }

  // Files: drop them on their form, or paste a picture.
  const fileForm = target => target instanceof Element ? target.closest(".st-file") : null;
  function sendFiles(target, files) {
    const input = target.querySelector("input[type=file]");
    input.files = files;
    if (target.reportValidity()) target.requestSubmit();
  }
  document.addEventListener("dragover", event => {
    const target = fileForm(event.target);
    if (target) { event.preventDefault(); target.classList.add("st-drop"); }
  });
  document.addEventListener("dragleave", event => fileForm(event.target)?.classList.remove("st-drop"));
  document.addEventListener("drop", event => {
    const target = fileForm(event.target);
    if (!target) return;
    event.preventDefault();
    target.classList.remove("st-drop");
    if (event.dataTransfer.files.length > 0) sendFiles(target, event.dataTransfer.files);
  });
  document.addEventListener("paste", event => {
    const files = event.clipboardData ? event.clipboardData.files : [];
    if (files.length === 0) return;
    const kind = files[0].type.startsWith("image/") ? "[data-kind=photo]" : ":not([data-kind=photo])";
    const target = document.querySelector(".st-file" + kind);
    if (target) { event.preventDefault(); sendFiles(target, files); }
  });

  for (const part of document.querySelectorAll("[data-swap]")) swapped.set(part.id, comparable(part));
  const typed = read(typedKey);
  if (box.value === "" && !mayBePin() && typed?.text) { box.value = typed.text; typedFor = typed.answers; }
  judge();
  box.focus();
  if (waiting.length > 0) send();
})();
