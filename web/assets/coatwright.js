// What a browser with scripts gets on top of pages that work without.
import { suggest } from "./suggest.js";
import { jobForm } from "./jobform.js";

document.querySelectorAll("input[data-suggest]").forEach(suggest);
document.querySelectorAll("form.job").forEach(jobForm);
document.querySelectorAll("[data-print]").forEach((button) => {
  button.hidden = false;
  button.addEventListener("click", () => window.print());
});
