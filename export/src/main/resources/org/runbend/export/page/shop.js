// @ts-check
// Orders and shelf, where there is a ledger: what it says, what is done with an order next, and a day's orders cut together.

import { get, listen, post, Refusal } from "./ask.js";
import { button } from "./forms.js";
import { Goods } from "./goods.js";
import { byId, made, refill } from "./made.js";

/**
 * @typedef {Record<string, any>} Row
 * @typedef {{ title: string, labels: string[], notes: string[], refused: boolean, asks?: boolean }} Came what came of a movement
 * @typedef {object} Day
 * @property {string} id
 * @property {number} at
 * @property {number} of
 * @property {boolean} busy
 * @property {any} result
 */

/** What is done with an order, in the words of its button. */
const ACTS = /** @type {Record<string, string>} */ ({
    confirm: "It is cut",
    reserve: "Keep stock for it",
    release: "Give its stock back",
    pack: "It is packed",
    send: "It is sent",
    return: "It came back",
});

/** What was done, in the words of who did it; a movement that is taken back says so itself. */
const DID = /** @type {Record<string, string>} */ ({
    keep: "stock is kept for it",
    reserve: "stock is kept for it",
    confirm: "it is cut",
    release: "nothing is kept for it any more",
    pack: "it is packed",
    send: "it is sent",
    return: "it came back",
    spoil: "a piece is cut again",
    receive: "On the shelf",
    note: "On the shelf",
    count: "The ledger has what is there",
});

/** How far an order is, in the ledger's word and what that means at the bench. */
const STATES = /** @type {Record<string, string>} */ ({
    unknown: "not in the ledger any more",
    quoted: "quoted: nothing is kept for it",
    confirmed: "confirmed: stock is kept for it",
    cut: "cut: its stock is gone",
    packed: "packed",
    sent: "sent",
    returned: "returned: its pieces are on the shelf",
});

/** Kinds of the shelf, in the order in which a person looks. */
const KINDS = /** @type {[string, string][]} */ ([
    ["opened coil", "Opened coils"],
    ["coil", "Whole coils"],
    ["offcut", "Offcuts of plates"],
    ["plate", "Whole plates"],
    ["board", "Boards"],
    ["item", "Counted"],
]);

export class Shop {
    /**
     * @param {HTMLElement} place
     * @param {{ failed: (error: any) => void, products: () => string[] }} hooks
     */
    constructor(place, hooks) {
        this.place = place;
        this.hooks = hooks;
        this.title = "";
        /** @type {any} */
        this.told = null;
        /** @type {Came | null} */
        this.came = null;
        /** @type {Day | null} */
        this.day = null;
        this.folder = "";
        this.name = "";
        this.named = false;
        /** Ids of what was pressed, by what it does: pressed twice it is asked once. @type {Map<string, string>} */
        this.requests = new Map();
        this.busy = false;
        this.goods = new Goods(
            (act, about) => this.press(act, about),
            () => this.show(),
        );
    }

    /** Asks the ledger anew and shows what it says. */
    async refresh() {
        this.told = await get("/api/stock");
        this.show();
    }

    /**
     * Has the ledger do something.
     * @param {string} act
     * @param {Row} about order, movement or plan
     * @returns {Promise<Came>}
     */
    async act(act, about) {
        const key = `${act} ${JSON.stringify(about)}`;
        const request = this.requests.get(key) ?? crypto.randomUUID();
        this.requests.set(key, request);
        try {
            const came = await post("/api/stock", { act, request, ...about });
            this.requests.delete(key);
            if (came.asks) {
                return { title: String(came.asks), labels: [], notes: [], refused: false, asks: true };
            }
            const whose = came.order ? `Order ${came.order}: ` : "";
            const did = DID[act] && came.changed ? `${whose}${DID[act]} (movement ${came.movement})` : came.title;
            return { title: did, labels: came.labels, notes: came.notes, refused: false };
        } catch (error) {
            if (!(error instanceof Refusal)) {
                throw error;
            }
            return { title: error.message, labels: [], notes: [], refused: true };
        }
    }

    /**
     * The same by a button of this view; whether it was done.
     * @param {string} act
     * @param {Row} about
     */
    async press(act, about) {
        if (this.busy) {
            return false;
        }
        this.busy = true;
        try {
            const came = await this.act(act, about);
            this.came = came;
            await this.refresh();
            byId("shop-came").scrollIntoView({ block: "nearest" });
            return !came.refused;
        } catch (error) {
            this.hooks.failed(error);
            return false;
        } finally {
            this.busy = false;
        }
    }

