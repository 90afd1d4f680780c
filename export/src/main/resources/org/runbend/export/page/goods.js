// @ts-check
// Goods that come in, a stock-take, and a piece that was cut wrong: forms of orders and shelf.

import { made } from "./made.js";

/**
 * @typedef {Record<string, any>} Row
 * @typedef {(act: string, about: Row) => Promise<boolean>} Move moves something; whether it was done
 */

/** What can come in; pieces have their length, everything else is counted. */
const KINDS = [
    { kind: "coil", label: "whole coils", hasLength: true, isPiece: false, example: "50 m" },
    { kind: "plate", label: "whole plates", hasLength: true, isPiece: false, example: "1000 mm" },
    { kind: "board", label: "boards", hasLength: false, isPiece: false, example: "" },
    { kind: "item", label: "counted parts", hasLength: false, isPiece: false, example: "" },
    { kind: "opened", label: "an opened coil", hasLength: true, isPiece: true, example: "26.5 m" },
    { kind: "offcut", label: "an offcut of a plate", hasLength: true, isPiece: true, example: "400 mm" },
];

export class Goods {
    /**
     * @param {Move} move
     * @param {() => void} show shows the forms anew
     */
    constructor(move, show) {
        this.move = move;
        this.show = show;
        /** What stands in the fields, by their ids. @type {Map<string, string>} */
        this.typed = new Map([["came-kind", "coil"]]);
    }

    /** @param {string} id */
    said(id) {
        return (this.typed.get(id) ?? "").trim();
    }

    /** @param {...string} ids */
    clear(...ids) {
        ids.forEach((id) => this.typed.delete(id));
    }

    // ---- goods came ------------------------------------------------------------------------------------------------------

    /**
     * @param {string[]} products that are known
     */
    came(products) {
        const kind = KINDS.find((k) => k.kind === this.said("came-kind")) ?? KINDS[0];
        return this.part(
            "came",
            "Goods came in",
            made(
                "form",
                {
                    id: "came-form",
                    onsubmit: (/** @type {Event} */ event) => {
                        event.preventDefault();
                        void this.receive(kind);
                    },
                },
                this.choice("came-kind", "What", KINDS.map((k) => ({ value: k.kind, label: k.label }))),
                this.word("came-product", "Part number", { list: "products", required: true }),
                made("datalist", { id: "products" }, ...products.map((p) => made("option", { value: p }))),
                kind.hasLength ? this.word("came-length", kind.isPiece ? "How much is on it" : "Length of each", { required: true, placeholder: kind.example }) : null,
                kind.isPiece ? null : this.word("came-quantity", "How many", { required: true, inputmode: "numeric" }),
                this.word("came-batch", "Batch", { placeholder: "if it says one" }),
                kind.isPiece ? this.word("came-id", "Number on it", { placeholder: "gets a new one" }) : null,
                this.word("came-label", "What else is written on it", { placeholder: "nothing" }),
                made("div", { class: "row" }, made("button", { type: "submit", id: "came-do", class: "main" }, "Put it on the shelf")),
            ),
            made(
                "label",
                { class: "note-file" },
                "or all lines of a delivery note, a CSV file with the columns kind, product, length, quantity, batch: ",
                made("input", {
                    type: "file",
                    id: "came-note",
                    accept: ".csv,text/csv",
                    onchange: (/** @type {Event} */ e) => void this.note(/** @type {HTMLInputElement} */ (e.target)),
                }),
            ),
        );
    }

    /** @param {typeof KINDS[number]} kind */
    async receive(kind) {
        const about = {
            kind: kind.kind,
            product: this.said("came-product"),
            length: kind.hasLength ? this.said("came-length") : "",
            quantity: kind.isPiece ? "" : this.said("came-quantity"),
            batch: this.said("came-batch"),
            id: kind.isPiece ? this.said("came-id") : "",
            label: this.said("came-label"),
        };
        if (await this.move("receive", about)) {
            this.clear("came-product", "came-length", "came-quantity", "came-batch", "came-id", "came-label");
            this.show();
        }
    }

    /** @param {HTMLInputElement} input */
    async note(input) {
        const file = input.files?.[0];
        if (file) {
            await this.move("note", { name: file.name, text: await file.text() });
            input.value = "";
        }
    }

    // ---- a stock-take ----------------------------------------------------------------------------------------------------

