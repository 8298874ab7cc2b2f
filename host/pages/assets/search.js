// A list that is searched answers while somebody types: the address that the form would lead to is fetched, and its
// answer takes the place of the one that is shown. Without this file the form's button does the same.

const form = document.getElementById("search");
const pause = 120; // ms without a key until the server is asked
let waiting = 0;
let newest = 0;

async function show() {
  const turn = ++newest;
  const address = `${form.getAttribute("action")}?${new URLSearchParams(new FormData(form))}`;
  try {
    const response = await fetch(address, { headers: { Accept: "text/html" }, credentials: "same-origin" });
    const page = new DOMParser().parseFromString(await response.text(), "text/html");
    const answer = page.getElementById("answer");
    if (turn !== newest || !answer) return; // a later one is on its way, or this is no answer: the button leads on
    document.getElementById("answer").replaceWith(answer);
    history.replaceState(null, "", address);
  } catch (fault) {
    // The server cannot be reached: what was typed and what was found stay.
  }
}

form.addEventListener("input", () => {
  clearTimeout(waiting);
  waiting = setTimeout(show, pause);
});
