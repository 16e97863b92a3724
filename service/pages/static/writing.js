// A digest saved as it is typed, its parts reshaped without a reload. Whatever fails falls back
// to the form's own buttons, which do the same.

import { placeOnTheLine } from "./placing.js";

const PAUSE = 1000; // milliseconds without a key after which what is typed is saved
const AGAIN = 5000; // and after which it is tried again where the library could not be reached

const form = document.querySelector("[data-draft]");
const saved = document.querySelector("#saved");
const heard = document.querySelector("#heard");
let unsaved = 0; // counts the changes, so that those made while one saving is under way are seen
let sent = 0;
let underWay = 0;
let contested = false;
let reshaping = false;
let leaving = false;
let timer;

const revision = () => form.elements.namedItem("revision");
const field = (name) => form.elements.namedItem(name);

function say(words, listener = saved) {
  if (listener.textContent !== words) listener.textContent = words;
}

function body(extra) {
  const fields = new URLSearchParams(new FormData(form));
  for (const [name, value] of Object.entries(extra)) fields.set(name, value);
  return fields;
}

async function send(extra, options = {}) {
  const response = await fetch(form.action, {
    method: "POST",
    body: body(extra),
    headers: { Accept: "text/html" },
    ...options,
  });
  const type = response.headers.get("Content-Type") ?? "";
  if (!type.startsWith("text/html")) throw new Error("not a page");
  const page = new DOMParser().parseFromString(await response.text(), "text/html");
  if (!page.querySelector("[data-draft]")) throw new Error("not a draft");
  return { response, page };
}

// What is said beside the parts, the measure and the line follow what is typed; nothing that
// the reader is in is taken from under them.
function refresh(page) {
  for (const fresh of page.querySelectorAll("[data-live]")) {
    const old = document.getElementById(fresh.id);
    if (!old || old.contains(document.activeElement) || old.matches(".dragging")) continue;
    old.replaceWith(document.adoptNode(fresh));
  }
  for (const fresh of page.querySelectorAll("select[name$='-after']")) {
    const old = field(fresh.name);
    if (!old || old === document.activeElement) continue;
    const chosen = old.value;
    old.replaceChildren(...fresh.children);
    old.value = chosen;
  }
  const over = document.querySelector("#measures").dataset.over;
  if (over !== heard.dataset.over) say(over || "Both pages fit.", heard);
  heard.dataset.over = over;
  enhance();
}

function took(page) {
  revision().value = Math.max(revision().value, page.querySelector("[name=revision]").value);
  say(page.querySelector("#saved").textContent);
  history.replaceState(null, "", form.action);
}

// The draft was changed elsewhere: both are offered, and nothing more is sent unasked.
function contest(page) {
  contested = true;
  const fresh = document.adoptNode(page.querySelector("#contested"));
  const told = fresh.querySelector("[role=alert]");
  told?.removeAttribute("autofocus");
  document.querySelector("#contested").replaceWith(fresh);
  told?.scrollIntoView({ block: "center" });
  say("Not saved: it was changed elsewhere.");
}

async function save(options = {}) {
  clearTimeout(timer);
  if (sent === unsaved || contested) return;
  const now = unsaved;
  const ahead = underWay;
  const from = Number(revision().value) + ahead;
  let wait = PAUSE;
  sent = now;
  underWay += 1;
  try {
    // One that overtakes another says so: it goes on from what that one leaves.
    const { response, page } = await send(
      { do: "live", revision: from },
      { keepalive: true, ...options },
    );
    if (response.status === 409) {
      // One that was overtaken by a later one of this page is no conflict.
      if (!ahead && Number(revision().value) === from) contest(page);
    } else if (response.ok) {
      took(page);
      if (now === unsaved) refresh(page);
    } else {
      say(page.querySelector(".faults p")?.textContent ?? "Not saved.");
    }
  } catch {
    sent = Math.min(sent, now - 1);
    say("Not saved: the library cannot be reached. What you typed stays here, and is tried again.");
    wait = AGAIN;
  } finally {
    underWay -= 1;
    if (sent !== unsaved && !contested) soon(wait);
  }
}

function soon(wait = PAUSE) {
  clearTimeout(timer);
  timer = setTimeout(save, wait);
}

function changed() {
  unsaved += 1;
  if (!contested) soon();
}

