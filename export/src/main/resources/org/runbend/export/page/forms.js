// @ts-check
// The numbers beside the drawing: floor, what is on it, wishes. Whatever can be dragged can be typed here.

import { area, at, cornerName, distance, middle, rise, SHAPES, withCorner, withRise, withSide } from "./floors.js";
import { box, find, KINDS, pair, put, title, withOutline, withPoints, withThing } from "./job.js";
import { mm, shown, written } from "./lengths.js";
import { fill, made } from "./made.js";

/**
 * @typedef {import("./job.js").Thing} Thing
 * @typedef {import("./job.js").View} View
 * @typedef {object} Desk
 * @property {any} doc
 * @property {View} view
 * @property {string} selected
 * @property {any} products
 * @property {string[]} catalogs
 * @property {any} floor
 * @property {any[]} faults
 * @property {string} text
 * @property {(doc: any) => void} change
 * @property {(id: string) => void} select
 * @property {(text: string) => void} retype
 * @property {(words: string) => void} notice
 * @property {() => Promise<void>} addCatalog
 * @property {(name: string) => void} next goes on with another part of the job, or lays the loop
 * @property {boolean} mayLay
 */

/**
 * A labelled control.
 * @param {string} id
 * @param {string} label
 * @param {HTMLElement} control
 * @param {string} [unit]
 */
function field(id, label, control, unit = "") {
    control.id = id;
    return made(
        "div",
        { class: "field" },
        made("label", { for: id }, label),
        made("span", { class: "with-unit" }, control, unit ? made("span", { class: "unit", "aria-hidden": "true" }, unit) : null),
    );
}

/**
 * A length to type; what is none is said at the field and changes nothing.
 * @param {string} id
 * @param {string} label
 * @param {number | null} value mm
 * @param {(value: number) => void} change
 * @param {{ least?: number, most?: number, disabled?: boolean, optional?: () => void, placeholder?: string }} [rules]
 */
function length(id, label, value, change, rules = {}) {
    const words = made("span", { class: "field-fault", id: `${id}-fault`, role: "alert" });
    const input = made("input", {
        value: value === null ? "" : shown(value),
        inputmode: "decimal",
        autocomplete: "off",
        disabled: rules.disabled,
        placeholder: rules.placeholder,
        "aria-describedby": `${id}-fault`,
        onchange: (/** @type {Event} */ event) => {
            const target = /** @type {HTMLInputElement} */ (event.target);
            const typed = mm(target.value);
            const least = rules.least ?? -Infinity;
            const most = rules.most ?? Infinity;
            if (target.value.trim() === "" && rules.optional) {
                words.textContent = "";
                rules.optional();
            } else if (typed === null || typed < least || typed > most) {
                target.setAttribute("aria-invalid", "true");
                const range = least > -Infinity ? `, at least ${least}` : "";
                words.textContent = `A length in mm${range}${most < Infinity ? `, at most ${most}` : ""}; 1.65 m and 65 in are understood too.`;
            } else {
                target.removeAttribute("aria-invalid");
                words.textContent = "";
                change(typed);
            }
        },
    });
    const whole = field(id, label, input, "mm");
    whole.append(words);
    return whole;
}

/**
 * @param {string} id
 * @param {string} label
 * @param {string} value
 * @param {(value: string) => void} change
 * @param {string} [unit]
 * @param {string} [placeholder]
 */
function word(id, label, value, change, unit = "", placeholder = "") {
    const input = made("input", {
        value,
        autocomplete: "off",
        placeholder,
        onchange: (/** @type {Event} */ e) => change(/** @type {HTMLInputElement} */ (e.target).value.trim()),
    });
    return field(id, label, input, unit);
}

/**
 * @param {string} id
 * @param {string} label
 * @param {string} value
 * @param {{ value: string, label: string }[]} options
 * @param {(value: string) => void} change
 */
