// Suggestions below a search box, as one types: a combobox with a list.

const pause = 120; // ms without a key before asking

// suggest gives input a list of notes that it fetches from data-suggest.
export function suggest(input) {
  const list = document.createElement("ul");
  list.id = input.id + "-list";
  list.className = "suggestions";
  list.setAttribute("role", "listbox");
  list.setAttribute("aria-label", "Notes");
  list.hidden = true;
  input.form.append(list);
  input.setAttribute("role", "combobox");
  input.setAttribute("aria-autocomplete", "list");
  input.setAttribute("aria-controls", list.id);
  input.setAttribute("aria-expanded", "false");

  let chosen = -1;
  let timer = 0;
  let asked = 0; // answers that come late are dropped

  const choose = (i) => {
    const items = [...list.children];
    chosen = i < -1 ? items.length - 1 : i >= items.length ? -1 : i;
    items.forEach((item, n) => item.setAttribute("aria-selected", String(n === chosen)));
    if (chosen < 0) input.removeAttribute("aria-activedescendant");
    else input.setAttribute("aria-activedescendant", items[chosen].id);
  };
  const close = () => {
    list.hidden = true;
    input.setAttribute("aria-expanded", "false");
    choose(-1);
  };
  const show = (hits) => {
    list.replaceChildren(...hits.map((hit, i) => option(list.id, hit, i)));
    list.hidden = hits.length === 0;
    input.setAttribute("aria-expanded", String(!list.hidden));
    choose(-1);
  };
  const ask = async () => {
    const mine = ++asked;
    const text = input.value.trim();
    if (text === "") return close();
    try {
      const answer = await fetch(input.dataset.suggest + "?q=" + encodeURIComponent(text));
      const hits = answer.ok ? await answer.json() : [];
      if (mine === asked) show(hits);
    } catch {
      close(); // off line: the form still searches
    }
  };
  const keys = {
    ArrowDown: () => choose(chosen + 1),
    ArrowUp: () => choose(chosen - 1),
    Escape: close,
    Enter: () => list.children[chosen].click(),
  };

  input.addEventListener("input", () => {
    clearTimeout(timer);
    timer = setTimeout(ask, pause);
  });
  input.addEventListener("keydown", (event) => {
    if (list.hidden || !keys[event.key] || (event.key === "Enter" && chosen < 0)) return;
    event.preventDefault();
    keys[event.key]();
  });
  input.addEventListener("blur", () => {
    asked++;
    close();
  });
  list.addEventListener("pointerdown", (event) => event.preventDefault()); // keeps the focus
}

// option makes a line of the list.
function option(listID, hit, i) {
  const item = document.createElement("li");
  item.id = listID + "-" + i;
  item.setAttribute("role", "option");
  const title = document.createElement("span");
  title.textContent = hit.title;
  const kind = document.createElement("span");
  kind.className = "kind";
  kind.textContent = hit.kind;
  item.append(title, kind);
  item.addEventListener("click", () => location.assign("/note/" + hit.path));
  return item;
}