function enhance() {
  for (const each of document.querySelectorAll("[data-with-script]")) {
    each.textContent = each.dataset.withScript;
  }
  for (const each of document.querySelectorAll("[data-keys]")) each.hidden = false;
  placeOnTheLine(document.querySelector("#standing"), {
    place(key, after, said) {
      field(`quotations-${key}-after`).value = after;
      say(`Quotation ${key} stands ${said}.`, heard);
      changed();
    },
    open(key) {
      field(`quotations-${key}-after`).focus();
    },
  });
}

// A reshaped form comes back whole; the focus goes to the part that was reshaped.
async function reshape(order, cursor, otherwise) {
  if (reshaping) return;
  reshaping = true;
  clearTimeout(timer);
  const now = unsaved;
  try {
    const { response, page } = await send({
      do: order,
      cursor,
      revision: Number(revision().value) + underWay,
    });
    if (response.status === 409) {
      contest(page);
      return;
    }
    sent = now;
    const fresh = document.adoptNode(page.querySelector("#body"));
    const focused = fresh.querySelector("[autofocus]");
    for (const each of fresh.querySelectorAll("[autofocus]")) each.removeAttribute("autofocus");
    document.querySelector("#body").replaceWith(fresh);
    for (const id of ["measures", "known"]) {
      document.getElementById(id).replaceWith(document.adoptNode(page.getElementById(id)));
    }
    if (response.ok) say(page.querySelector("#saved")?.textContent ?? saved.textContent);
    heard.dataset.over = document.querySelector("#measures").dataset.over;
    history.replaceState(null, "", form.action);
    enhance();
    focused?.focus({ preventScroll: true });
    focused?.scrollIntoView({ block: "nearest" });
  } catch {
    otherwise();
  } finally {
    reshaping = false;
  }
}

// What is typed into a part while it is reshaped would be lost with the part.
form.addEventListener("beforeinput", (event) => {
  if (reshaping) event.preventDefault();
});

const RESHAPES = /^(?:up|down|join|split|turn|out|take|more) /;

form.addEventListener("input", (event) => {
  if (event.target.name && event.target.name !== "as") changed();
});

form.addEventListener("submit", (event) => {
  const { submitter } = event;
  clearTimeout(timer);
  if (submitter?.name === "do" && RESHAPES.test(submitter.value) && !contested) {
    event.preventDefault();
    const cursor = submitter.value.startsWith("split ") ? cursorIn(submitter.value) : "";
    reshape(submitter.value, cursor, () => leaveBy(submitter));
    return;
  }
  leaving = true;
});

function leaveBy(submitter) {
  const carried = document.createElement("input");
  Object.assign(carried, { type: "hidden", name: submitter.name, value: submitter.value });
  form.append(carried);
  leaving = true;
  form.submit();
}

// Where the cursor was last in the part that is to be split, counted in characters.
function cursorIn(order) {
  const words = field(`${order.split(" ")[1]}-text`);
  const at = words.selectionStart;
  const blank = words.value.includes("\n\n");
  if (blank || at === 0 || at === words.value.length) return "";
  return [...words.value.slice(0, at)].length;
}

// Keys with Ctrl or Alt, which no letter typed into a part can be taken for.
form.addEventListener("keydown", (event) => {
  const words = event.target.closest("textarea[name^='points-'], textarea[name^='commitments-'], textarea[name^='quotations-']");
  if (!words || !words.value.trim()) return;
  const stem = words.name.replace(/-text$/, "");
  let order;
  if (event.altKey && !event.ctrlKey && event.key === "ArrowUp") order = "up";
  else if (event.altKey && !event.ctrlKey && event.key === "ArrowDown") order = "down";
  else if (event.ctrlKey && !event.altKey && event.key === "Enter") order = "split";
  else if (event.ctrlKey && !event.altKey && event.key.toLowerCase() === "j") order = "join";
  else return;
  const button = words.closest("li").querySelector(`button[value="${order} ${stem}"]`);
  event.preventDefault();
  if (button) {
    form.requestSubmit(button);
  } else {
    reshape(`${order} ${stem}`, order === "split" ? cursorIn(`${order} ${stem}`) : "", () => {});
  }
});

// A tab that is closed or put behind others sends what it has first.
document.addEventListener("visibilitychange", () => {
  if (document.visibilityState === "hidden") save();
});
window.addEventListener("pagehide", () => {
  if (!leaving) save();
});
window.addEventListener("pageshow", () => {
  leaving = false;
});
window.addEventListener("beforeunload", (event) => {
  // Only where sending has failed: what is merely not sent yet is sent on the way out.
  if (!leaving && !contested && sent !== unsaved && saved.textContent.startsWith("Not saved")) {
    event.preventDefault();
  }
});

heard.dataset.over = document.querySelector("#measures").dataset.over;
enhance();
