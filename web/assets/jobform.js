// The job form: fields that a choice does not need are put away, and parts
// and designs are added and taken out one by one. What is put away keeps what was entered.

// jobForm prepares the form.
export function jobForm(form) {
  const update = () => {
    form.querySelectorAll("select[name$='-shape'], select[name$='-kind']").forEach(showFor);
    showColours(form);
  };
  form.addEventListener("change", update);
  update();
  rows(form, [...form.querySelectorAll("details.part")], "Take this part out");
  rows(form, [...form.querySelectorAll("details.design")], "Take this design out");
}

// showFor shows what a part's shape, or a design's kind, needs; all before one
// is chosen. A layer that the kind does not offer is not sent.
function showFor(select) {
  select.closest("[data-row]").querySelectorAll("[data-for]").forEach((field) => {
    field.hidden = select.value !== "" && !field.dataset.for.trim().split(" ").includes(select.value);
    field.querySelectorAll(":scope > input[type='checkbox']").forEach((input) => { input.disabled = field.hidden; });
  });
}

// showColours shows the colours that the effect uses; all before one is chosen.
function showColours(form) {
  const effect = form.querySelector("input[name='effect']:checked");
  form.querySelectorAll("[data-colour]").forEach((field) => {
    field.hidden = effect !== null && !(effect.dataset.colours || "").split(" ").includes(field.dataset.colour);
  });
}

// rows offers one more row at a time, and a way to take each out again.
function rows(form, all, takeOut) {
  const offer = () => {
    const next = all.find((row) => !row.open);
    all.forEach((row) => { row.hidden = !row.open && row !== next; });
  };
  all.forEach((row) => {
    const out = document.createElement("button");
    out.type = "button";
    out.className = "button quiet";
    out.textContent = takeOut;
    out.addEventListener("click", () => {
      empty(row);
      row.open = false;
      form.dispatchEvent(new Event("change"));
    });
    row.append(out);
    row.addEventListener("toggle", offer);
  });
  offer();
}

// empty clears what was entered in a row. Colours and what has one of a few
// values keep a value: they count for nothing in a row that is not used.
function empty(row) {
  row.querySelectorAll("input:not([type='radio'], [type='checkbox'], [type='color']), textarea").forEach((field) => {
    field.value = field.name.endsWith("-count") ? "1" : "";
  });
  row.querySelectorAll("input[type='checkbox']").forEach((box) => { box.checked = false; });
  row.querySelectorAll("select").forEach((select) => { select.selectedIndex = 0; });
}