function choice(id, label, value, options, change) {
    const known = options.some((o) => o.value === value) ? options : [{ value, label: value || "choose" }, ...options];
    const select = made(
        "select",
        { onchange: (/** @type {Event} */ e) => change(/** @type {HTMLSelectElement} */ (e.target).value) },
        ...known.map((o) => made("option", { value: o.value, selected: o.value === value }, o.label)),
    );
    return field(id, label, select);
}

/**
 * A button that does something.
 * @param {string} label
 * @param {() => void} act
 * @param {Record<string, any>} [more]
 */
export function button(label, act, more = {}) {
    return made("button", { type: "button", onclick: act, ...more }, label);
}

/**
 * The form of one of the shapes to begin with.
 * @param {any} shape
 * @param {(outline: import("./floors.js").Point[]) => void} use
 * @param {string} label of the button that takes it
 */
export function shapeForm(shape, use, label) {
    const key = shape.name.toLowerCase().replace(/\W+/g, "-");
    const words = made("p", { class: "field-fault", role: "alert" });
    const inputs = shape.asks.map((/** @type {any} */ ask) => ({
        key: ask.key,
        input: made("input", { value: ask.value, inputmode: "decimal", autocomplete: "off" }),
        label: ask.label,
    }));
    return made(
        "form",
        {
            class: "shape-form",
            "aria-label": shape.name,
            onsubmit: (/** @type {Event} */ event) => {
                event.preventDefault();
                /** @type {Record<string, number>} */
                const numbers = {};
                for (const { key: k, input, label: l } of inputs) {
                    const value = mm(/** @type {HTMLInputElement} */ (input).value);
                    if (value === null || value < 0 || (value < 50 && k !== "from" && k !== "depth")) {
                        words.textContent = `${l}: a length in mm, such as 1600, is wanted.`;
                        input.focus();
                        return;
                    }
                    numbers[k] = value;
                }
                words.textContent = shape.wrong(numbers);
                if (!words.textContent) {
                    use(shape.outline(numbers));
                }
            },
        },
        ...inputs.map((/** @type {any} */ i) => field(`new-${key}-${i.key}`, i.label, i.input, "mm")),
        words,
        made("button", { type: "submit", class: "main" }, label),
    );
}

/**
 * @param {HTMLElement} part
 * @param {Desk} desk
 */
export function showFloor(part, desk) {
    const { view } = desk;
    const n = view.outline.length;
    if (n === 0) {
        fill(part, view.given === "tape" ? tape(desk) : made("p", { class: "hint" }, "No floor yet."));
        return;
    }
    const corner = /^(?:corner|side|round)-(\d+)$/.exec(desk.selected);
    const at0 = corner ? Math.min(Number(corner[1]), n - 1) : -1;
    fill(
        part,
        made("h2", {}, "Floor"),
        made("p", { class: "sum" }, `${(Math.abs(area(view.outline)) / 1e6).toFixed(2)} m\u00b2, ${n} corners`),
        view.plain ? null : given(view, desk),
        view.plain && at0 >= 0 ? cornerForm(desk, at0) : view.plain ? made("p", { class: "hint" }, "Drag a corner or a side, or type its length. A side that is chosen has a second handle that curves it. Arrow keys move what is chosen by 10 mm, with Shift by 100, with Alt by 1.") : null,
        view.given === "tape" ? null : made("h3", { id: "sides-title" }, "Sides"),
        view.given === "tape" ? null : made(
            "div",
            { class: "sides", role: "group", "aria-labelledby": "sides-title" },
            ...view.outline.map((p, i) => {
                const q = view.outline[(i + 1) % n];
                return length(
                    `side-length-${i}`,
                    `${cornerName(i)} to ${cornerName((i + 1) % n)}${p.bulge ? ", across its curve" : ""}`,
                    distance(p, q),
                    (value) => desk.change(withOutline(desk.doc, withSide(desk.view.outline, i, value))),
                    { least: 1, disabled: !view.plain },
                );
            }),
        ),
        view.plain
            ? made(
                  "details",
                  { class: "again" },
                  made("summary", {}, "Begin with another shape"),
                  ...SHAPES.map((shape) =>
                      made(
                          "details",
                          {},
                          made("summary", {}, shape.name),
                          shapeForm(shape, (outline) => desk.change(withOutline(desk.doc, outline)), "Draw it"),
                      ),
                  ),
              )
            : null,
        next(desk, "things", "Next: what stands on it"),
    );
}