    // ---- what is shown ---------------------------------------------------------------------------------------------------

    show() {
        if (this.told === null) {
            return;
        }
        refill(
            this.place,
            made(
                "div",
                { class: "shop-head" },
                made("h2", {}, `Orders and shelf of ${this.title}`),
                button("Look again", () => this.refresh().catch(this.hooks.failed), { id: "shop-again" }),
            ),
            made("div", { id: "shop-came", role: "status", class: "came-place" }, this.came ? showCame(this.came) : null),
            made(
                "div",
                { class: "shop-columns" },
                made("div", {}, this.orders(), made("section", { id: "day", "aria-labelledby": "day-title" }, ...this.dayParts())),
                made("div", {}, this.shelf(), this.reorder()),
            ),
            this.history(),
        );
    }

    orders() {
        const rows = this.told.orders;
        const now = rows.filter((/** @type {Row} */ o) => !o.over);
        const done = rows.filter((/** @type {Row} */ o) => o.over);
        return made(
            "section",
            { "aria-labelledby": "orders-title", id: "orders" },
            made("h3", { id: "orders-title" }, "Orders"),
            now.length === 0 ? made("p", { class: "hint" }, "No order is under way. Lay a loop and keep stock for its order under Kit, or begin a day below.") : null,
            made("ul", { class: "orders" }, ...now.map((/** @type {Row} */ o) => this.order(o))),
            done.length === 0
                ? null
                : made("details", { id: "orders-done" }, made("summary", {}, `${done.length} done: sent, returned, days that are cut`), made("ul", { class: "orders" }, ...done.map((/** @type {Row} */ o) => this.order(o)))),
        );
    }

    /** @param {Row} o */
    order(o) {
        const plain = String(o.order).replace(/[^\w-]/g, "_");
        /** @type {Record<string, string>} */
        const words = { ...ACTS, ...(o.state === "confirmed" ? { reserve: "Keep what was bought too" } : {}) };
        const wants = o.state === "quoted" || o.state === "confirmed";
        const where = o.day ? `cut with day ${o.day}` : o.kit ? `kit in ${o.kit}` : wants ? "its kit lies in no folder of this page" : "";
        return made(
            "li",
            { id: `order-${plain}`, "data-order": o.order, "data-state": o.state },
            made("p", { class: "order-name" }, made("strong", {}, o.order), ` ${STATES[o.state] ?? o.state}`),
            made("p", { class: "why" }, [when(o.since), where].filter(Boolean).join(", ")),
            made(
                "div",
                { class: "row" },
                ...o.acts.map((/** @type {string} */ act, /** @type {number} */ i) =>
                    button(words[act] ?? act, () => this.press(act, { order: o.order }), {
                        id: `${act}-${plain}`,
                        class: i === 0 && act !== "release" && act !== "return" ? "main" : "",
                        "aria-label": `${words[act] ?? act}: order ${o.order}`,
                    }),
                ),
            ),
            this.goods.spoiled(o, plain),
        );
    }

    shelf() {
        const all = this.told.shelf;
        return made(
            "section",
            { "aria-labelledby": "shelf-title", id: "shelf" },
            made("h3", { id: "shelf-title" }, "Shelf"),
            all.length === 0 ? made("p", { class: "hint" }, "Nothing is on the shelf.") : null,
            this.goods.came([...new Set([...all.map((/** @type {Row} */ r) => String(r.product)), ...this.hooks.products()])]),
            all.length === 0 ? null : this.goods.count(all),
            ...KINDS.map(([kind, title]) => {
                const rows = all.filter((/** @type {Row} */ r) => r.kind === kind || (kind === "opened coil" && r.kind === "opened"));
                return rows.length === 0 ? null : made("div", {}, made("h4", {}, title), table(title, rows, ["id", "product", "length", "number", "free", "kept for", "batch", "label"]));
            }),
        );
    }

    reorder() {
        const rows = this.told.reorder;
        return rows.length === 0
            ? null
            : made("section", { "aria-labelledby": "reorder-title" }, made("h3", { id: "reorder-title" }, "To be ordered"), table("To be ordered", rows, ["kind", "product", "length", "order", "there", "free", "days"]));
    }

