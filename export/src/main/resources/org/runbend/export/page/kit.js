// @ts-check
// The kit: how far the plan is, its figures and checks, its alternatives, and what is taken away.

import { button } from "./forms.js";
import { ruleWords } from "./job.js";
import { drawn, fill, made, refill } from "./made.js";
import { showCame } from "./shop.js";

/**
 * @typedef {object} Plan
 * @property {string} id
 * @property {"none" | "at work" | "laid" | "whole" | "stopped" | "refused"} state
 * @property {string} words what it is at, or why it ended
 * @property {{ at: number, of: number } | null} count
 * @property {any} kit
 * @property {any} picture pieces and bars
 * @property {any} choice table and pictures of alternatives
 * @property {boolean} choosing whether alternatives are being worked out
 * @property {string[]} files
 * @property {boolean} old whether the job has changed since
 * @property {string} lost
 * @property {{ colour: string, words: string }[]} heat legend of the temperatures
 * @property {boolean} keeping whether the ledger is being asked to keep stock for it
 * @property {import("./shop.js").Came | null} came what came of that
 */

/**
 * @typedef {object} Acts
 * @property {() => void} lay
 * @property {() => void} stop
 * @property {(wishes: { key: string, value: any }[]) => void} take
 * @property {(bar: string | null) => void} light
 * @property {(words: string, at: number[] | null) => void} say
 * @property {(on: boolean) => void} forbid
 * @property {boolean} forbidding
 * @property {(on: boolean) => void} move
 * @property {boolean} moving
 * @property {import("./job.js").Rule[]} rules
 * @property {(id: string) => void} drop takes a rule away
 * @property {(id: string) => void} choose
 * @property {(path: string, value: any) => void} set
 * @property {(on: boolean) => void} again
 * @property {boolean} laysAgain
 * @property {boolean} hasStock whether there is a ledger
 * @property {() => void} keep
 * @property {() => void} toShop
 * @property {boolean} heatShown
 * @property {(on: boolean) => void} showHeat
 * @property {boolean} temperatures
 * @property {(on: boolean) => void} withTemperatures
 */

const VERDICTS = { ok: "holds", warn: "look at this", fail: "fails" };
const SIGNS = { ok: "\u2713", warn: "!", fail: "\u2715" };

/** What the files are, in the order in which they are offered. */
const FILES = [
    ["pick-list.pdf", "Pick list: everything in the box, cuts, checks"],
    ["confirm.pdf", "For the customer to check and sign"],
    ["fitting-sheet.pdf", "Fitting sheet: marking out, routing, laying, pressure test"],
    ["cut-sheet.pdf", "Cut sheet for saw and coil"],
    ["labels.pdf", "Labels for pieces, coils and boxes"],
    ["heat.pdf", "Heat report"],
    ["drawing.dxf", "Drawing for the panel shop (DXF)"],
    ["floor.svg", "Picture of the floor"],
    ["temperatures.svg", "Temperatures of the floor"],
    ["temperatures.pdf", "Temperatures on paper"],
    ["cuts.csv", "Cut list for the saw"],
    ["boards.svg", "Boards of the floor"],
    ["kit.json", "Everything in numbers"],
];

/** @returns {Plan} */
export function noPlan() {
    return { id: "", state: "none", words: "", count: null, kit: null, picture: null, choice: null, choosing: false, files: [], old: false, lost: "", heat: [], keeping: false, came: null };
}

/**
 * @param {HTMLElement} part
 * @param {Plan} plan
 * @param {Acts} acts
 */
export function showKit(part, plan, acts) {
    refill(
        part,
        made("h2", {}, "Kit"),
        head(plan, acts),
        plan.kit ? figures(plan.kit) : null,
        plan.heat.length > 0 ? heat(plan, acts) : null,
        plan.kit ? checks(plan.kit) : null,
        plan.files.length > 0 ? files(plan) : null,
        plan.kit && acts.hasStock ? stock(plan, acts) : null,
        plan.kit ? bare(plan.kit, acts) : null,
        plan.kit ? alternatives(plan, acts) : null,
        plan.kit || acts.rules.length > 0 ? rules(plan, acts) : null,
        plan.picture ? bars(plan.picture, acts) : null,
        plan.kit ? remarks(plan.kit) : null,
    );
}

