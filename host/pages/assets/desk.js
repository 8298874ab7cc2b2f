// The quote desk answers while somebody types: it fetches the address that the form would lead to and takes the parts of
// that page that differ, one by one by their ids. Nothing is worked out here. Without this file the desk works all the
// same: every link and form leads to a whole page.

const desk = document.getElementById("line-form").getAttribute("action");
const line = document.getElementById("line");
const slowAfter = 300; // ms until a reader is told that an answer is under way

// One request at a time; of what was asked meanwhile only the last counts.
let isAsking = false;
let asked = null;

const fieldsForm = () => document.getElementById("fields");
const whatIfForm = () => document.getElementById("what-if");

// What is asked beside the enquiry stays while the enquiry changes; a rank takes long, and is asked for again.
const beside = ["with", "boards", "margins", "prices", "ect", "bct", "corrugator", "roll", "ups"];

// The address of a form's values, those that are empty left out.
function addressOf(form, submitter) {
  const query = new URLSearchParams();
  for (const [name, value] of new FormData(form)) if (value.trim() !== "") query.append(name, value);
  if (submitter?.name) query.append(submitter.name, submitter.value);
  if (form !== whatIfForm()) keep(query);
  return `${desk}?${query}`;
}

function keep(query) {
  const now = new URLSearchParams(location.search);
  for (const name of beside) {
    query.delete(name);
    for (const value of now.getAll(name)) query.append(name, value);
  }
  if (now.get("quantity")) query.set("quantity", now.get("quantity"));
}

// ---- what is fetched -------------------------------------------------------------------------------------------

async function ask(address, then) {
  asked = { address, then };
  if (isAsking) return;
  isAsking = true;
  const slow = setTimeout(() => document.body.classList.add("waiting"), slowAfter);
  while (asked) {
    const now = asked;
    asked = null;
    await answer(now);
  }
  clearTimeout(slow);
  document.body.classList.remove("waiting");
  isAsking = false;
}

async function answer({ address, then }) {
  try {
    const response = await fetch(address, { headers: { Accept: "text/html" }, credentials: "same-origin" });
    const page = new DOMParser().parseFromString(await response.text(), "text/html");
    if (asked) return; // a later one is on its way
    if (!page.getElementById("answer")) return refuse(page, response);
    show(page);
    then(address, page);
  } catch (fault) {
    complain("The server cannot be reached: what you typed is kept; try again", null);
  }
}

// Another page than the desk: the session is over, or the server is busy. What was typed stays.
function refuse(page, response) {
  const signIn = response.status === 401 || new URL(response.url).pathname !== desk;
  const words = page.getElementById("faults") || page.querySelector("h1");
  complain(signIn ? "You are signed out: what you typed is kept here" : words ? words.textContent.trim() : "No answer",
           signIn ? "/session" : null);
}

function complain(text, address) {
  const item = document.createElement("p");
  item.textContent = text;
  if (address) {
    const link = document.createElement("a");
    link.href = address;
    link.target = "_blank";
    link.textContent = "Sign in again, then go on here";
    item.append("; ", link);
  }
  document.getElementById("complaints").replaceChildren(item);
  document.getElementById("answer").classList.add("stale");
}

// ---- what is shown ---------------------------------------------------------------------------------------------

// While a line is being typed it is refused now and then: the figures before it stay, and go grey.
function show(page) {
  const hasFault = !page.getElementById("fault").hidden;
  const isRefused = hasFault || page.getElementById("complaints").childElementCount > 0;
  replace(page, "understood");
  replace(page, "complaints");
  replace(page, "fault");
  document.getElementById("answer").classList.toggle("stale", isRefused);
  if (isRefused) return;
  document.title = page.title;
  keepingPlace(() => {
    for (const part of [...page.getElementById("answer").children]) replace(page, part.id);
    followWhatIf(page);
  });
  const said = page.getElementById("said").textContent;
  const there = document.getElementById("said");
  if (there.textContent !== said) there.textContent = said;
}

// A part that says what it said before is left alone, so that the page stays still.
function replace(page, id) {
  const before = document.getElementById(id);
  const after = page.getElementById(id);
  if (!before || !after || before.outerHTML === after.outerHTML) return;
  before.replaceWith(document.importNode(after, true));
}

