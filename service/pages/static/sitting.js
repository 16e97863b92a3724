// The sitting without full reloads: what a form marked data-turn leads to is fetched and put in
// place of the page. Whatever fails falls back to what the browser does by itself.

const SWAPPED = ["#page", "#left"];
const turns = new Map(); // pages left behind, by the number in the history's state
let turn = Math.floor(performance.timeOrigin); // so that no number returns after a reload
let busy = false;

const parts = (from) => SWAPPED.map((selector) => from.querySelector(selector));

// What the last answer came to is swapped in with its page; a reader who listens hears it from
// a region that was there before.
function tell() {
  document.querySelector("#heard").textContent =
    document.querySelector(".last p")?.textContent ?? "";
}

function settle() {
  const focused = document.querySelector(".grades :checked, #page [data-focus]");
  focused?.focus({ preventScroll: true });
}

// The browser heeds autofocus while it loads a page, and complains of it at any other time.
function calmed(elements) {
  for (const element of elements.flatMap((each) => [...each.querySelectorAll("[autofocus]")])) {
    element.removeAttribute("autofocus");
    element.dataset.focus = "";
  }
  return elements;
}

function put(title, fresh) {
  const old = calmed(parts(document));
  document.title = title;
  old.forEach((element, index) => element.replaceWith(fresh[index]));
  document.dispatchEvent(new Event("turned"));
  return old;
}

async function fetched(address, options) {
  const response = await fetch(address, { ...options, headers: { Accept: "text/html" } });
  const type = response.headers.get("Content-Type") ?? "";
  if (!type.startsWith("text/html")) throw new Error("not a page");
  const page = new DOMParser().parseFromString(await response.text(), "text/html");
  const fresh = calmed(parts(page)).map((element) => document.adoptNode(element));
  return { response, title: page.title, fresh };
}

function turnTo({ response, title, fresh }) {
  const left = { title: document.title, parts: put(title, fresh) };
  if (response.redirected) {
    // An answer was kept: the pages before it are no longer true, so they are asked for anew.
    turns.clear();
    turn += 1;
    history.replaceState({ turn }, "", response.url);
    tell();
  } else {
    turns.set(turn, left);
    turn += 1;
    history.pushState({ turn }, "", location.href);
  }
  window.scrollTo(0, 0);
  settle();
}

async function go(address, options, otherwise) {
  if (busy) return;
  busy = true;
  try {
    turnTo(await fetched(address, options));
  } catch {
    otherwise();
  } finally {
    busy = false;
  }
}

document.addEventListener("submit", (event) => {
  const { target: form, submitter } = event;
  if (!form.matches("[data-turn]")) return;
  event.preventDefault();
  const body = new URLSearchParams(new FormData(form));
  if (submitter?.name) body.append(submitter.name, submitter.value);
  const address = submitter?.hasAttribute("formaction") ? submitter.formAction : form.action;
  go(address, { method: "POST", body }, () => {
    form.action = address;
    if (submitter?.name) {
      const carried = document.createElement("input");
      Object.assign(carried, { type: "hidden", name: submitter.name, value: submitter.value });
      form.append(carried);
    }
    form.submit();
  });
});

document.addEventListener("change", ({ target }) => {
  if (target.dataset.due) document.querySelector("#due").textContent = target.dataset.due;
});

// Initials choose a grade, or say what came of a commitment, and d opens the digest, only while
// these have the focus, so that no letter typed elsewhere can change anything (WCAG 2.2, 2.1.4).
document.addEventListener("keydown", (event) => {
  const came = event.target.closest?.(".came");
  if (came && !event.ctrlKey && !event.metaKey && !event.altKey) {
    came.querySelector(`button[value^="${CSS.escape(event.key.toLowerCase())}"]`)?.click();
  }
  const grades = event.target.closest?.(".grades");
  if (!grades || event.ctrlKey || event.metaKey || event.altKey) return;
  const initial = event.key.toLowerCase();
  if (initial === "d") document.querySelector("#page .digest")?.click();
  for (const radio of grades.querySelectorAll("input")) {
    if (radio.value[0] === initial) {
      event.preventDefault();
      radio.focus();
      radio.click();
    }
  }
});

window.addEventListener("popstate", ({ state }) => {
  if (!state) return; // a step within the page, as the skip link takes
  const known = turns.get(state.turn);
  if (!known) {
    location.reload();
    return;
  }
  turns.set(turn, { title: document.title, parts: put(known.title, known.parts) });
  turn = state.turn;
  settle();
});

history.replaceState({ turn }, "");
settle();