/**
 * @param {Plan} plan
 * @param {Acts} acts
 */
function head(plan, acts) {
    const busy = plan.state === "at work" || plan.state === "laid" || plan.choosing;
    const counted = plan.count && plan.count.of > 0;
    return made(
        "div",
        { class: "head", id: "kit-head" },
        plan.state === "none" ? made("p", { class: "hint", id: "kit-hint" }, "Lay the loop, and its figures, checks and files stand here.") : null,
        made(
            "div",
            { class: "how-far", id: "how-far" }, // as high while it works as when it is done: what stands below stays under the hand
            made("p", { class: plan.state === "refused" ? "words refused" : "words", role: "status", id: "plan-words" }, sentence(plan)),
            busy ? button("Stop", acts.stop, { id: "stop" }) : null,
            !busy && plan.old ? button("Lay it again", acts.lay, { id: "lay-again", class: "main" }) : null,
            busy
                ? made("progress", { "aria-label": "Planning", id: "planning", max: counted ? plan.count?.of : null, value: counted ? plan.count?.at : null })
                : null,
        ),
        made(
            "label",
            { class: "tick" },
            made("input", {
                type: "checkbox",
                id: "lays-again",
                checked: acts.laysAgain,
                onchange: (/** @type {Event} */ e) => acts.again(/** @type {HTMLInputElement} */ (e.target).checked),
            }),
            " Lay again after each change",
        ),
        made(
            "label",
            { class: "tick" },
            made("input", {
                type: "checkbox",
                id: "temperatures",
                checked: acts.temperatures,
                onchange: (/** @type {Event} */ e) => acts.withTemperatures(/** @type {HTMLInputElement} */ (e.target).checked),
            }),
            " Reckon temperatures of the floor too",
        ),
    );
}

/** @param {Plan} plan */
function sentence(plan) {
    if (plan.state === "at work") {
        return capital(plan.words || "getting ready");
    }
    if (plan.state === "laid" || plan.choosing) {
        return plan.choosing ? `The kit is whole. Looking at other ways: ${plan.words}` : capital(plan.words);
    }
    if (plan.old && plan.state === "whole") {
        return "The job has changed since this loop was laid.";
    }
    return plan.state === "whole" ? (plan.lost || "The kit is whole.") : plan.words;
}

/** @param {string} text */
function capital(text) {
    return text.slice(0, 1).toUpperCase() + text.slice(1);
}

/**
 * Money in the way of the papers: amount, then the currency's letters.
 * @param {number} minor
 * @param {string} currency
 */
export function money(minor, currency) {
    let digits = 2;
    try {
        digits = new Intl.NumberFormat("en", { style: "currency", currency }).resolvedOptions().maximumFractionDigits ?? 2;
    } catch {
        // a currency that browsers do not know has cents
    }
    return `${(minor / 10 ** digits).toFixed(digits)} ${currency}`;
}

/** @param {any} kit */
function figures(kit) {
    const pipe = kit.loops.reduce((/** @type {number} */ sum, /** @type {any} */ l) => sum + l.cutLength, 0) / 1000;
    const bends = kit.loops.reduce((/** @type {number} */ sum, /** @type {any} */ l) => sum + l.quarterBends, 0);
    const one = (/** @type {string} */ name, /** @type {string} */ value) => made("div", {}, made("dt", {}, name), made("dd", {}, value));
    return made(
        "dl",
        { class: "figures", "aria-label": "Figures", id: "kit-figures" },
        one("Pipe to cut", `${pipe.toFixed(2)} m`),
        one("Quarter bends", String(bends)),
        one("Plates", `${kit.plates.pieces.length} pieces of ${kit.plates.stock.length} bars`),
        kit.output ? one("Heat into the room", `${Math.round(kit.output.watts)} W`) : null,
        one("Work", `${Math.round(kit.work.seconds / 60)} min`),
        one("Price", money(kit.total, kit.currency)),
    );
}