    history() {
        const rows = this.told.history;
        const more = this.told.movements - rows.length;
        return made(
            "section",
            { "aria-labelledby": "history-title", id: "history" },
            made("h3", { id: "history-title" }, "Movements"),
            rows.length === 0 ? made("p", { class: "hint" }, "None yet.") : null,
            rows.length === 0
                ? null
                : table(
                      "Movements",
                      rows.map((/** @type {Row} */ r) => ({ ...r, when: when(r.when) })),
                      ["movement", "when", "who", "what", "change", "why"],
                      (r) =>
                          r.undoable
                              ? button("Undo", () => this.press("undo", { movement: r.movement }), { id: `undo-${r.movement}`, "aria-label": `Undo movement ${r.movement}, ${r.what}` })
                              : null,
                  ),
            more > 0 ? made("p", { class: "hint" }, `${more} earlier ones: runbend stock history`) : null,
        );
    }

    // ---- a day's orders ----------------------------------------------------------------------------------------------------

    showDay() {
        const place = byId("day");
        if (place) {
            refill(place, ...this.dayParts());
        }
    }

    dayParts() {
        const folders = this.told.folders;
        const known = folders.some((/** @type {Row} */ f) => f.name === this.folder);
        this.folder = known ? this.folder : String(folders[0]?.name ?? "");
        if (!this.named) {
            this.name = this.folder ? `${this.folder}-day` : "";
        }
        return [
            made("h3", { id: "day-title" }, "A day's orders, cut together"),
            folders.length === 0
                ? made("p", { class: "hint" }, "Put the job files of a day into a folder of their own, in the folder of this page: pipe and plates of all are then cut together.")
                : this.dayForm(folders),
            this.day ? showDayRun(this.day, () => post(`/api/days/${this.day?.id}/cancel`, {}).catch(this.hooks.failed)) : null,
        ];
    }

    /** @param {Row[]} folders */
    dayForm(folders) {
        const busy = this.day?.busy ?? false;
        return made(
            "form",
            {
                "aria-labelledby": "day-title",
                onsubmit: (/** @type {Event} */ event) => {
                    event.preventDefault();
                    this.beginDay();
                },
            },
            made(
                "div",
                { class: "field" },
                made("label", { for: "day-folder" }, "Job files in"),
                made(
                    "select",
                    {
                        id: "day-folder",
                        disabled: busy,
                        onchange: (/** @type {Event} */ e) => {
                            this.folder = /** @type {HTMLSelectElement} */ (e.target).value;
                            this.named = false;
                            this.showDay();
                        },
                    },
                    ...folders.map((f) => made("option", { value: f.name, selected: f.name === this.folder }, `${f.name} (${f.jobs})`)),
                ),
            ),
            made(
                "div",
                { class: "field" },
                made("label", { for: "day-name" }, "Name of the day, and of the folder it goes to"),
                made("input", {
                    id: "day-name",
                    value: this.name,
                    autocomplete: "off",
                    disabled: busy,
                    oninput: (/** @type {Event} */ e) => {
                        this.name = /** @type {HTMLInputElement} */ (e.target).value;
                        this.named = true;
                    },
                }),
            ),
            made("button", { type: "submit", id: "day-begin", class: "main", disabled: busy }, "Plan and nest the day"),
        );
    }

    async beginDay() {
        const about = { folder: this.folder, name: this.name.trim() };
        const key = `day ${JSON.stringify(about)}`;
        const request = this.requests.get(key) ?? crypto.randomUUID();
        this.requests.set(key, request);
        try {
            const { day } = await post("/api/days", { ...about, request });
            if (this.day?.id === day) {
                return; // pressed twice
            }
            this.day = { id: String(day), at: 0, of: 0, busy: true, result: null };
            this.hear(this.day, key);
        } catch (error) {
            this.requests.delete(key);
            this.day = { id: "", at: 0, of: 0, busy: false, result: { words: error instanceof Refusal ? error.message : "That did not work.", leftOut: [] } };
        }
        this.showDay();
    }

    /**
     * @param {Day} day
     * @param {string} key of the request
     */
    hear(day, key) {
        listen(
            `/api/days/${day.id}/events`,
            {
                step: (data) => {
                    day.at = data.at;
                    day.of = data.of;
                    this.showDay();
                },
                over: (data) => {
                    day.busy = false;
                    day.result = data;
                    this.requests.delete(key);
                    this.refresh().catch(this.hooks.failed);
                },
            },
            () => {
                day.busy = false;
                day.result = { words: "Runbend does not answer any more. What was written is kept: start the same day again.", leftOut: [] };
                this.showDay();
            },
        );
    }
}

