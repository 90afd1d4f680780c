// @ts-check
// What one begins with: a shape, a draft, a job of the folder, or a file of this machine.

import { SHAPES } from "./floors.js";
import { button, shapeForm } from "./forms.js";
import { drawn, fill, made } from "./made.js";

/**
 * @typedef {object} Doors
 * @property {(outline: import("./floors.js").Point[]) => void} shape
 * @property {(corners: number) => void} tape
 * @property {(id: string) => void} draft
 * @property {(name: string) => void} job
 * @property {(file: File) => void} file
 * @property {(id: string) => void} forget
 */

/**
 * Shows the ways to begin.
 * @param {HTMLDialogElement} dialog
 * @param {any} session
 * @param {Doors} doors
 * @param {boolean} mayClose
 */
export function showStart(dialog, session, doors, mayClose) {
    const act = (/** @type {() => void} */ go) => {
        dialog.close();
        go();
    };
    dialog.className = "start";
    fill(
        dialog,
        made("h2", { id: "dialog-title" }, "Which floor?"),
        made(
            "section",
            { "aria-labelledby": "start-new" },
            made("h3", { id: "start-new" }, "A new floor"),
            made("p", { class: "hint" }, "Choose the shape that is nearest; its corners can be dragged afterwards."),
            made(
                "div",
                { class: "shapes" },
                ...SHAPES.map((shape) =>
                    made(
                        "details",
                        { name: "shape", class: "shape" },
                        made("summary", {}, outlinePicture(shape.outline(usual(shape))), shape.name),
                        shapeForm(shape, (outline) => act(() => doors.shape(outline)), "Draw it"),
                    ),
                ),
                tapeForm((corners) => act(() => doors.tape(corners))),
            ),
        ),
        session.drafts.length > 0
            ? made(
                  "section",
                  { "aria-labelledby": "start-drafts" },
                  made("h3", { id: "start-drafts" }, "Go on with"),
                  made(
                      "ul",
                      { class: "list" },
                      ...session.drafts.slice(0, 8).map((/** @type {any} */ d) =>
                          made(
                              "li",
                              { class: "row" },
                              button(`${d.title || "Without a title"}${d.name && d.name !== "new.yaml" ? ` (${d.name})` : ""}, ${new Date(d.when).toLocaleString()}`, () => act(() => doors.draft(d.id)), { "data-draft": d.id }),
                              button("Forget", () => {
                                  doors.forget(d.id);
                                  session.drafts = session.drafts.filter((/** @type {any} */ o) => o.id !== d.id);
                                  showStart(dialog, session, doors, mayClose);
                              }, { "aria-label": `Forget the draft ${d.title}` }),
                          ),
                      ),
                  ),
              )
            : null,
        session.jobs.length > 0
            ? made(
                  "section",
                  { "aria-labelledby": "start-jobs" },
                  made("h3", { id: "start-jobs" }, `Job files in ${session.folder}`),
                  made(
                      "ul",
                      { class: "list" },
                      ...session.jobs.map((/** @type {any} */ j) => made("li", {}, button(`${j.title} (${j.name})`, () => act(() => doors.job(String(j.name))), { "data-job": j.name }))),
                  ),
              )
            : null,
        made(
            "section",
            { "aria-labelledby": "start-file" },
            made("h3", { id: "start-file" }, "A job file or a drawing from elsewhere"),
            made(
                "p",
                {},
                made("label", { for: "start-choose" }, "Choose a job file or a DXF here, or drop it on the page: "),
                made("input", {
                    type: "file",
                    id: "start-choose",
                    accept: ".yaml,.yml,.dxf",
                    onchange: (/** @type {Event} */ e) => {
                        const file = /** @type {HTMLInputElement} */ (e.target).files?.[0];
                        if (file) {
                            act(() => doors.file(file));
                        }
                    },
                }),
            ),
        ),
        mayClose ? made("div", { class: "row" }, button("Back to the floor", () => dialog.close(), { id: "start-back" })) : null,
    );
    if (!dialog.open) {
        dialog.showModal();
    }
}

