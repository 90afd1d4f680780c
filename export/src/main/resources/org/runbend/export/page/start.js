// @ts-check
// What one begins with: a shape, a draft, a job of the folder, or a file of this machine.

import { SHAPES } from "./floors.js";
import { button, shapeForm } from "./forms.js";
import { drawn, fill, made } from "./made.js";

/**
 * @typedef {object} Doors
 * @property {(outline: import("./floors.js").Point[]) => void} shape
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
                        made("summary", {}, outlinePicture(shape), shape.name),
                        shapeForm(shape, (outline) => act(() => doors.shape(outline)), "Draw it"),
                    ),
                ),
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
                              button(`${d.title || "Without a title"}${d.name ? ` (${d.name})` : ""}, ${new Date(d.when).toLocaleString()}`, () => act(() => doors.draft(d.id)), { "data-draft": d.id }),
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
            made("h3", { id: "start-file" }, "A job file from elsewhere"),
            made(
                "p",
                {},
                made("label", { for: "start-choose" }, "Choose it here, or drop it on the page: "),
                made("input", {
                    type: "file",
                    id: "start-choose",
                    accept: ".yaml,.yml",
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

/** @param {any} shape */
function outlinePicture(shape) {
    /** @type {Record<string, number>} */
    const numbers = {};
    for (const ask of shape.asks) {
        numbers[ask.key] = ask.value;
    }
    const points = shape.outline(numbers);
    const xs = points.map((/** @type {any} */ p) => p.x);
    const ys = points.map((/** @type {any} */ p) => p.y);
    const margin = 120;
    return drawn(
        "svg",
        {
            class: "shape-picture",
            "aria-hidden": "true",
            viewBox: `${-margin} ${-Math.max(...ys) - margin} ${Math.max(...xs) + 2 * margin} ${Math.max(...ys) + 2 * margin}`,
        },
        drawn("polygon", { points: points.map((/** @type {any} */ p) => `${p.x},${-p.y}`).join(" ") }),
    );
}
