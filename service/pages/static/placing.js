// The standing plot line: a quotation is moved along it by the arrow keys, or dragged.

const FAR = 4; // pixels a pointer moves before it drags

export function placeOnTheLine(line, { place, open }) {
  for (const dot of line?.querySelectorAll("span.dot") ?? []) take(dot, line, { place, open });
}

const gaps = (line) => [...line.querySelectorAll("[data-after]")];

function take(span, line, { place, open }) {
  const dot = document.createElement("button");
  dot.type = "button";
  dot.className = span.className;
  dot.dir = "auto";
  dot.dataset.quotation = span.dataset.quotation;
  dot.textContent = span.textContent;
  // A finger on the words scrolls the page, as everywhere; one on the dot drags it.
  const handle = document.createElement("span");
  handle.className = "handle";
  dot.prepend(handle);
  span.replaceWith(dot);
  const named = () => {
    const gap = dot.closest("[data-after]");
    dot.setAttribute(
      "aria-label",
      `Quotation ${dot.dataset.quotation}, ${gap.dataset.said}: ${dot.textContent}`,
    );
  };
  named();

  function put(gap) {
    const stood = dot.closest("[data-after]");
    if (!gap || gap === stood) return;
    const focused = document.activeElement === dot;
    gap.append(dot.closest("li"));
    named();
    if (focused) dot.focus();
    place(dot.dataset.quotation, gap.dataset.after, gap.dataset.said);
  }

  dot.addEventListener("keydown", (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const all = gaps(line);
    const on = all.filter((gap) => gap.dataset.after !== "");
    const at = all.indexOf(dot.closest("[data-after]"));
    const next = { ArrowUp: at - 1, ArrowLeft: at - 1, ArrowDown: at + 1, ArrowRight: at + 1 };
    next.Home = 0;
    next.End = on.length - 1;
    if (!(event.key in next)) return;
    event.preventDefault();
    // What stands apart comes onto the line; nothing goes off it but by the part's own field.
    put(on[Math.min(next[event.key], on.length - 1)]);
  });

  let from = null;
  let dragged = false;
  let over = null;

  function point(gap) {
    over?.classList.remove("over");
    over = gap;
    over?.classList.add("over");
  }

  function drop(gap) {
    line.classList.remove("dragging");
    dot.classList.remove("dragged");
    point(null);
    from = null;
    if (gap) put(gap);
  }

  dot.addEventListener("pointerdown", (event) => {
    if (event.button !== 0 || (event.pointerType === "touch" && event.target !== handle)) return;
    from = event;
    dragged = false;
    dot.setPointerCapture(event.pointerId);
  });
  dot.addEventListener("pointermove", (event) => {
    if (!from) return;
    if (!dragged && Math.hypot(event.clientX - from.clientX, event.clientY - from.clientY) < FAR) {
      return;
    }
    dragged = true;
    line.classList.add("dragging");
    dot.classList.add("dragged");
    const on = gaps(line).filter((gap) => gap.dataset.after !== "");
    const far = (gap) => {
      const box = gap.getBoundingClientRect();
      return Math.abs((box.top + box.bottom) / 2 - event.clientY);
    };
    point(on.reduce((nearest, gap) => (far(gap) < far(nearest) ? gap : nearest)));
  });
  dot.addEventListener("pointerup", () => drop(dragged ? over : null));
  dot.addEventListener("pointercancel", () => drop(null));
  dot.addEventListener("click", (event) => {
    // The click that ends a drag, or none: pressing it leads to the field that says where.
    if (dragged) dragged = false;
    else if (event.detail !== 1 || from === null) open(dot.dataset.quotation);
  });
}