/**
 * @param {Plan} plan
 * @param {Acts} acts
 */
function heat(plan, acts) {
    return made(
        "section",
        { "aria-label": "Temperatures of the floor", id: "kit-heat" },
        made("h3", {}, "Temperatures of the floor"),
        made(
            "label",
            { class: "tick" },
            made("input", {
                type: "checkbox",
                id: "heat-shown",
                checked: acts.heatShown,
                onchange: (/** @type {Event} */ e) => acts.showHeat(/** @type {HTMLInputElement} */ (e.target).checked),
            }),
            " Show them on the floor",
        ),
        made(
            "ul",
            { class: "legend" },
            ...plan.heat.map((step) =>
                made("li", {}, drawn("svg", { viewBox: "0 0 18 12", class: "swatch", "aria-hidden": "true" }, drawn("rect", { width: 18, height: 12, fill: step.colour })), `${step.words} \u00b0C`),
            ),
        ),
    );
}

/** @param {any} kit */
function checks(kit) {
    const line = (/** @type {any} */ c) =>
        made(
            "li",
            { class: `check ${c.verdict}` },
            made("span", { class: "sign", "aria-hidden": "true" }, /** @type {any} */ (SIGNS)[c.verdict]),
            made("span", { class: "verdict" }, /** @type {any} */ (VERDICTS)[c.verdict]),
            made("span", { class: "what" }, `${capital(c.name)}: ${number(c.value)} ${unit(c.unit)}`),
            made("span", { class: "why" }, `limit ${number(c.limit)} ${unit(c.unit)}; ${c.source}`),
        );
    const open = kit.checks.filter((/** @type {any} */ c) => c.verdict !== "ok");
    const held = kit.checks.filter((/** @type {any} */ c) => c.verdict === "ok");
    const failed = open.some((/** @type {any} */ c) => c.verdict === "fail");
    return made(
        "section",
        { "aria-label": "Checks", id: "kit-checks" },
        made("h3", {}, "Checks"),
        failed ? made("p", { class: "stop-word" }, "Do not cut: a check fails.") : null,
        made("ul", { class: "check-list" }, ...open.map(line)),
        made("details", { id: "checks-held" }, made("summary", {}, `${held.length} checks hold`), made("ul", { class: "check-list" }, ...held.map(line))),
    );
}

/** @param {number} value */
function number(value) {
    return String(Math.round(value * 100) / 100);
}

/** @param {string} word */
function unit(word) {
    return word === "degrees C" ? "\u00b0C" : word;
}

/**
 * @param {any} kit
 * @param {Acts} acts
 */
function bare(kit, acts) {
    const places = kit.bareFloor ?? [];
    return places.length === 0
        ? null
        : made(
              "section",
              { "aria-label": "Bare places", id: "kit-bare" },
              made("h3", {}, "Bare places"),
              made(
                  "ul",
                  { class: "list" },
                  ...places.map((/** @type {any} */ b, /** @type {number} */ i) =>
                      made(
                          "li",
                          {},
                          button(`${b.area.toFixed(2)} m\u00b2 ${b.where}`, () => acts.say(b.words, b.at), { id: `bare-place-${i}` }),
                          ...b.remedies
                              .filter((/** @type {any} */ r) => r.key.startsWith("layout.") && r.more > 0)
                              .map((/** @type {any} */ r, /** @type {number} */ k) =>
                                  button(remedy(r), () => acts.take([{ key: r.key, value: r.to }]), {
                                      id: `remedy-${i}-${k}`,
                                      class: "remedy",
                                  }),
                              ),
                      ),
                  ),
              ),
          );
}

/**
 * What would free a bare place, in words.
 * @param {any} r
 */