/**
 * What comes next, for whoever is here for the first time.
 * @param {Desk} desk
 * @param {string} name of the part, or "lay"
 * @param {string} words
 */
function next(desk, name, words) {
    return made("p", { class: "next" }, button(words, () => desk.next(name), { id: `next-${name}`, class: name === "lay" ? "main" : "", disabled: name === "lay" && !desk.mayLay }));
}

/**
 * How a floor is given that cannot be dragged.
 * @param {View} view
 * @param {Desk} desk
 */
function given(view, desk) {
    if (view.given === "tape") {
        return tape(desk);
    }
    return made(
        "p",
        { class: "hint" },
        view.given === "base"
            ? "This floor comes from the job that this one extends; give it an outline of its own in the job file to change it here."
            : "This outline is written in a way that only the job file can change.",
    );
}

/** A residual that wants a person's eye, mm; the checks of a plan have the same. */
const DOUBTFUL = 5;

/**
 * The measures of a floor, and which of them fits worst.
 * @param {Desk} desk
 */
function tape(desk) {
    const path = ["floor", "measured", "lengths"];
    const lengths = find(desk.doc, path) ?? [];
    const unit = String(desk.doc.units ?? "mm");
    const residual = (/** @type {any} */ l) => {
        const found = (desk.floor?.measured ?? []).find((/** @type {any} */ m) => String(m.from) === String(l[0]) && String(m.to) === String(l[1]));
        return found && desk.faults.length === 0 ? Number(found.residual) : 0;
    };
    // a gross error is named by the reader of jobs, which tests each measure against all others; a residual alone tells none
    const suspects = new Set(
        desk.faults
            .filter((f) => String(f.path).startsWith("floor.measured"))
            .flatMap((f) => [...String(f.message).matchAll(/([\p{L}\p{N}]+)-([\p{L}\p{N}]+)/gu)].map((m) => m[0])),
    );
    const off = Math.max(0, ...lengths.map((/** @type {any} */ l) => Math.abs(residual(l))));
    const remark = (/** @type {any} */ l) => {
        if (suspects.has(`${l[0]}-${l[1]}`)) {
            return " (take it again)";
        }
        return Math.abs(residual(l)) > DOUBTFUL ? ` (${shown(Math.abs(residual(l)))} too ${residual(l) > 0 ? "long" : "short"})` : "";
    };
    return made(
        "div",
        {},
        made("h3", { id: "tape-title" }, "Measures"),
        made(
            "p",
            { class: off > DOUBTFUL || suspects.size > 0 ? "words refused" : "hint", id: "tape-words", role: "status" },
            suspects.size > 0
                ? `Take again: ${[...suspects].map((s) => s.replace("-", " to ")).join(", ")}.`
                : off > DOUBTFUL
                ? `The measures miss each other by up to ${shown(off)} mm; look at those marked below.`
                : "Type what the tape says, from corner to corner. The floor is drawn so that all fit best.",
        ),
        made(
            "div",
            { role: "group", "aria-labelledby": "tape-title" },
            ...lengths.map((/** @type {any} */ l, /** @type {number} */ i) =>
                length(
                    `tape-${i}`,
                    `${l[0]} to ${l[1]}${remark(l)}`,
                    mm(l[2], unit),
                    (value) => desk.change(put(desk.doc, [...path, i, 2], written(value, unit))),
                    { least: 1 },
                ),
            ),
        ),
        button("Take this outline as it is drawn", () => {
            const outline = desk.view.outline;
            desk.change(withOutline(put(desk.doc, ["floor", "measured"], undefined), outline));
        }, { id: "tape-to-outline", disabled: desk.faults.length > 0 }),
    );
}

/**
 * @param {Desk} desk
 * @param {number} i
 */