/**
 * What came of a movement: a piece that goes on the shelf says what to write on it.
 * @param {Came} came
 */
export function showCame(came) {
    return made(
        "div",
        { class: came.refused || came.asks ? "came refused" : "came" },
        made("p", { class: "words" }, came.refused ? `Nothing was changed: ${came.title}` : came.title),
        came.labels.length > 0 ? made("ul", { class: "labels" }, ...came.labels.map((l) => made("li", {}, l))) : null,
        ...[...new Set(came.notes)].map((n) => {
            const times = came.notes.filter((o) => o === n).length;
            return made("p", {}, times > 1 ? `${times} times ${n}` : n);
        }),
    );
}

/**
 * How far a day is, or what came of it.
 * @param {Day} day
 * @param {() => void} stop
 */
function showDayRun(day, stop) {
    if (day.busy) {
        return made(
            "div",
            { class: "day-run" },
            made("p", { class: "words", role: "status" }, day.of > 0 && day.at >= day.of ? "All orders are planned; nesting their cuts" : `${day.at} of ${day.of || "?"} orders planned`),
            made("progress", { "aria-label": "The day", max: day.of || 1, value: day.at }),
            button("Stop the day", stop, { id: "day-stop" }),
        );
    }
    const { words, leftOut = [], told = [], folder, day: tree } = day.result ?? {};
    const buys = new Map();
    for (const use of tree?.stock ?? []) {
        if (String(use.buy) === "true") {
            const name = `${use.kind} ${use.product} of ${use.length} mm`;
            buys.set(name, (buys.get(name) ?? 0) + 1);
        }
    }
    return made(
        "div",
        { class: "day-run", id: "day-result", role: "status" },
        words ? made("p", { class: "words refused" }, words) : null,
        folder ? made("p", { class: "words" }, `The day is planned; its lists and kits lie in ${folder}.`) : null,
        ...told.filter((/** @type {string} */ t) => !t.startsWith("Written to")).map((/** @type {string} */ t) => made("p", {}, t)),
        leftOut.length > 0 ? made("h4", {}, "Left out") : null,
        leftOut.length > 0 ? made("ul", { class: "text-faults" }, ...leftOut.map((/** @type {string} */ l) => made("li", {}, l))) : null,
        buys.size > 0 ? made("h4", {}, "To be bought first") : null,
        buys.size > 0 ? made("ul", {}, ...[...buys].map(([name, n]) => made("li", {}, `${n} ${name}`))) : null,
        tree ? made("details", { id: "day-cuts" }, made("summary", {}, "What is cut from what"), cuts(tree)) : null,
    );
}

/** @param {any} tree */
function cuts(tree) {
    return table(
        "What is cut from what",
        tree.stock.map((/** @type {any} */ u) => ({
            from: u.number,
            product: u.product,
            length: u.length,
            cuts: u.cuts.map((/** @type {any} */ c) => `${c.length} for ${c.order}`).join(", "),
            left: u.left,
        })),
        ["from", "product", "length", "cuts", "left"],
    );
}

/**
 * A table that can be moved by keys where it is wider than its place; columns without a word are left out.
 * @param {string} name
 * @param {Row[]} rows
 * @param {string[]} columns
 * @param {(row: Row) => Node | null} [act]
 */
function table(name, rows, columns, act) {
    const filled = columns.filter((c) => rows.some((r) => String(r[c] ?? "") !== ""));
    const isNumber = (/** @type {any} */ v) => typeof v === "number" || /^-?[\d.]+( mm| m)?$/.test(String(v));
    return made(
        "div",
        { class: "table", role: "region", "aria-label": name, tabindex: 0 },
        made(
            "table",
            {},
            made("thead", {}, made("tr", {}, ...filled.map((c) => made("th", { scope: "col" }, c)), act ? made("td", {}) : null)),
            made(
                "tbody",
                {},
                ...rows.map((r) => made("tr", {}, ...filled.map((c) => made("td", { class: isNumber(r[c]) ? "number" : "" }, String(r[c] ?? ""))), act ? made("td", {}, act(r)) : null)),
            ),
        ),
    );
}

/**
 * A time of the ledger where its reader is.
 * @param {string} at ISO 8601, UTC
 */
function when(at) {
    const date = new Date(at);
    return at === "" || Number.isNaN(date.getTime()) ? "" : date.toLocaleString(undefined, { dateStyle: "short", timeStyle: "short" });
}
