// @ts-check
// Asks the server. Everything that changes anything carries the page's token.

let token = "";

/** What the server does not do, in words for a person. */
export class Refusal extends Error {
    /**
     * @param {number} status
     * @param {string} words
     */
    constructor(status, words) {
        super(words);
        this.status = status;
    }
}

/** What there is: folder, jobs, catalogs, drafts. */
export async function session() {
    const answer = await get("/api/session");
    token = answer.token;
    return answer;
}

/**
 * @param {string} path
 * @returns {Promise<any>}
 */
export function get(path) {
    return ask(path, {});
}

/**
 * @param {string} path
 * @param {object} message
 * @returns {Promise<any>}
 */
export function post(path, message) {
    return ask(path, { method: "POST", headers: { "Runbend-Token": token }, body: JSON.stringify(message) });
}

/**
 * Sends a file as it is.
 * @param {string} path
 * @param {File} file
 * @returns {Promise<any>}
 */
export function send(path, file) {
    return ask(path, { method: "POST", headers: { "Runbend-Token": token }, body: file });
}

/**
 * @param {string} path
 * @param {RequestInit} how
 */
async function ask(path, how) {
    let answer;
    try {
        answer = await fetch(path, how);
    } catch {
        throw new Refusal(0, "Runbend has ended on this machine. Start runbend page again: your draft is kept.");
    }
    const told = await answer.json().catch(() => ({ words: "The answer was not understood." }));
    if (!answer.ok) {
        throw new Refusal(answer.status, told.words ?? "That did not work.");
    }
    return told;
}

/**
 * Listens to events of a plan or of the house.
 * @param {string} path
 * @param {Record<string, (data: any) => void>} heard by their kinds
 * @param {() => void} [lost]
 */
export function listen(path, heard, lost) {
    const source = new EventSource(path);
    for (const [kind, listener] of Object.entries(heard)) {
        source.addEventListener(kind, (event) => {
            if (kind === "over" || kind === "ended") {
                source.close();
            }
            listener(JSON.parse(event.data));
        });
    }
    source.addEventListener("error", () => {
        if (source.readyState === EventSource.CLOSED) {
            lost?.();
        }
    });
    return source;
}
