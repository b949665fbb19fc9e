// Choosing findings and keeping a repair list, on the reader's own machine. The page says everything without this.
// Nothing is sent anywhere: the list lives in this browser until it is saved or printed.
"use strict";
(() => {
  const byId = (id) => document.getElementById(id);
  const all = (selector) => Array.from(document.querySelectorAll(selector));
  const fill = (words, gaps) => words.replace(/\{(\w+)\}/g, (_, name) => String(gaps[name] ?? ""));
  const folded = (words) => words.normalize("NFKD").replace(/[\u0300-\u036f]/g, "").toLowerCase();

  const findings = all("article.finding");
  const rows = all("[data-finding]");
  if (!findings.length) return;

  // Reading in one of two orders.
  const orders = byId("orders");
  const order = () => {
    const chosen = orders.querySelector("input:checked")?.value;
    for (const part of all("[data-order]")) part.hidden = part.dataset.order !== chosen;
  };
  orders.hidden = false;
  orders.addEventListener("change", order);
  order();

  // Choosing by words, place, stake, urgency and trade.
  const form = byId("choose");
  const told = byId("chosen");
  const texts = new Map(findings.map((finding) => [finding, folded(finding.textContent)]));
  const choose = () => {
    const wanted = folded(form.elements.words.value).split(/\s+/).filter(Boolean);
    const fields = ["place", "stake", "urgency", "trade"];
    const shown = new Set();
    for (const finding of findings) {
      const fits =
        wanted.every((word) => texts.get(finding).includes(word)) &&
        fields.every((name) => !form.elements[name].value || finding.dataset[name] === form.elements[name].value);
      finding.hidden = !fits;
      if (fits) shown.add(finding.dataset.number);
    }
    for (const row of rows) row.hidden = !shown.has(row.dataset.finding);
    for (const group of all("[data-group]")) {
      group.hidden = !group.querySelector("[data-finding]:not([hidden]), article.finding:not([hidden])");
    }
    told.textContent = fill(shown.size === findings.length ? told.dataset.all : told.dataset.some, {
      shown: shown.size,
      count: findings.length,
    });
  };
  form.hidden = false;
  form.addEventListener("input", choose);
  form.addEventListener("submit", (event) => event.preventDefault());
  form.addEventListener("reset", () => setTimeout(choose));
  // A link to a finding that is not shown shows everything again, so that no link leads nowhere.
  const reveal = () => {
    const target = byId(decodeURIComponent(location.hash.slice(1)));
    if (target?.closest("article.finding")?.hidden) {
      form.reset();
      setTimeout(() => target.scrollIntoView());
    }
  };
  addEventListener("hashchange", reveal);
  choose();

  // The repair list.
  const section = byId("repairs-part");
  const list = byId("repairs-list");
  const none = byId("repairs-none");
  const key = `witnessmark repair list ${document.body.dataset.job}`;
  /** @type {Record<string, string>} what the client asks for, by number of the finding */
  let picked = {};
  try {
    const kept = JSON.parse(localStorage.getItem(key) ?? "{}");
    if (kept && typeof kept === "object" && !Array.isArray(kept)) {
      for (const [id, words] of Object.entries(kept)) if (typeof words === "string") picked[id] = words;
    }
  } catch {
    picked = {}; // no storage, or not ours: the list then lasts as long as the page is open
  }
  const keep = () => {
    try {
      localStorage.setItem(key, JSON.stringify(picked));
    } catch {
      // as above
    }
  };
  const about = (finding) => ({
    number: finding.dataset.number,
    title: finding.querySelector("h4").textContent.trim(),
    place: finding.dataset.placeWords ?? "",
    todo: finding.querySelector("[data-do]")?.textContent.trim() ?? "",
    by: finding.dataset.tradeWords ?? "",
    soon: finding.dataset.urgencyWords ?? "",
  });
  const chosenOnes = () => findings.filter((finding) => finding.dataset.entry in picked).map((f) => [f, about(f)]);
  const draw = () => {
    list.replaceChildren();
    for (const [finding, row] of chosenOnes()) {
      const item = byId("repair-row").content.firstElementChild.cloneNode(true);
      const link = item.querySelector("a");
      link.href = `#f${row.number}`;
      link.textContent = `${row.number}. ${row.title}`;
      item.querySelector("[data-where]").textContent = [row.place, row.soon].filter(Boolean).join(": ");
      item.querySelector("[data-todo]").textContent = row.todo;
      const asks = item.querySelector("textarea");
      asks.id = `asks${row.number}`;
      item.querySelector("label").htmlFor = asks.id;
      asks.value = picked[finding.dataset.entry];
      asks.addEventListener("input", () => {
        picked[finding.dataset.entry] = asks.value;
        keep();
      });
      list.append(item);
    }
    none.hidden = list.childElementCount > 0;
    byId("repairs-acts").hidden = list.childElementCount === 0;
  };
  for (const finding of findings) {
    const box = finding.querySelector("input[data-pick]");
    box.closest("p").hidden = false;
    box.checked = finding.dataset.entry in picked;
    box.addEventListener("change", () => {
      if (box.checked) picked[finding.dataset.entry] = picked[finding.dataset.entry] ?? "";
      else delete picked[finding.dataset.entry];
      keep();
      draw();
    });
  }
  // A cell that begins like a formula is kept from being one where the table is opened.
  const cell = (words) => `"${(/^[=+\-@\t\r]/.test(words) ? `'${words}` : words).replace(/"/g, '""')}"`;
  byId("repairs-save").addEventListener("click", () => {
    const head = byId("repairs-save").dataset.head.split("|");
    const lines = [head, ...chosenOnes().map(([f, r]) => [r.number, r.title, r.place, r.soon, r.todo, r.by, picked[f.dataset.entry]])];
    const text = `\ufeff${lines.map((line) => line.map((words) => cell(words.replace(/\s+/g, " "))).join(",")).join("\r\n")}\r\n`;
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([text], { type: "text/csv;charset=utf-8" }));
    link.download = byId("repairs-save").dataset.file;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 1000);
  });
  byId("repairs-print").addEventListener("click", () => {
    document.body.classList.add("only-repairs");
    print();
  });
  addEventListener("afterprint", () => document.body.classList.remove("only-repairs"));
  byId("repairs-empty").addEventListener("click", () => {
    picked = {};
    for (const box of all("input[data-pick]")) box.checked = false;
    keep();
    draw();
    none.focus();
  });
  section.hidden = false;
  byId("repairs-link").hidden = false;
  draw();
})();
