// @ts-check
// The address that was printed carries a token behind the #, which no browser sends anywhere: it is handed over once.

const match = /^#token=([\w-]+)$/.exec(location.hash);
const words = /** @type {HTMLElement} */ (document.getElementById("words"));

if (match) {
    history.replaceState(null, "", "/");
    words.textContent = "One moment.";
    const answer = await fetch("/enter", { method: "POST", body: new URLSearchParams({ token: match[1] }) });
    if (answer.ok) {
        location.reload();
    } else {
        words.textContent = (await answer.json()).words;
    }
}

export {};