function remedy(r) {
    const change = `${number(r.to)} instead of ${number(r.from)}`;
    const words = /** @type {Record<string, string>} */ ({
        "layout.leftOutPrice": "Reach it with more bends",
        "layout.edge": `Lay it with the pipe ${change} mm from the wall`,
        "layout.spacing": `Lay it with ${change} mm from pipe to pipe`,
    });
    return words[r.key] ?? `Lay it with ${r.key} ${change}`;
}

/**
 * @param {Plan} plan
 * @param {Acts} acts
 */
function alternatives(plan, acts) {
    if (!plan.choice) {
        return null;
    }
    const { table, pictures, more } = plan.choice;
    return made(
        "section",
        { "aria-label": "Other ways to lay it", id: "kit-ways" },
        made("h3", {}, "Other ways to lay it"),
        more && plan.choosing ? made("p", { class: "hint" }, "These are done; others are still being looked at.") : null,
        made(
            "ul",
            { class: "alternatives" },
            ...table.alternatives.map((/** @type {any} */ a, /** @type {number} */ i) => {
                const now = a.wishes.length === 0;
                const card = made(
                    "button",
                    {
                        type: "button",
                        id: `alternative-${a.number}`,
                        class: "card",
                        disabled: now || plan.old,
                        onclick: () => acts.take(a.wishes),
                    },
                    made("span", { class: "name" }, `${a.number}. ${a.name}`),
                    picture(pictures[i]),
                    made(
                        "span",
                        { class: "numbers" },
                        [
                            a.upward === undefined ? null : `${Math.round(a.upward)} W`,
                            `${a.minutes} min`,
                            `${a.quarterBends} bends`,
                            money(a.total, table.currency),
                        ]
                            .filter(Boolean)
                            .join(", "),
                    ),
                    made("span", { class: "why" }, now ? "This is what is drawn." : a.why),
                );
                return made("li", {}, card);
            }),
        ),
    );
}

/** @param {string} svg */
function picture(svg) {
    const root = new DOMParser().parseFromString(svg, "image/svg+xml").documentElement;
    root.removeAttribute("width");
    root.removeAttribute("height");
    root.setAttribute("aria-hidden", "true");
    root.setAttribute("class", "small-picture");
    root.querySelectorAll("[id]").forEach((e) => {
        e.setAttribute("class", `layer-${e.id}`);
        e.removeAttribute("id");
    });
    root.querySelector("title")?.remove();
    return document.importNode(root, true);
}

/**
 * @param {Plan} plan
 * @param {Acts} acts
 */
function rules(plan, acts) {
    return made(
        "section",
        { "aria-label": "Lay it otherwise", id: "kit-otherwise" },
        made("h3", {}, "Lay it otherwise"),
        made(
            "div",
            { class: "row" },
            button(acts.forbidding ? "Now choose a spot on the floor" : "Forbid bends at a spot", () => acts.forbid(!acts.forbidding), {
                "aria-pressed": String(acts.forbidding),
                id: "forbid",
            }),
            button("Move a run", () => acts.move(!acts.moving), { "aria-pressed": String(acts.moving), id: "move-run", disabled: !plan.kit }),
        ),
        acts.moving
            ? made(
                  "p",
                  { class: "hint", role: "status" },
                  plan.old ? "The runs can be moved again when the loop is laid." : "Drag a run square to itself, or choose it and press an arrow key. Pipe then lies along there, and all else is laid again.",
              )
            : null,
        acts.rules.length === 0
            ? null
            : made(
                  "ul",
                  { class: "list", "aria-label": "Your wishes for the pipe" },
                  ...acts.rules.map((rule) =>
                      made(
                          "li",
                          { class: "row" },
                          button(ruleWords(rule), () => acts.choose(rule.id), { id: `choose-${rule.id}`, disabled: rule.kind === "noPipe" }),
                          button("Remove", () => acts.drop(rule.id), { id: `drop-${rule.id}`, "aria-label": `Remove: ${ruleWords(rule)}` }),
                      ),
                  ),
              ),
    );
}

/**
 * @param {any} picture
 * @param {Acts} acts
 */