function cornerForm(desk, i) {
    const { outline } = desk.view;
    const p = outline[i];
    const n = outline.length;
    const moved = (/** @type {import("./floors.js").Point} */ q) =>
        desk.change(withOutline(desk.doc, desk.view.outline.map((o, k) => (k === i ? { ...o, ...q } : o))));
    const next = (i + 1) % n;
    const turn = Math.sign(area(outline)) || 1; // outside is to the right of a side where corners go anticlockwise
    return made(
        "fieldset",
        {},
        made("legend", {}, `Corner ${cornerName(i)}`),
        length("corner-x", "From the left", p.x, (x) => moved(at(x, p.y))),
        length("corner-y", "From below", p.y, (y) => moved(at(p.x, y))),
        length(
            "side-rise",
            `${cornerName(i)} to ${cornerName(next)} curves outward by`,
            turn * rise(p, outline[next]),
            (v) => desk.change(withOutline(desk.doc, withRise(desk.view.outline, i, turn * v))),
            { optional: () => desk.change(withOutline(desk.doc, withRise(desk.view.outline, i, 0))) },
        ),
        made(
            "div",
            { class: "row" },
            button(`Add a corner after ${cornerName(i)}`, () => {
                desk.change(withOutline(desk.doc, withCorner(outline, i)));
                desk.select(`corner-${i + 1}`);
            }),
            button(`Remove ${cornerName(i)}`, () => {
                desk.change(withOutline(desk.doc, outline.filter((_, k) => k !== i)));
                desk.select("");
            }, { disabled: n <= 3 }),
        ),
    );
}

/**
 * @param {HTMLElement} part
 * @param {Desk} desk
 */
export function showThings(part, desk) {
    const { view, doc } = desk;
    const chosen = view.things.find((t) => t.id === desk.selected);
    const add = (/** @type {import("./job.js").List} */ list, /** @type {string} */ kind) => {
        const added = withThing(desk.doc, list, kind, middle(view.outline));
        desk.change(added.doc);
        desk.select(added.id);
    };
    const locked = Boolean(doc.extends) && !Array.isArray(find(doc, ["floor", "keepOut"]));
    fill(
        part,
        made("h2", {}, "On the floor"),
        chosen ? thingForm(desk, chosen) : desk.selected === "port" || desk.selected.startsWith("hole") ? portForm(desk) : null,
        made("h3", { id: "add-title" }, "Add"),
        made(
            "div",
            { class: "adds", role: "group", "aria-labelledby": "add-title" },
            ...KINDS.map((k) => button(k.name, () => add("keepOut", k.kind), { disabled: locked, id: `add-${k.kind}` })),
            button("Unheated part", () => add("unheated", "unheated"), { id: "add-unheated" }),
            button("Rib or batten", () => add("supports", "supports"), { id: "add-supports" }),
            button("Under the floor", () => add("below", "below"), { id: "add-below" }),
            button("Mark", () => add("marks", "marks"), { id: "add-marks" }),
        ),
        made("p", { class: "hint" }, "It comes to the middle of the floor: drag it to its place, or type where it is."),
        made("h3", {}, "What is there"),
        made(
            "ul",
            { class: "list" },
            made("li", {}, button("Flow and return", () => desk.select("port"), { "aria-pressed": String(desk.selected === "port"), id: "choose-port" })),
            ...view.things.map((t) =>
                made(
                    "li",
                    {},
                    button(`${t.name}${t.name.toLowerCase().startsWith(title(t.kind).toLowerCase()) ? "" : ` (${title(t.kind).toLowerCase()})`}`, () => desk.select(t.id), {
                        "aria-pressed": String(t.id === desk.selected),
                        id: `choose-${t.id}`,
                    }),
                ),
            ),
        ),
        next(desk, "wishes", "Next: pipe and heat"),
    );
}

/**
 * @param {Desk} desk
 * @param {Thing} thing
 */
