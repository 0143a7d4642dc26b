"use strict";
// The practice page: sends forms, and puts in what the server tells of.
const $ = (id) => document.getElementById(id);
const at = document.body.dataset;
const wide = matchMedia("(min-width: 56.01rem)");
const sheet = $("sheet"), log = $("log"), text = $("text"), drawers = document.querySelector(".drawers");
let mode = null; // {path, field, id} while a line is answered or amended

const query = (more) => new URLSearchParams({ who: at.who, where: at.where, ...more });

// post sends fields as a form; a refusal is shown, and gives null.
async function post(path, fields) {
  const form = new FormData();
  for (const [k, v] of Object.entries({ who: at.who, where: at.where, ...fields })) form.append(k, v);
  try {
    const answer = await fetch(path, { method: "POST", body: form });
    const body = await answer.text();
    if (answer.ok) return body;
    toast(body);
  } catch {
    toast("The program does not answer: is it still running?");
  }
  return null;
}

let fading = 0;
function toast(words) {
  $("toast").textContent = words;
  clearTimeout(fading);
  fading = setTimeout(() => { $("toast").textContent = ""; }, 8000);
}

function setMode(next, words) {
  mode = next;
  $("mode").hidden = !next;
  $("mode-text").textContent = words || "";
  text.focus();
}

async function send() {
  const path = mode ? mode.path : "/say";
  const fields = mode ? { [mode.field]: mode.id, text: text.value } : { text: text.value };
  if (await post(path, fields) === null) return;
  text.value = "";
  sessionStorage.removeItem("draft");
  setMode(null);
  toEnd();
}

// At once, not smoothly: a line that comes while the sheet still glides would
// be taken for one that is read further up.
function toEnd() { sheet.scrollTop = sheet.scrollHeight; }
const nearEnd = () => sheet.scrollHeight - sheet.scrollTop - sheet.clientHeight < 160;

// Who reads the last line keeps it in sight when the drawers or a keyboard
// take some of the sheet.
let atEnd = true;
sheet.addEventListener("scroll", () => { atEnd = nearEnd(); });
new ResizeObserver(() => { if (atEnd) toEnd(); }).observe(sheet);

// put places a line: in the place of its former self, or at the end.
function put(id, html) {
  const box = document.createElement("template");
  box.innerHTML = html;
  const fresh = box.content.firstElementChild, old = $("m" + id), follow = nearEnd();
  if (old) {
    const focused = old.contains(document.activeElement);
    old.replaceWith(fresh);
    if (focused) text.focus();
  } else {
    fresh.classList.add("fresh");
    log.append(fresh);
  }
  $("blank")?.remove();
  fresh.querySelectorAll("img").forEach((i) => { i.onload = () => follow && toEnd(); });
  if (follow) toEnd();
}

function listen() {
  const source = new EventSource("/events?" + query({ after: at.seq }));
  const on = (name, act) => source.addEventListener(name, (e) => act(JSON.parse(e.data)));
  on("line", (l) => put(l.id, l.html));
  on("gone", (l) => $("m" + l.id)?.remove());
  on("toast", toast);
  on("clock", (face) => { $("clock").textContent = face; });
  on("busy", (n) => { $("busy").hidden = n === 0; });
}

async function moveClock(button) {
  const all = document.querySelectorAll("[data-hours]");
  all.forEach((b) => { b.disabled = true; });
  $("moving").textContent = "Moving the clock on…";
  const done = await post("/clock", { hours: button.dataset.hours });
  all.forEach((b) => { b.disabled = false; });
  const words = done === null ? "The clock stayed where it was." : "The clock was moved on " + button.textContent.trim() + ".";
  $("moving").textContent = words;
  if (done === null || wide.matches) return button.focus();
  drawers.open = false; // on a phone they would hide what came
  sheet.focus();
  toast(words);
}

async function leafBack(button) {
  const answer = await fetch("/earlier?" + query({ before: button.dataset.before }));
  if (!answer.ok) return;
  const from = sheet.scrollHeight;
  log.insertAdjacentHTML("afterbegin", await answer.text());
  sheet.scrollTop += sheet.scrollHeight - from;
  button.dataset.before = answer.headers.get("X-First");
  if (Number(button.dataset.before) <= 1) { button.remove(); sheet.focus(); }
}

document.addEventListener("click", (e) => {
  const b = e.target.closest("button");
  if (!b) return;
  const d = b.dataset;
  if (d.press !== undefined) post("/press", { message: d.message, button: d.press });
  else if (d.answer) setMode({ path: "/say", field: "reply", id: d.answer }, "Answering " + d.name + ":");
  else if (d.amend) {
    text.value = b.closest("article").querySelector(".text")?.textContent || "";
    setMode({ path: "/amend", field: "message", id: d.amend }, "Amending your line:");
  } else if (d.try) {
    text.value = d.try;
    setMode(null);
    if (!wide.matches) drawers.open = false;
  } else if (d.hours) moveClock(b);
  else if (b.id === "earlier") leafBack(b);
  else if (b.id === "mode-end") { text.value = ""; setMode(null); }
  else if (b.id === "send-pin") post("/pin", { lat: $("lat").value, lon: $("lon").value }).then(closeMore);
  else if (b.id === "send-file") post("/upload", { file: $("file").files[0] || "", text: text.value }).then((done) => { if (done !== null) text.value = ""; closeMore(done); });
});

function closeMore(done) {
  if (done === null) return;
  document.querySelector(".more").open = false;
  text.focus();
}

$("say").addEventListener("submit", (e) => { e.preventDefault(); send(); });
text.addEventListener("keydown", (e) => {
  if (e.key === "Enter" && !e.shiftKey && !e.isComposing) { e.preventDefault(); send(); }
  if (e.key === "Escape" && mode) { text.value = ""; setMode(null); }
});
text.addEventListener("input", () => sessionStorage.setItem("draft", text.value));

$("own").addEventListener("submit", async (e) => {
  e.preventDefault();
  const fields = Object.fromEntries(new FormData(e.target));
  const page = await post("/paddocks", fields);
  if (page) location.assign(page);
});
$("own").zone.value = Intl.DateTimeFormat().resolvedOptions().timeZone || "";

text.value ||= sessionStorage.getItem("draft") || ""; // what was typed while the page loaded stays
document.querySelectorAll(".row [aria-current]").forEach((a) => a.scrollIntoView({ block: "nearest", inline: "nearest" }));
drawers.open = wide.matches;
wide.addEventListener("change", () => { drawers.open = wide.matches; });
sheet.scrollTop = sheet.scrollHeight;
listen();
if (wide.matches) text.focus();
