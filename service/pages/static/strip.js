// The plot line as a slider: what it says and what stands in the number field are one.

function choose(range, number) {
  const told = number.value.trim();
  const known = /^\d{1,9}$/.test(told);
  range.classList.toggle("unset", !known);
  if (known) range.value = told;
  range.setAttribute("aria-valuetext", known ? `page ${told}` : "no page yet");
}

function enhance() {
  for (const range of document.querySelectorAll("[data-page][hidden]")) {
    const number = document.getElementById(range.dataset.page);
    const take = () => {
      number.value = range.value;
      choose(range, number);
    };
    range.hidden = false;
    choose(range, number);
    range.addEventListener("input", take);
    // Where it stood already no input is told of: pressing it there chooses it all the same.
    range.addEventListener("click", take);
    range.addEventListener("keydown", ({ key }) => {
      if ((key === "Home" && range.value === range.min) || key === " ") take();
    });
    number.addEventListener("input", () => choose(range, number));
  }
}

document.addEventListener("turned", enhance);
enhance();