function thingForm(desk, thing) {
    const path = ["floor", thing.list, thing.index];
    const entry = find(desk.doc, path) ?? {};
    const unit = String(desk.doc.units ?? "mm");
    const set = (/** @type {string} */ key, /** @type {any} */ value) => desk.change(put(desk.doc, [...path, key], value));
    const words = thing.list === "marks" ? "text" : "name";
    const xs = thing.points.map((p) => p.x);
    const ys = thing.points.map((p) => p.y);
    const move = (/** @type {number} */ dx, /** @type {number} */ dy) =>
        desk.change(withPoints(desk.doc, thing, thing.points.map((p) => at(p.x + dx, p.y + dy))));
    const isBox = thing.shape === "polygon" && thing.points.length === 4 && new Set(xs).size === 2 && new Set(ys).size === 2;
    const least = { x: Math.min(...xs), y: Math.min(...ys) };
    const sized = (/** @type {number} */ l, /** @type {number} */ w) =>
        desk.change(withPoints(desk.doc, thing, box(at(least.x + l / 2, least.y + w / 2), l, w)));
    if (!thing.plain) {
        return made("p", { class: "hint" }, `${thing.name} comes from elsewhere and is changed in the job file.`);
    }
    return made(
        "fieldset",
        {},
        made("legend", {}, thing.name),
        word("thing-name", thing.list === "marks" ? "What it says" : "Name", String(entry[words] ?? ""), (v) => set(words, v || title(thing.kind).toLowerCase())),
        thing.list === "keepOut"
            ? choice("thing-kind", "Kind", thing.kind, KINDS.map((k) => ({ value: k.kind, label: k.name })), (v) => set("kind", v))
            : null,
        thing.shape === "edge" ? null : length("thing-x", isBox ? "Left edge from the left" : "From the left", least.x, (v) => move(v - least.x, 0)),
        thing.shape === "edge" ? null : length("thing-y", isBox ? "Lower edge from below" : "From below", least.y, (v) => move(0, v - least.y)),
        thing.shape === "circle"
            ? length("thing-diameter", "Diameter", 2 * thing.radius, (v) => desk.change(put(desk.doc, [...path, "circle", "radius"], written(v / 2, unit))), { least: 1 })
            : null,
        isBox ? length("thing-length", "Length", Math.max(...xs) - least.x, (v) => sized(v, Math.max(...ys) - least.y), { least: 1 }) : null,
        isBox ? length("thing-width", "Width", Math.max(...ys) - least.y, (v) => sized(Math.max(...xs) - least.x, v), { least: 1 }) : null,
        thing.shape === "line" ? length("thing-width", "Width", thing.width, (v) => set("width", written(v, unit)), { least: 1 }) : null,
        thing.list === "keepOut"
            ? length(
                  "thing-clearance",
                  "Clear to the middle of the pipe",
                  mm(entry.clearance, unit),
                  (v) => set("clearance", written(v, unit)),
                  { least: 0, optional: () => set("clearance", undefined), placeholder: `${shown(thing.clearance)} by kind` },
              )
            : null,
        made(
            "div",
            { class: "row" },
            button(`Remove ${thing.name}`, () => {
                desk.change(put(desk.doc, path, undefined));
                desk.select("");
            }),
        ),
    );
}

