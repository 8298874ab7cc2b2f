// Production documents that are dropped or chosen. Each file goes by itself, as it is; what the server answers, the page
// of a document that is tried, is shown below the one before it, and its forms are sent from there. Nothing is worked out
// here. Without this file a document is pasted into the form.

const zone = document.getElementById("drop");
const files = document.getElementById("files");
const list = document.getElementById("dropped");
const all = document.getElementById("post-all");
const said = document.getElementById("drop-said");
const token = document.querySelector("#document input[name=token]").value;

// Each as {name, body, place, state}: "waiting", "postable", "refused", "posted" or "nothing" to post.
const documents = [];

// ---- what is sent ----------------------------------------------------------------------------------------------

// One at a time, in the order in which it was asked for.
let last = Promise.resolve();
const inTurn = (act) => (last = last.then(act));

async function sent(address, body, type) {
  const headers = { Accept: "text/html", "Content-Type": type, "X-Token": token };
  try {
    const response = await fetch(address, { method: "POST", headers, body, credentials: "same-origin" });
    const page = new DOMParser().parseFromString(await response.text(), "text/html");
    return { isDone: response.ok, main: page.getElementById("main") };
  } catch (fault) {
    return { isDone: false, main: null };
  }
}

async function tryOut(one) {
  const { main } = await sent("/documents?" + new URLSearchParams({ name: one.name }), one.body, "text/csv");
  const isTaken = main?.querySelector("#rows .state:not(.refused)");
  one.state = !isTaken ? "refused" : main.querySelector("#post form") ? "postable" : "nothing";
  show(one, main);
}

async function post(one) {
  const form = one.place.querySelector("form[data-part=post]");
  const fields = new URLSearchParams(new FormData(form));
  const { isDone, main } = await sent(form.getAttribute("action"), fields, "application/x-www-form-urlencoded");
  one.state = isDone ? "posted" : "refused";
  show(one, main);
}

// What would be posted of the others may be different once one is.
async function postThose(chosen) {
  for (const one of chosen) {
    await post(one);
    if (one.state !== "posted") break;
  }
  for (const one of documents) if (one.state === "postable") await tryOut(one);
}

// ---- what is shown ---------------------------------------------------------------------------------------------

// The parts of the answer's page, with ids of their own, since several stand here.
function show(one, main) {
  const mark = `d${documents.indexOf(one) + 1}-`;
  one.place.replaceChildren();
  if (!main?.querySelector("#rows")) {
    const head = document.createElement("h2");
    head.textContent = one.state === "posted" ? `${one.name} is posted` : `${one.name} is refused`;
    one.place.append(head);
  }
  if (!main) {
    const fault = document.createElement("p");
    fault.className = "worse";
    fault.textContent = "The server cannot be reached: nothing was posted; drop the file again";
    one.place.append(fault);
  }
  for (const part of main ? main.children : []) {
    if (part.tagName === "H1") continue;
    const copy = document.importNode(part, true);
    for (const item of [copy, ...copy.querySelectorAll("[id]")]) {
      if (item.id === "post" || item.id === "mend") item.querySelector("form")?.setAttribute("data-part", item.id);
      if (item.id) item.id = mark + item.id;
    }
    for (const item of [copy, ...copy.querySelectorAll("*")])
      if (item.hasAttribute("aria-labelledby")) item.setAttribute("aria-labelledby", mark + item.getAttribute("aria-labelledby"));
    one.place.append(copy);
  }
  one.place.dataset.state = one.state;
  tell();
}

function tell() {
  const count = (state) => documents.filter((one) => one.state === state).length;
  const words = { waiting: "read", postable: "can be posted", refused: "refused", nothing: "with nothing new", posted: "posted" };
  const parts = Object.keys(words).filter(count).map((state) => `${count(state)} ${words[state]}`);
  said.textContent = `${documents.length} ${documents.length === 1 ? "file" : "files"}: ${parts.join(", ")}`;
  all.hidden = count("postable") < 2;
  all.textContent = `Post these ${count("postable")} files`;
}

// ---- what people do --------------------------------------------------------------------------------------------

function take(dropped) {
  for (const file of dropped) {
    const place = document.createElement("div");
    place.className = "dropped stack";
    list.append(place);
    const one = { name: file.name, body: file, place, state: "waiting" };
    documents.push(one);
    place.dataset.name = file.name;
    inTurn(() => tryOut(one));
  }
  tell();
}

for (const name of ["dragenter", "dragover"])
  zone.addEventListener(name, (event) => {
    event.preventDefault();
    zone.classList.add("over");
  });
zone.addEventListener("dragleave", (event) => zone.contains(event.relatedTarget) || zone.classList.remove("over"));
zone.addEventListener("drop", (event) => {
  event.preventDefault();
  zone.classList.remove("over");
  take(event.dataTransfer.files);
});
// A file that misses the place would be opened instead of the page.
for (const name of ["dragover", "drop"]) window.addEventListener(name, (event) => event.preventDefault());
files.addEventListener("change", () => {
  take(files.files);
  files.value = "";
});

list.addEventListener("submit", (event) => {
  const one = documents.find((item) => item.place.contains(event.target));
  const part = event.target.dataset.part;
  if (!one || !part) return;
  event.preventDefault();
  if (part === "post") return inTurn(() => postThose([one]));
  one.body = new FormData(event.target).get("text");
  inTurn(() => tryOut(one));
});
all.addEventListener("click", () => {
  all.hidden = true;
  inTurn(() => postThose(documents.filter((one) => one.state === "postable")));
});

zone.hidden = false;