function bars(picture, acts) {
    return made(
        "section",
        { "aria-label": "Plates and the bars they are cut from", id: "kit-bars" },
        made("h3", {}, "Cut from"),
        made(
            "ul",
            { class: "bars" },
            ...picture.bars.map((/** @type {any} */ b) => {
                const words = `${b.id}, ${b.product} ${b.length} mm: ${b.cuts.map((/** @type {any} */ c) => number(c.length)).join(" + ")}, ${number(b.leftover)} left`;
                return made(
                    "li",
                    {},
                    made(
                        "button",
                        {
                            type: "button",
                            class: "bar-button",
                            id: `bar-${String(b.id).replace(/\W/g, "_")}`,
                            "data-bar": b.id,
                            onpointerenter: () => acts.light(String(b.id)),
                            onpointerleave: () => acts.light(null),
                            onfocus: () => acts.light(String(b.id)),
                            onblur: () => acts.light(null),
                            onclick: () => acts.light(String(b.id)),
                        },
                        words,
                    ),
                );
            }),
        ),
    );
}

/**
 * The order of the plan and the shelf.
 * @param {Plan} plan
 * @param {Acts} acts
 */
function stock(plan, acts) {
    const whole = plan.files.length > 0 && !plan.old && plan.id !== "";
    return made(
        "section",
        { "aria-label": "Stock for this order", id: "stock" },
        made("h3", {}, "Stock for this order"),
        made("p", { class: "hint" }, `What this kit takes is kept on the shelf for order ${plan.kit.order}, and its papers are put into a folder.`),
        made(
            "div",
            { class: "row" },
            button(plan.came?.asks ? "Give that back and keep stock for this plan" : `Keep stock for ${plan.kit.order}`, acts.keep, { id: "keep-stock", disabled: !whole || plan.keeping }),
            button("Orders and shelf", acts.toShop, { id: "see-shop" }),
        ),
        made("div", { role: "status", id: "kept-stock" }, plan.came ? showCame(plan.came) : null),
    );
}

/** @param {Plan} plan */
function files(plan) {
    const known = FILES.filter(([name]) => plan.files.includes(name));
    const others = plan.files.filter((name) => !FILES.some(([n]) => n === name)).map((name) => [name, name]);
    const path = (/** @type {string} */ name) => `/api/plans/${plan.id}/files/${name}`;
    return made(
        "section",
        { "aria-label": "Take away", id: "take-away" },
        made("h3", {}, "Take away"),
        made("p", {}, made("a", { class: "main", id: "zip", href: `/api/plans/${plan.id}/kit.zip`, download: "kit.zip" }, "All files as one zip")),
        made(
            "ul",
            { class: "files" },
            ...[...known, ...others].map(([name, words]) =>
                made(
                    "li",
                    {},
                    made("a", { href: `${path(name)}?keep=yes`, download: name.split("/").pop() }, name),
                    made("span", { class: "why" }, words === name ? "" : words),
                    /\.(pdf|svg)$/.test(name) ? button("Show", () => showFile(name, path(name)), { "aria-label": `Show ${name}` }) : null,
                ),
            ),
        ),
    );
}

/**
 * @param {string} name
 * @param {string} path
 */
function showFile(name, path) {
    const dialog = /** @type {HTMLDialogElement} */ (document.getElementById("dialog"));
    fill(
        dialog,
        made("h2", { id: "dialog-title" }, name),
        made("iframe", { src: path, title: name, class: "paper" }),
        made("div", { class: "row" }, made("a", { href: path, target: "_blank", rel: "noopener" }, "Open by itself"), button("Close", () => dialog.close())),
    );
    dialog.className = "wide";
    dialog.showModal();
}

/** @param {any} kit */
function remarks(kit) {
    return (kit.remarks ?? []).length === 0
        ? null
        : made(
              "details",
              { id: "remarks" },
              made("summary", {}, `${kit.remarks.length} remarks`),
              made("ul", { class: "remarks" }, ...kit.remarks.map((/** @type {string} */ r) => made("li", {}, r))),
          );
}