/** @param {Desk} desk */
function portForm(desk) {
    const { doc, view } = desk;
    const port = view.port ?? at(0, 0);
    const unit = String(doc.units ?? "mm");
    const path = ["floor", "port"];
    return made(
        "fieldset",
        {},
        made("legend", {}, "Flow and return"),
        made("p", { class: "hint" }, "Where both pipes meet the source, at the edge of the floor or on it."),
        length("port-x", "From the left", port.x, (v) => desk.change(put(desk.doc, [...path, "at"], pair(desk.doc, at(v, port.y)))), { disabled: !view.portPlain }),
        length("port-y", "From below", port.y, (v) => desk.change(put(desk.doc, [...path, "at"], pair(desk.doc, at(port.x, v)))), { disabled: !view.portPlain }),
        choice(
            "port-turn",
            "The pipe leaves",
            String(find(doc, [...path, "turn"]) ?? "down"),
            [
                { value: "down", label: "down, through the floor" },
                { value: "up", label: "up, into what stands there" },
                { value: "level", label: "level, through the wall" },
            ],
            (v) => desk.change(put(desk.doc, [...path, "turn"], v)),
        ),
        length("port-reach", "Reach: the loop begins within", mm(find(doc, [...path, "reach"]), unit), (v) => desk.change(put(desk.doc, [...path, "reach"], written(v, unit))), {
            least: 1,
            optional: () => desk.change(put(desk.doc, [...path, "reach"], undefined)),
            placeholder: "2.2 x spacing",
        }),
        view.holes.length === 0
            ? button("Say where the holes are", () => {
                  const centre = middle(view.outline);
                  const inward = at(Math.sign(centre.x - port.x) * 75 || 75, 0);
                  desk.change(
                      put(desk.doc, [...path, "holes"], [
                          {
                              flow: pair(desk.doc, at(port.x + inward.x, port.y - 75)),
                              return: pair(desk.doc, at(port.x + inward.x, port.y + 75)),
                          },
                      ]),
                  );
              }, { id: "add-holes" })
            : button("Let the plan choose the holes", () => desk.change(put(desk.doc, [...path, "holes"], undefined)), { id: "drop-holes" }),
    );
}

/**
 * @param {HTMLElement} part
 * @param {Desk} desk
 */
export function showWishes(part, desk) {
    const { doc, products } = desk;
    const get = (/** @type {string} */ key) => {
        const value = find(doc, key.split("."));
        return value === undefined ? "" : Array.isArray(value) ? value.join(", ") : String(value);
    };
    const typed = (/** @type {string} */ text) => (/^-?\d+(\.\d+)?$/.test(text) ? Number(text) : text);
    const set = (/** @type {string} */ key, /** @type {any} */ value) => desk.change(put(desk.doc, key.split("."), value === "" ? undefined : value));
    const words = (/** @type {string} */ key, /** @type {string} */ label, unit = "", placeholder = "") =>
        word(`wish-${key.replace(/\./g, "-")}`, label, get(key), (v) => set(key, typed(v)), unit, placeholder);
    const from = (/** @type {any[]} */ list) => (list ?? []).map((p) => ({ value: p.sku, label: `${p.name} (${p.sku})` }));
    const pick = (/** @type {string} */ key, /** @type {string} */ label, /** @type {{ value: string, label: string }[]} */ options) =>
        choice(`wish-${key.replace(/\./g, "-")}`, label, get(key), options, (v) => set(key, v));
    const groove = products?.pipes?.find((/** @type {any} */ p) => p.sku === get("pipe.product"))?.outer;
    const plates = [find(doc, ["plates", "product"]) ?? []].flat().map(String);
    fill(
        part,
        made("h2", {}, "Pipe and heat"),
        made("h3", {}, "Order"),
        words("order", "Order number"),
        words("customer", "Customer", "", "optional"),
        choice("wish-catalog", "Catalog", get("catalog"), desk.catalogs.map((c) => ({ value: c, label: c })), (v) => set("catalog", v)),
        desk.catalogs.length === 0 ? button("Lay the demo catalog into the folder", () => void desk.addCatalog(), { id: "add-catalog" }) : null,
        made("h3", {}, "Pipe"),
        pick("pipe.product", "Pipe", from(products?.pipes)),
        words("layout.spacing", "Pipe to pipe", "mm", "150"),
        words("layout.edge", "Pipe to wall", "mm", "75"),
        word("wish-tails", "Tails: flow, return", get("pipe.tails"), (v) => set("pipe.tails", v === "" ? "" : v.split(/[,;]\s*/).map(typed)), "mm", "0, 0"),
        pick("layout.loops", "Loops", [
            { value: "", label: "one" },
            { value: "auto", label: "as few as the coils allow" },
            ...[2, 3, 4, 5, 6].map((n) => ({ value: String(n), label: String(n) })),
        ]),
        pick("layout.prefer", "Of equal loops take", [
            { value: "", label: "the one of the longest runs" },
            { value: "even-heat", label: "the one of the most even heat" },
        ]),
        made("h3", {}, "Plates"),
        made(
            "fieldset",
            { class: "checks" },
            made("legend", {}, "Plates to choose from"),
            ...(products?.plates ?? []).map((/** @type {any} */ p) =>
                made(
                    "label",
                    {},
                    made("input", {
                        type: "checkbox",
                        id: `plate-${p.sku}`,
                        checked: plates.includes(String(p.sku)),
                        onchange: (/** @type {Event} */ e) => {
                            const on = /** @type {HTMLInputElement} */ (e.target).checked;
                            const next = on ? [...plates, String(p.sku)] : plates.filter((s) => s !== String(p.sku));
                            set("plates.product", next.length === 0 ? "" : next);
                        },
                    }),
                    ` ${p.name} (${p.sku})`,
                    groove !== undefined && p.groove !== groove ? made("span", { class: "hint" }, " not for this pipe") : null,
                ),
            ),
        ),
        words("plates.coverage", "Share of the straight pipe with plates", "", "85%"),
        made("h3", {}, "Floor and heat"),
        words("build.insulation", "Insulation under the pipe", "mm"),
        words("build.cover.thickness", "Cover over the pipe", "mm"),
        pick("build.cover.material", "Cover of", from(products?.covers)),
        words("build.finish.resistance", "Floor covering", "m\u00b2 K/W", "0"),
        pick("heating.coolant", "Coolant", from(products?.coolants)),
        words("heating.flow", "Water into the floor", "\u00b0C"),
        words("heating.source", "Water from the heater", "\u00b0C", "as into the floor"),
        words("heating.room", "Room", "\u00b0C", "20"),
        words("heating.outside", "Outside", "\u00b0C"),
        words("heating.wanted", "Heat wanted", "W", "not said"),
        pick("heating.pump", "Pump", from(products?.pumps)),
        next(desk, "lay", "Next: lay the loop and see the kit"),
    );
}

