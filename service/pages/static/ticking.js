// Ticks corrected: the suggestion follows at once, as the server marks them. The grade follows it
// until the reader has chosen one by hand.

let asked = null; // the latest question; an earlier one is of no use any more

function follow(fresh) {
  const told = fresh.querySelector("#suggestion");
  const grades = document.querySelector(".grades");
  if (!told || !grades) return;
  // A shorter reason leaves the room of the longer one, so that the grades stay where they are.
  const legend = grades.querySelector("legend");
  legend.style.minHeight = `${legend.getBoundingClientRect().height}px`;
  document.querySelector("#suggestion").replaceChildren(...told.childNodes);
  if (grades.dataset.chosen) return;
  const value = fresh.querySelector(".grades :checked").value;
  const radio = grades.querySelector(`[value=${value}]`);
  radio.checked = true;
  document.querySelector("#due").textContent = radio.dataset.due;
}

async function ask(form) {
  asked?.abort();
  asked = new AbortController();
  const address = form.querySelector("[formaction]").formAction;
  const body = new URLSearchParams(new FormData(form));
  const options = { method: "POST", body, headers: { Accept: "text/html" }, signal: asked.signal };
  try {
    const response = await fetch(address, options);
    if (response.ok && !response.redirected) {
      follow(new DOMParser().parseFromString(await response.text(), "text/html"));
    }
  } catch {
    // The ticks stand as they are, and are kept with the grade; only the suggestion is behind.
  }
}

document.addEventListener("change", ({ target, isTrusted }) => {
  if (target.matches("[data-idea]")) ask(target.form);
  else if (isTrusted && target.name === "grade") target.closest(".grades").dataset.chosen = "yes";
});
document.addEventListener("turned", () => asked?.abort());