/**
 * A floor from sides and diagonals, of which only the number of corners is asked here.
 * @param {(corners: number) => void} use
 */
function tapeForm(use) {
    const words = made("p", { class: "field-fault", role: "alert" });
    const input = /** @type {HTMLInputElement} */ (made("input", { id: "new-tape-corners", value: 4, inputmode: "numeric", autocomplete: "off" }));
    return made(
        "details",
        { name: "shape", class: "shape" },
        made("summary", {}, outlinePicture([{ x: 0, y: 0 }, { x: 2600, y: 0 }, { x: 2550, y: 1560 }, { x: -40, y: 1500 }]), "From tape measures"),
        made("p", { class: "hint" }, "For a floor that is not square: sides and diagonals are typed, and the measure that does not fit is shown."),
        made(
            "form",
            {
                class: "shape-form",
                "aria-label": "From tape measures",
                onsubmit: (/** @type {Event} */ event) => {
                    event.preventDefault();
                    const corners = Number(input.value);
                    if (!Number.isInteger(corners) || corners < 4 || corners > 12) {
                        words.textContent = "A floor measured by tape has 4 to 12 corners here.";
                    } else {
                        use(corners);
                    }
                },
            },
            made("div", { class: "field" }, made("label", { for: "new-tape-corners" }, "Number of corners"), input),
            words,
            made("button", { type: "submit", class: "main" }, "Type the measures"),
        ),
    );
}

/** @param {any} shape */
function usual(shape) {
    return Object.fromEntries(shape.asks.map((/** @type {any} */ ask) => [ask.key, ask.value]));
}

/** @param {import("./floors.js").Point[]} points */
function outlinePicture(points) {
    const xs = points.map((p) => p.x);
    const ys = points.map((p) => p.y);
    const width = Math.max(...xs) - Math.min(...xs) || 1;
    const height = Math.max(...ys) - Math.min(...ys) || 1;
    const margin = Math.max(width, height) / 20;
    return drawn(
        "svg",
        {
            class: "shape-picture",
            "aria-hidden": "true",
            viewBox: `${Math.min(...xs) - margin} ${-Math.max(...ys) - margin} ${width + 2 * margin} ${height + 2 * margin}`,
        },
        drawn("polygon", { points: points.map((p) => `${p.x},${-p.y}`).join(" ") }),
    );
}

/**
 * Asks which closed line of a drawing is the floor.
 * @param {HTMLDialogElement} dialog
 * @param {any} shown
 * @param {(contour: number) => void} use
 * @param {() => void} back
 */
export function showContours(dialog, shown, use, back) {
    dialog.className = "start";
    fill(
        dialog,
        made("h2", { id: "dialog-title" }, "Which line is the floor?"),
        made("p", { class: "hint" }, shown.candidates.length > 0 ? "Several closed lines of the drawing could be." : String(shown.words)),
        made(
            "ul",
            { class: "shapes" },
            ...shown.candidates.slice(0, 24).map((/** @type {any} */ c) =>
                made(
                    "li",
                    {},
                    made(
                        "button",
                        {
                            type: "button",
                            class: "card",
                            "data-contour": c.number,
                            onclick: () => {
                                dialog.close();
                                use(c.number);
                            },
                        },
                        outlinePicture(c.outline.map((/** @type {number[]} */ p) => ({ x: p[0], y: p[1] }))),
                        made("span", {}, `${c.number}: ${c.area.toFixed(2)} m\u00b2${c.what ? `, ${c.what}` : ""}`),
                    ),
                ),
            ),
        ),
        made("div", { class: "row" }, button("Another file or floor", () => {
            dialog.close();
            back();
        })),
    );
    if (!dialog.open) {
        dialog.showModal();
    }
}
