// The job form: fields that a choice does not need are put away, and parts are
// added and taken out one by one. What is put away keeps what was entered.

// jobForm prepares the form.
export function jobForm(form) {
  const update = () => {
    form.querySelectorAll("select[name$='-shape']").forEach(showMeasures);
    showColours(form);
  };
  form.addEventListener("change", update);
  update();
  parts(form);
}

// showMeasures shows the measures that a part's shape is known by.
function showMeasures(shape) {
  const part = shape.closest(".part");
  part.querySelectorAll("[data-shapes]").forEach((field) => {
    field.hidden = !field.dataset.shapes.split(" ").includes(shape.value);
  });
}

// showColours shows the colours that the effect uses; all before one is chosen.
function showColours(form) {
  const effect = form.querySelector("input[name='effect']:checked");
  form.querySelectorAll("[data-colour]").forEach((field) => {
    field.hidden = effect !== null && !(effect.dataset.colours || "").split(" ").includes(field.dataset.colour);
  });
}

// parts offers one more part at a time, and a way to take each out again.
function parts(form) {
  const all = [...form.querySelectorAll("details[data-part]")];
  const offer = () => {
    const next = all.find((part) => !part.open);
    all.forEach((part) => { part.hidden = !part.open && part !== next; });
  };
  all.forEach((part) => {
    const out = document.createElement("button");
    out.type = "button";
    out.className = "button quiet";
    out.textContent = "Take this part out";
    out.addEventListener("click", () => {
      part.querySelectorAll("input:not([type='radio'])").forEach((input) => {
        input.value = input.name.endsWith("-count") ? "1" : "";
      });
      part.querySelectorAll("select").forEach((select) => { select.selectedIndex = 0; });
      part.open = false;
      form.dispatchEvent(new Event("change"));
    });
    part.append(out);
    part.addEventListener("toggle", offer);
  });
  offer();
}