    /** @param {Row[]} shelf */
    count(shelf) {
        const chosen = shelf.find((r) => nameOf(r) === this.said("count-what"));
        const isPiece = Boolean(chosen?.id);
        return this.part(
            "count",
            "Stock-take",
            made(
                "form",
                {
                    id: "count-form",
                    onsubmit: (/** @type {Event} */ event) => {
                        event.preventDefault();
                        void this.counted(chosen);
                    },
                },
                this.choice("count-what", "What was counted", [{ value: "", label: "choose" }, ...shelf.map((r) => ({ value: nameOf(r), label: nameOf(r) }))]),
                this.word("count-amount", isPiece ? "What is left of it" : "How many there are", {
                    required: true,
                    placeholder: chosen ? `${isPiece ? chosen.length : chosen.number} in the ledger` : "",
                }),
                made("p", { class: "hint" }, isPiece ? "0 if it is gone." : "What is there counts; the difference is a movement."),
                made("div", { class: "row" }, made("button", { type: "submit", id: "count-do", class: "main" }, "That is what is there")),
            ),
        );
    }

    /** @param {Row | undefined} row */
    async counted(row) {
        if (row && (await this.move("count", { ...row.as, amount: this.said("count-amount") }))) {
            this.clear("count-what", "count-amount");
            this.show();
        }
    }

    // ---- a piece was cut wrong -------------------------------------------------------------------------------------------

    /**
     * @param {Row} order
     * @param {string} plain its number as part of an id
     */
    spoiled(order, plain) {
        if (order.cuts.length === 0) {
            return null;
        }
        const cut = `spoil-${plain}-cut`;
        const rest = `spoil-${plain}-rest`;
        return this.part(
            `spoil-${plain}`,
            "A piece was cut wrong",
            made(
                "form",
                {
                    id: `spoil-${plain}-form`,
                    onsubmit: (/** @type {Event} */ event) => {
                        event.preventDefault();
                        void this.spoil(order.order, cut, rest);
                    },
                },
                this.choice(cut, "Which", [
                    { value: "", label: "choose" },
                    ...order.cuts.map((/** @type {Row} */ c) => ({ value: String(c.cut), label: `${c["goes to"]}: ${c.length} of ${c.product}` })),
                ]),
                this.word(rest, "What of it can still be used", { placeholder: "nothing" }),
                made("div", { class: "row" }, made("button", { type: "submit", id: `spoil-${plain}-do`, class: "main" }, "Cut it again from the shelf")),
            ),
        );
    }

    /**
     * @param {string} order
     * @param {string} cut
     * @param {string} rest
     */
    async spoil(order, cut, rest) {
        if (this.said(cut) !== "" && (await this.move("spoil", { order, cut: this.said(cut), rest: this.said(rest) }))) {
            this.clear(cut, rest);
            this.show();
        }
    }

    // ---- fields ----------------------------------------------------------------------------------------------------------

    /**
     * @param {string} id
     * @param {string} title
     * @param {...import("./made.js").Child} children
     */
    part(id, title, ...children) {
        return made("details", { id: `${id}-part`, class: "goods" }, made("summary", {}, title), ...children);
    }

    /**
     * @param {string} id
     * @param {string} label
     * @param {Row} more
     */
    word(id, label, more = {}) {
        return this.field(
            id,
            label,
            made("input", {
                id,
                autocomplete: "off",
                ...more,
                value: this.typed.get(id) ?? "",
                oninput: (/** @type {Event} */ e) => this.typed.set(id, /** @type {HTMLInputElement} */ (e.target).value),
            }),
        );
    }

    /**
     * @param {string} id
     * @param {string} label
     * @param {{ value: string, label: string }[]} options
     */
    choice(id, label, options) {
        return this.field(
            id,
            label,
            made(
                "select",
                {
                    id,
                    required: true,
                    onchange: (/** @type {Event} */ e) => {
                        this.typed.set(id, /** @type {HTMLSelectElement} */ (e.target).value);
                        this.show();
                    },
                },
                ...options.map((o) => made("option", { value: o.value, selected: o.value === (this.typed.get(id) ?? "") }, o.label)),
            ),
        );
    }

    /**
     * @param {string} id
     * @param {string} label
     * @param {HTMLElement} control
     */
    field(id, label, control) {
        return made("div", { class: "field", id: `${id}-field` }, made("label", { for: id }, label), control);
    }
}

/**
 * What lies on the shelf, as a person names it.
 * @param {Row} r
 */
function nameOf(r) {
    const batch = r.batch ? `, batch ${r.batch}` : "";
    return r.id ? `${r.kind} ${r.id} (${r.product})` : `${r.kind} ${r.product}${r.length ? ` of ${r.length}` : ""}${batch}${r.label ? `, ${r.label}` : ""}`;
}
