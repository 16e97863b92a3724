// Points put in order: pressing one gives it the next place; keys, buttons and dragging move it.
// The fields that say the places without a script are kept in step, and are what is sent.

const FAR = 4; // pixels a pointer moves before it drags

function button(words, name, act) {
  const made = document.createElement("button");
  made.type = "button";
  made.className = `quiet ${name}`;
  made.dataset.act = act;
  made.textContent = words;
  return made;
}

function enhance() {
  for (const list of document.querySelectorAll(".order:not(.live)")) live(list);
}

function live(list) {
  const items = [...list.children];
  const field = (item) => item.querySelector("select");
  const text = (item) => item.querySelector(".text").textContent;
  const placed = () => [...list.children].filter((item) => item.classList.contains("placed"));
  list.classList.add("live");
  list.setAttribute("role", "list");
  document.querySelector("#ordering-help").textContent =
    "Press what comes first, then what comes next; leave out what you do not remember.";
  for (const item of items) {
    const next = document.createElement("button");
    next.type = "button";
    next.className = "put";
    next.dataset.act = "put";
    const label = item.querySelector("label");
    next.append(...label.childNodes);
    next.querySelector(".unseen").textContent = "Put next: ";
    label.replaceWith(next);
    const moves = document.createElement("span");
    moves.className = "moves";
    for (const [words, act] of [["up", "up"], ["down", "down"], ["out", "out"]]) {
      const move = button(words, "move", act);
      move.setAttribute("aria-label", `${words}: ${text(item)}`);
      moves.append(move);
    }
    item.append(moves);
  }
  const first = items.filter((item) => field(item).value);
  first.sort((one, other) => field(one).value - field(other).value);
  for (const item of first) item.classList.add("placed");
  step();

  // Puts the placed ones first, in their order, and the rest as they were shown.
  function step(order = first) {
    const rest = items.filter((item) => !item.classList.contains("placed"));
    list.append(...order, ...rest);
    items.forEach((item) => {
      const place = order.indexOf(item) + 1;
      field(item).value = place || "";
      const [up, down, out] = item.querySelectorAll(".move");
      up.hidden = down.hidden = out.hidden = !place;
      up.disabled = place === 1;
      down.disabled = place === order.length;
      const put = item.querySelector(".put");
      put.dataset.place = place || "";
      put.querySelector(".unseen").textContent = place ? `Place ${place}: ` : "Put next: ";
    });
  }

  function move(item, to, focus) {
    const order = placed().filter((each) => each !== item);
    item.classList.toggle("placed", to !== null);
    if (to !== null) order.splice(Math.max(0, Math.min(to, order.length)), 0, item);
    step(order);
    const focused = focus ?? item.querySelector(".put");
    (focused.disabled || focused.hidden ? item.querySelector(".put") : focused).focus();
    document.querySelector("#heard").textContent =
      to === null
        ? `Left out: ${text(item)}`
        : `Place ${field(item).value} of ${order.length}: ${text(item)}`;
  }

  function act(item, what, focus) {
    const at = placed().indexOf(item);
    if (what === "put" && at < 0) {
      move(item, placed().length);
      // What is pressed next is the next of those that have no place yet.
      list.querySelector("li:not(.placed) .put")?.focus();
    } else if (at < 0) return;
    else if (what === "up") move(item, at - 1, focus);
    else if (what === "down") move(item, at + 1, focus);
    else if (what === "out") move(item, null);
  }

  let dragged = null;
  list.addEventListener("click", ({ target, detail }) => {
    if (dragged && detail) {
      dragged = null;
      return;
    }
    const pressed = target.closest("[data-act]");
    if (pressed) act(pressed.closest("li"), pressed.dataset.act, pressed);
  });

  list.addEventListener("keydown", (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const item = event.target.closest("li");
    const what = { ArrowUp: "up", ArrowDown: "down", Delete: "out", Backspace: "out" }[event.key];
    if (!what || !item?.classList.contains("placed")) return;
    event.preventDefault();
    act(item, what, event.target.closest("button"));
  });

  let from = null;
  list.addEventListener("pointerdown", (event) => {
    const item = event.target.closest("li");
    dragged = null;
    if (event.button !== 0 || event.pointerType === "touch" || event.target.closest(".move")) return;
    if (item) from = { item, y: event.clientY };
  });
  list.addEventListener("pointermove", (event) => {
    if (!from) return;
    if (!dragged) {
      if (Math.abs(event.clientY - from.y) < FAR) return;
      dragged = from.item;
      dragged.classList.add("dragged");
      list.setPointerCapture(event.pointerId);
    }
    const order = placed().filter((item) => item !== dragged);
    const above = order.filter((item) => {
      const box = item.getBoundingClientRect();
      return (box.top + box.bottom) / 2 < event.clientY;
    });
    if (placed().indexOf(dragged) !== above.length) move(dragged, above.length);
  });
  function drop() {
    from = null;
    dragged?.classList.remove("dragged");
  }
  list.addEventListener("pointerup", drop);
  list.addEventListener("pointercancel", drop);
}

document.addEventListener("turned", enhance);
enhance();