// Somebody who is in a field of it keeps what was typed there; which enquiry and quantity it is beside follows.
function followWhatIf(page) {
  const form = whatIfForm();
  const after = page.getElementById("what-if");
  const isTyping = form.contains(document.activeElement) && document.activeElement.matches("input, select");
  if (!isTyping || !(after instanceof HTMLFormElement)) return replace(page, "what-if");
  for (const name of ["line", "quantity", "rank"])
    form.elements.namedItem(name).value = after.elements.namedItem(name).value;
}

// What stands open stays open, and the focus stays on what has the same id.
function keepingPlace(change) {
  const focused = document.activeElement && document.activeElement.id;
  const typed = focused && "value" in document.activeElement ? document.activeElement.value : null;
  const open = new Map([...document.querySelectorAll("#answer details[id], #what-if details[id]")].map(
    (item) => [item.id, item.open]));
  change();
  for (const [id, isOpen] of open) {
    const item = document.getElementById(id);
    if (item) item.open = isOpen;
  }
  const again = focused && document.getElementById(focused);
  if (!again || again === document.activeElement) return;
  if (typed !== null) again.value = typed;
  again.focus({ preventScroll: true });
}

// The line follows the form, and the form the line; what somebody is in keeps what was typed.
function follow(page) {
  if (document.activeElement !== line) line.value = page.getElementById("line").value;
  const form = fieldsForm();
  if (form.contains(document.activeElement) && document.activeElement.tagName !== "BUTTON") return;
  const names = (of) => [...of.elements].map((field) => field.name).join(" ");
  const after = page.getElementById("fields");
  if (names(form) !== names(after)) {
    const isOpen = document.getElementById("more")?.open;
    form.replaceWith(document.importNode(after, true));
    if (isOpen) document.getElementById("more")?.setAttribute("open", "");
    return;
  }
  for (const field of form.elements) if (field.name) field.value = after.elements.namedItem(field.name).value;
}

function replaced(address, page) {
  history.replaceState(null, "", address);
  follow(page);
}

function opened(address, page) {
  history.pushState(null, "", address);
  follow(page);
}

// ---- what people do --------------------------------------------------------------------------------------------

document.addEventListener("input", (event) => {
  if (event.target === line) ask(addressOf(line.form), replaced);
  else if (fieldsForm().contains(event.target)) ask(addressOf(fieldsForm()), replaced);
});

document.addEventListener("submit", (event) => {
  if (![line.form, fieldsForm(), whatIfForm()].includes(event.target)) return;
  event.preventDefault();
  ask(addressOf(event.target, event.submitter), opened);
});

// Another quantity, or what is behind a figure, which closes when it is asked for again.
document.addEventListener("click", (event) => {
  const link = event.target.closest("#answer a");
  if (!link || event.ctrlKey || event.metaKey || event.shiftKey || event.button !== 0) return;
  const address = new URL(link.href);
  if (address.pathname !== desk || !link.matches(".walk, .ladder a, #alone, #any-way")) return;
  event.preventDefault();
  const isOpen = link.closest("tr")?.nextElementSibling?.classList.contains("opened");
  if (isOpen) address.searchParams.delete("explain");
  ask(address.pathname + address.search, opened);
});

window.addEventListener("popstate", () => ask(location.pathname + location.search, (address, page) => follow(page)));

function press(event) {
  if (event.key === "Escape") {
    line.focus();
    line.select();
    return true;
  }
  if (event.altKey && /^[1-9]$/.test(event.key)) {
    document.querySelectorAll(".ladder thead a")[Number(event.key) - 1]?.click();
    return true;
  }
  if ((event.ctrlKey || event.metaKey) && event.key === "s") {
    const form = document.getElementById("save");
    if (form instanceof HTMLFormElement) form.requestSubmit();
    return true;
  }
  if ((event.ctrlKey || event.metaKey) && event.key === "o") {
    location.assign("/quotes");
    return true;
  }
  if (event.key === "?" && !event.target.matches("input, select, textarea")) {
    document.getElementById("keys").focus();
    return true;
  }
  return false;
}

document.addEventListener("keydown", (event) => {
  if (press(event)) event.preventDefault();
});

if (line.value === "") line.focus();