/**
 * @param {HTMLElement} part
 * @param {Desk} desk
 */
export function showText(part, desk) {
    let area = /** @type {HTMLTextAreaElement | null} */ (part.querySelector("textarea"));
    if (!area) {
        area = /** @type {HTMLTextAreaElement} */ (
            made("textarea", { id: "text", spellcheck: "false", wrap: "off", "aria-describedby": "text-hint", autocapitalize: "off" })
        );
        let wait = 0;
        area.addEventListener("input", () => {
            clearTimeout(wait);
            wait = window.setTimeout(() => desk.retype(/** @type {HTMLTextAreaElement} */ (area).value), 500);
        });
        fill(
            part,
            made("h2", {}, made("label", { for: "text" }, "Job file")),
            made("p", { class: "hint", id: "text-hint" }, "The same file that runbend plan reads. What you change here is drawn; what you draw is written here, remarks stay."),
            made("ul", { class: "text-faults", "aria-label": "Faults of the file" }),
            area,
        );
    }
    if (area.value !== desk.text && (document.activeElement !== area || part.hidden)) {
        area.value = desk.text;
    }
    const list = /** @type {HTMLElement} */ (part.querySelector(".text-faults"));
    fill(
        list,
        ...desk.faults.map((fault) =>
            made("li", {}, button(`${fault.line ? `Line ${fault.line}: ` : ""}${fault.path ? `${fault.path}: ` : ""}${fault.message}`, () => toLine(/** @type {HTMLTextAreaElement} */ (area), fault.line))),
        ),
    );
}

/**
 * Puts the cursor into a line and the line into sight.
 * @param {HTMLTextAreaElement} area
 * @param {number} line from 1
 */
export function toLine(area, line) {
    const lines = area.value.split("\n");
    const from = lines.slice(0, Math.max(0, line - 1)).reduce((sum, l) => sum + l.length + 1, 0);
    area.focus();
    area.setSelectionRange(from, from + (lines[Math.max(0, line - 1)] ?? "").length);
    area.scrollTop = (area.scrollHeight / Math.max(1, lines.length)) * Math.max(0, line - 4);
}
