// @ts-check
// The drawing: the floor that is edited, and over it the plan as the files draw it. Coordinates are those of the job, mm; only here
// y is turned, as screens have it downwards.

import { apex, at, cornerName, distance, inside, middle, rise, squareTo, withRise, withSideMoved } from "./floors.js";
import { ruleWords } from "./job.js";
import { shown } from "./lengths.js";
import { drawn, set } from "./made.js";

/**
 * @typedef {import("./floors.js").Point} Point
 * @typedef {import("./job.js").View} View
 * @typedef {import("./job.js").Thing} Thing
 * @typedef {{ x: number, y: number, w: number, h: number }} Frame
 * @typedef {object} Hooks
 * @property {(outline: Point[]) => void} outline a corner or a side was moved
 * @property {(thing: Thing, points: Point[]) => void} thing a thing was moved
 * @property {(p: Point) => void} port
 * @property {(pair: number, kind: "flow" | "return", p: Point) => void} hole
 * @property {(rule: import("./job.js").Rule, points: Point[]) => void} rule a rule for the pipe was moved
 * @property {(from: Point, to: Point) => void} run a run of the plan was moved
 * @property {(id: string) => void} select a corner ("corner-2"), a side, a thing or the port
 * @property {(id: string) => void} remove
 * @property {(p: Point) => boolean} spot a place of the floor was clicked; true if that meant something
 * @property {(text: string, p: Point | null) => void} say words at a place
 */

/** Grid that things snap to, mm. */
const GRID = 10;
/** How near a line is snapped to, in pixels of the screen. */
const NEAR = 7;
/** Layers of the plan's drawing that are shown over the floor being edited. */
const LAYERS = ["PLATE", "CHANNEL", "SLOT", "HOLE", "PIPE", "SENSOR"];

export class Drawing {
    /**
     * @param {SVGSVGElement} svg
     * @param {Hooks} hooks
     */
    constructor(svg, hooks) {
        this.svg = svg;
        this.hooks = hooks;
        /** @type {View | null} */
        this.view = null;
        /** @type {Frame} */
        this.frame = { x: -300, y: -2000, w: 3300, h: 2300 };
        this.fitted = "";
        this.selected = "";
        /** @type {Set<string>} */
        this.wrong = new Set();
        /** @type {any} what is dragged */
        this.drag = null;
        /** @type {Map<string, Element>} */
        this.parts = new Map();
        /** @type {Map<number, Point>} fingers on the screen */
        this.touches = new Map();
        this.waits = false;
        /** @type {{ name: string, from: Point, to: Point }[]} runs of the plan that can be moved now */
        this.runs = [];
        this.ground = drawn("g");
        this.heat = drawn("g", { class: "heat" });
        this.plan = drawn("g", { class: "plan" });
        this.sketch = drawn("g", { class: "sketch" });
        this.pieces = drawn("g", { class: "pieces" });
        this.over = drawn("g");
        this.handles = drawn("g");
        svg.append(this.heat, this.ground, this.plan, this.pieces, this.sketch, this.over, this.handles);
        this.listen();
    }

    // ---- what is shown -------------------------------------------------------------------------------------------------

    /**
     * @param {View} view
     * @param {string} selected
     * @param {Set<string>} wrong ids of what has a fault
     */
    show(view, selected, wrong) {
        const inSight = this.view !== null && this.isInSight(this.view);
        this.view = view;
        this.selected = selected;
        this.wrong = wrong;
        if (inSight && !this.isInSight(view)) {
            this.fit(); // the floor has grown out of the sheet
        } else {
            this.paint();
        }
    }

    /**
     * Whether the whole outline is on the sheet.
     * @param {View} view
     */
    isInSight(view) {
        const { x, y, w, h } = this.frame;
        return view.outline.every((p, i) =>
            [p, apex(p, view.outline[(i + 1) % view.outline.length])].every((q) => q.x >= x && q.x <= x + w && -q.y >= y && -q.y <= y + h),
        );
    }

    /** Shows the whole floor. */
    fit() {
        const outline = this.view?.outline ?? [];
        const all = [...outline, ...outline.map((p, i) => apex(p, outline[(i + 1) % outline.length])), ...(this.view?.port ? [this.view.port] : [])];
        if (all.length < 2) {
            return;
        }
        const xs = all.map((p) => p.x);
        const ys = all.map((p) => p.y);
        const box = this.svg.getBoundingClientRect();
        const width = Math.max(...xs) - Math.min(...xs) || 1000;
        const height = Math.max(...ys) - Math.min(...ys) || 1000;
        const aside = box.width < 500 ? 58 : 84;
        const above = 52;
        const beneath = 84; // the buttons of the view stand there
        const scale = Math.max(
            width / Math.max(60, box.width - 2 * aside),
            height / Math.max(60, box.height - above - beneath),
        );
        const w = box.width * scale;
        const h = box.height * scale;
        this.frame = {
            x: (Math.min(...xs) + Math.max(...xs)) / 2 - w / 2,
            y: -(Math.min(...ys) + Math.max(...ys)) / 2 - h / 2 + ((beneath - above) / 2) * scale,
            w,
            h,
        };
        this.paint();
    }

    /** @param {number} factor under 1: closer */
    zoom(factor, about = at(this.frame.x + this.frame.w / 2, -(this.frame.y + this.frame.h / 2))) {
        const { x, y, w, h } = this.frame;
        const width = Math.min(60000, Math.max(200, w * factor));
        const by = width / w;
        this.frame = { x: about.x - (about.x - x) * by, y: -about.y - (-about.y - y) * by, w: width, h: h * by };
        this.paint();
    }

    /** Millimetres that a pixel of the screen is. */
    px() {
        const box = this.svg.getBoundingClientRect();
        return Math.max(this.frame.w / Math.max(1, box.width), this.frame.h / Math.max(1, box.height));
    }

    /**
     * The plan's own drawing, as the server made it with the drawing model of the files.
     * @param {string | null} text SVG
     */
    showPlan(text) {
        this.plan.replaceChildren();
        this.sketch.replaceChildren();
        this.pieces.replaceChildren();
        if (text) {
            const made = new DOMParser().parseFromString(text, "image/svg+xml");
            for (const group of made.querySelectorAll("svg > g")) {
                if (LAYERS.includes(group.id)) {
                    const own = /** @type {SVGElement} */ (document.importNode(group, true));
                    own.setAttribute("class", `layer-${group.id}`);
                    own.removeAttribute("id");
                    own.querySelectorAll("text").forEach((t) => t.remove());
                    this.plan.append(own);
                }
            }
        }
    }

    /**
     * The temperatures of the floor, as the server's picture has them: its colours and lines over the floor.
     * @param {string | null} text SVG
     * @returns {{ colour: string, words: string }[]} the legend
     */
    showHeat(text) {
        this.heat.replaceChildren();
        if (!text) {
            this.heatOn(false);
            return [];
        }
        const made = new DOMParser().parseFromString(text.replace(/ style="[^"<>]*"/, ""), "image/svg+xml");
        for (const path of made.querySelectorAll("path")) {
            const shade = path.getAttribute("shape-rendering") === "crispEdges";
            if (shade || path.getAttribute("stroke") === "#333333") {
                this.heat.append(document.importNode(path, true));
            }
        }
        const texts = [...made.querySelectorAll("text")];
        return [...made.querySelectorAll("rect")].slice(1).map((rect) => {
            const near = texts.find((t) => Number(t.getAttribute("x")) > Number(rect.getAttribute("x")) && Math.abs(Number(t.getAttribute("y")) - Number(rect.getAttribute("y")) - Number(rect.getAttribute("height")) * 0.72) < Number(rect.getAttribute("height")) / 2);
            return { colour: rect.getAttribute("fill") ?? "", words: near?.textContent ?? "" };
        });
    }

    /** @param {boolean} on whether temperatures are seen, and plates not */
    heatOn(on) {
        this.svg.classList.toggle("heated", on && this.heat.childElementCount > 0);
    }

    /** @param {boolean} old whether the plan is of a floor that has changed since */
    age(old) {
        this.plan.classList.toggle("old", old);
        this.heat.classList.toggle("old", old);
        this.pieces.classList.toggle("old", old);
    }

    /**
     * A loop that is good so far.
     * @param {number[][][]} lines
     */
    showSketch(lines) {
        this.sketch.replaceChildren(...lines.map((line) => drawn("polyline", { points: line.map(([x, y]) => `${x},${-y}`).join(" ") })));
        this.plan.classList.add("old");
    }

    /**
     * Pieces of plate, to be pointed at.
     * @param {any[]} pieces
     * @param {(bar: string | null, piece: any) => void} pointed
     */
    showPieces(pieces, pointed) {
        this.pieces.replaceChildren(
            ...pieces.map((piece) =>
                drawn("polygon", {
                    points: piece.corners.map((/** @type {number[]} */ c) => `${c[0]},${-c[1]}`).join(" "),
                    "data-bar": String(piece.bar),
                    onpointerenter: () => pointed(String(piece.bar), piece),
                    onpointerleave: () => pointed(null, piece),
                }),
            ),
        );
    }

    /** @param {string | null} bar whose pieces are lit up */
    light(bar) {
        for (const piece of this.pieces.children) {
            piece.classList.toggle("lit", bar !== null && piece.getAttribute("data-bar") === bar);
        }
    }

    /**
     * Runs of the plan that can be taken hold of; none: they cannot.
     * @param {{ name: string, from: Point, to: Point }[]} runs
     */
    showRuns(runs) {
        this.runs = runs;
        this.paint();
    }

    /**
     * Places where floor stays bare.
     * @param {{ at: number[], words: string }[]} places
     */
    showBare(places) {
        this.bare = places;
        this.paint();
    }

    /**
     * Places where the outline is wrong.
     * @param {Point[]} places
     */
    showCrosses(places) {
        this.crosses = places;
        this.paint();
    }

    // ---- painting: elements are kept by their keys and only their attributes change, so that dragging is quick ---------------

    paint() {
        if (!this.view) {
            return;
        }
        const { x, y, w, h } = this.frame;
        set(this.svg, { viewBox: `${x} ${y} ${w} ${h}` });
        this.used = new Set();
        const px = this.px();
        const view = this.dragged(this.view);
        this.paintGround(view, px);
        this.paintThings(view, px);
        this.paintSides(view, px);
        this.paintHandles(view, px);
        for (const [key, element] of this.parts) {
            if (!this.used.has(key)) {
                element.remove();
                this.parts.delete(key);
            }
        }
    }

    /**
     * The element of a key, made when it is first asked for.
     * @param {Element} parent
     * @param {string} key
     * @param {string} name
     * @param {Record<string, any>} attributes
     */
    part(parent, key, name, attributes) {
        let element = this.parts.get(key);
        if (!element) {
            element = drawn(name);
            this.parts.set(key, element);
            parent.append(element);
        }
        this.used?.add(key);
        set(element, attributes);
        return element;
    }

    /**
     * @param {string} key
     * @param {string} text
     * @param {Record<string, any>} attributes
     */
    text(key, text, attributes) {
        const element = this.part(this.over, key, "text", attributes);
        if (element.textContent !== text) {
            element.textContent = text;
        }
    }

    /**
     * @param {View} view
     * @param {number} px
     */
    paintGround(view, px) {
        this.part(this.ground, "floor", "path", { class: "floor", d: outlinePath(view.outline) });
        const lines = this.drag?.guides ?? [];
        lines.forEach((/** @type {{ x?: number, y?: number }} */ line, /** @type {number} */ i) => {
            const { x, y, w, h } = this.frame;
            const d = line.x !== undefined ? `M${line.x} ${y}v${h}` : `M${x} ${-(line.y ?? 0)}h${w}`;
            this.part(this.ground, `guide-${i}`, "path", { class: "guide", d, "stroke-width": px });
        });
    }

    /**
     * @param {View} view
     * @param {number} px
     */
    paintThings(view, px) {
        for (const thing of view.things) {
            const wrong = this.wrong.has(thing.id) ? " wrong" : "";
            const on = this.selected === thing.id ? " selected" : "";
            const look = { class: `thing ${thing.list} kind-${thing.kind}${on}${wrong}` };
            const [first] = thing.points;
            const under = thing.list === "unheated" || thing.list === "below" ? this.ground : this.over;
            if (thing.shape === "circle" || (thing.shape === "point" && thing.list !== "marks")) {
                this.part(this.over, `${thing.id}-air`, "circle", {
                    class: "air",
                    cx: first.x,
                    cy: -first.y,
                    r: thing.radius + thing.clearance,
                });
                this.part(this.over, thing.id, "circle", { ...look, cx: first.x, cy: -first.y, r: thing.radius });
            } else if (thing.shape === "polygon") {
                this.part(under, thing.id, "path", { ...look, d: path(thing.points, true) });
            } else if (thing.shape === "line") {
                this.part(this.over, thing.id, "path", { ...look, d: path(thing.points, false), "stroke-width": thing.width });
            }
            const edge = thing.shape === "edge" ? this.edgePlace(view, thing.radius, px) : null;
            const place = edge?.place ?? middle(thing.points);
            const below = thing.shape === "polygon" ? 13 * px : thing.radius + 13 * px;
            const isMark = thing.list === "marks";
            const aside = isMark && !edge ? this.asideOfCorner(view, place, px) : null;
            this.text(`${thing.id}-name`, thing.name, {
                class: isMark ? "mark" : "name",
                x: aside?.place.x ?? place.x,
                y: -(aside?.place.y ?? place.y) + (isMark ? 0 : below) + 4 * px,
                "font-size": 12 * px,
                "text-anchor": aside?.anchor ?? edge?.anchor ?? "middle",
            });
        }
        (this.crosses ?? []).forEach((p, i) => {
            const r = 12 * px;
            this.part(this.handles, `cross-${i}`, "path", { class: "cross", d: `M${p.x - r} ${-p.y - r}l${2 * r} ${2 * r}m0 ${-2 * r}l${-2 * r} ${2 * r}` });
        });
        view.rules.forEach((rule) => {
            const wrong = this.wrong.has(rule.id) ? " wrong" : "";
            const [p] = rule.points;
            if (rule.kind === "noBend") {
                this.part(this.over, rule.id, "circle", { class: `veto${wrong}`, cx: p.x, cy: -p.y, r: rule.radius });
            } else {
                const look = rule.kind === "mustRun" ? "wanted" : "veto";
                this.part(this.over, rule.id, "path", { class: `${look}${wrong}`, d: path(rule.points, rule.kind === "noPipe") });
            }
        });
    }

    /**
     * Where the words of a mark stand whose place is a corner: inside, so that the corner can be seen and taken hold of.
     * @param {View} view
     * @param {Point} p
     * @param {number} px
     */
    asideOfCorner(view, p, px) {
        if (!view.outline.some((o) => distance(o, p) < 30 * px)) {
            return null;
        }
        const centre = middle(view.outline);
        const right = p.x > centre.x;
        return { place: at(p.x + (right ? -12 : 12) * px, p.y + (p.y > centre.y ? -18 : 18) * px), anchor: right ? "end" : "start" };
    }

    /**
     * Where the words of a mark at a side stand: outside, beyond the side's length or under it.
     * @param {View} view
     * @param {number} side
     * @param {number} px
     */
    edgePlace(view, side, px) {
        const a = view.outline[side];
        const b = view.outline[(side + 1) % view.outline.length];
        if (!a || !b) {
            return { place: at(0, 0), anchor: "middle" };
        }
        const upright = Math.abs(b.y - a.y) > Math.abs(b.x - a.x);
        const near = this.outside(view, a, b, (upright ? 12 : 40) * px);
        const anchor = !upright ? "middle" : near.x < (a.x + b.x) / 2 ? "end" : "start";
        return { place: at(near.x, near.y - (upright ? 52 * px : 0)), anchor };
    }

    /**
     * Where the length of a side stands: outside at its middle, aside where the pipes come in there.
     * @param {View} view
     * @param {Point} a
     * @param {Point} b
     * @param {number} px
     */
    lengthPlace(view, a, b, px) {
        const upright = Math.abs(b.y - a.y) > Math.abs(b.x - a.x);
        const place = this.outside(view, a, b, (upright ? 12 : 20) * px);
        const crowded = view.port && distance(view.port, at((a.x + b.x) / 2, (a.y + b.y) / 2)) < 40 * px;
        const by = crowded ? 32 * px : 0;
        const anchor = !upright ? "middle" : place.x < (a.x + b.x) / 2 ? "end" : "start";
        return { place: upright ? at(place.x, place.y + by) : at(place.x - 1.6 * by, place.y), anchor };
    }

    /**
     * @param {View} view
     * @param {Point} a
     * @param {Point} b
     * @param {number} by
     */
    outside(view, a, b, by) {
        const length = distance(a, b) || 1;
        const out = at((b.y - a.y) / length, -(b.x - a.x) / length);
        const chord = at((a.x + b.x) / 2, (a.y + b.y) / 2);
        const half = apex(a, b);
        const sign = inside(at(chord.x + out.x, chord.y + out.y), view.outline) ? -1 : 1;
        return at(half.x + sign * out.x * by, half.y + sign * out.y * by);
    }

    /**
     * @param {View} view
     * @param {number} px
     */
    paintSides(view, px) {
        view.outline.forEach((a, i) => {
            const b = view.outline[(i + 1) % view.outline.length];
            const length = distance(a, b);
            const { place, anchor } = this.lengthPlace(view, a, b, px);
            if (length > 46 * px) {
                this.text(`length-${i}`, a.bulge ? `${shown(length)}, curved ${shown(Math.abs(rise(a, b)))}` : shown(length), {
                    class: this.wrong.has(`side-${i}`) ? "length wrong" : "length",
                    x: place.x,
                    y: -place.y + 4 * px,
                    "font-size": 12.5 * px,
                    "text-anchor": anchor,
                    "data-side": i,
                });
            }
        });
    }

    /**
     * @param {View} view
     * @param {number} px
     */
    paintHandles(view, px) {
        if (view.plain) {
            view.outline.forEach((a, i) => {
                const b = view.outline[(i + 1) % view.outline.length];
                if (distance(a, b) > 70 * px) {
                    const place = apex(a, b);
                    const name = `Side ${cornerName(i)} to ${cornerName((i + 1) % view.outline.length)}`;
                    this.handle(`side-${i}`, place, px, `${name}, ${shown(distance(a, b))} mm`, "side");
                    if (this.selected === `side-${i}` || this.selected === `round-${i}` || this.drag?.id === `round-${i}`) {
                        const far = 30 * px;
                        const inward = this.outside(view, a, b, -far);
                        this.handle(`round-${i}`, inward, px, `Curve of ${name.replace("Side", "side")}, ${shown(Math.abs(rise(a, b)))} mm`, "round");
                    }
                }
            });
        }
        view.things.forEach((thing) => {
            if (thing.plain && thing.shape !== "edge") {
                this.handle(thing.id, middle(thing.points), px, `${thing.name}, ${where(middle(thing.points))}`, "grip");
                if (this.selected === thing.id && thing.points.length > 1) {
                    thing.points.forEach((p, k) =>
                        this.handle(`${thing.id}-${k}`, p, px, `${thing.name}, corner ${k + 1}, ${where(p)}`, "bend"),
                    );
                }
            }
        });
        view.rules.forEach((rule) => {
            if (rule.kind !== "noPipe") {
                this.handle(rule.id, middle(rule.points), px, `${ruleWords(rule)}; Delete takes it away`, "grip");
            }
        });
        this.runs.forEach((run, i) => {
            const [from, to] = this.drag?.id === `run-${i}` && this.drag.moved ? this.movedRun(i, this.drag.by, !this.drag.free) : [run.from, run.to];
            this.part(this.over, `run-line-${i}`, "path", { class: "movable", d: path([from, to], false) });
            this.handle(`run-${i}`, middle([from, to]), px, `${run.name}, ${where(middle([from, to]))}`, "run");
        });
        if (view.port) {
            const name = `Flow and return, ${where(view.port)}`;
            this.part(this.over, "port-sign", "path", { class: "port", d: portSign(view.port, px) });
            if (this.plan.childElementCount === 0) {
                const right = view.port.x > middle(view.outline).x;
                this.text("port-name", "flow and return", { class: "name of-port", x: view.port.x + (right ? -20 : 20) * px, y: -view.port.y + 4 * px, "font-size": 12 * px, "text-anchor": right ? "end" : "start" });
            }
            if (view.portPlain) {
                this.handle("port", view.port, px, name, "grip");
            }
        }
        view.holes.forEach((hole) => {
            const id = `hole-${hole.pair}-${hole.kind}`;
            this.part(this.over, `${id}-sign`, "circle", { class: "hole", cx: hole.at.x, cy: -hole.at.y, r: 16 });
            this.handle(id, hole.at, px, `Hole of the ${hole.kind}, ${where(hole.at)}`, "grip");
        });
        const names = view.plain ? view.outline.map((_, i) => cornerName(i)) : view.names;
        view.outline.forEach((p, i) => {
            if (view.plain) {
                this.handle(`corner-${i}`, p, px, `Corner ${names[i]}, ${where(p)}`, "corner");
            }
            if (names[i]) {
                const out = this.beside(view, i, 17 * px);
                this.text(`corner-name-${i}`, names[i], { class: "corner-name", x: out.x, y: -out.y + 4 * px, "font-size": 12 * px });
            }
        });
        (this.bare ?? []).forEach((spot, i) => {
            const group = this.part(this.handles, `bare-${i}`, "g", {
                class: "bare",
                tabindex: 0,
                role: "button",
                "aria-label": `Bare place ${i + 1}: ${spot.words}`,
                transform: `translate(${spot.at[0]} ${-spot.at[1]}) scale(${px})`,
                "data-id": `bare-${i}`,
            });
            if (!group.firstChild) {
                group.append(drawn("circle", { class: "hit", r: 22 }), drawn("circle", { class: "disc", r: 10 }), drawn("text", { y: 4.5 }, "?"));
            }
        });
    }

    /**
     * A place off a corner, outside the floor where the angle leaves room there.
     * @param {View} view
     * @param {number} i
     * @param {number} by
     */
    beside(view, i, by) {
        const n = view.outline.length;
        const p = view.outline[i];
        const a = view.outline[(i + n - 1) % n];
        const b = view.outline[(i + 1) % n];
        const la = distance(p, a) || 1;
        const lb = distance(p, b) || 1;
        let dx = (a.x - p.x) / la + (b.x - p.x) / lb;
        let dy = (a.y - p.y) / la + (b.y - p.y) / lb;
        const length = Math.hypot(dx, dy);
        if (length < 0.1) {
            dx = (b.y - p.y) / lb;
            dy = -(b.x - p.x) / lb;
        } else {
            dx /= length;
            dy /= length;
        }
        const sign = inside(at(p.x + dx, p.y + dy), view.outline) ? -1 : 1;
        return at(p.x + sign * dx * by, p.y + sign * dy * by);
    }

    /**
     * @param {string} id
     * @param {Point} p
     * @param {number} px
     * @param {string} name
     * @param {string} look
     */
    handle(id, p, px, name, look) {
        const on = this.selected === id ? " selected" : "";
        const wrong = this.wrong.has(id) ? " wrong" : "";
        const group = this.part(this.handles, `handle-${id}`, "g", {
            class: `handle ${look}${on}${wrong}`,
            tabindex: 0,
            role: "button",
            "aria-label": name,
            transform: `translate(${p.x} ${-p.y}) scale(${px})`,
            "data-id": id,
        });
        if (!group.firstChild) {
            const corner = look === "corner" || look === "bend" || look === "round";
            group.append(
                drawn("circle", { class: "hit", r: 22 }),
                corner
                    ? drawn("rect", { class: "dot", x: -5.5, y: -5.5, width: 11, height: 11, rx: 2 })
                    : drawn("circle", { class: "dot", r: look === "side" ? 4 : look === "run" ? 8 : 6 }),
            );
        }
    }

    // ---- moving ------------------------------------------------------------------------------------------------------------

    listen() {
        this.svg.addEventListener("pointerdown", (event) => this.down(event));
        this.svg.addEventListener("pointermove", (event) => this.move(event));
        this.svg.addEventListener("pointerup", (event) => this.up(event));
        this.svg.addEventListener("pointercancel", (event) => this.up(event, true));
        this.svg.addEventListener("keydown", (event) => this.key(event));
        this.svg.addEventListener("focusin", (event) => {
            const id = idOf(event.target);
            if (id && !this.drag) {
                this.focus(id);
            }
        });
        this.svg.addEventListener(
            "wheel",
            (event) => {
                event.preventDefault();
                this.zoom(event.deltaY > 0 ? 1.12 : 1 / 1.12, this.place(event));
            },
            { passive: false },
        );
        new ResizeObserver(() => this.fit()).observe(this.svg);
    }

    /** @param {string} id */
    focus(id) {
        const bare = /^bare-(\d+)$/.exec(id);
        if (bare) {
            const spot = this.bare?.[Number(bare[1])];
            if (spot) {
                this.hooks.say(spot.words, at(spot.at[0], spot.at[1]));
            }
        } else {
            this.hooks.select(id.replace(/^((?:keepOut|unheated|below|supports|marks)-\d+)-\d+$/, "$1"));
        }
    }

    /**
     * Where on the floor an event is, mm.
     * @param {{ clientX: number, clientY: number }} event
     */
    place(event) {
        const box = this.svg.getBoundingClientRect();
        const px = this.px();
        const left = this.frame.x + this.frame.w / 2 - (box.width * px) / 2;
        const top = this.frame.y + this.frame.h / 2 - (box.height * px) / 2;
        return at(left + (event.clientX - box.left) * px, -(top + (event.clientY - box.top) * px));
    }

    /**
     * Where on the screen a place of the floor is, in pixels from the drawing's corner.
     * @param {Point} p
     */
    onScreen(p) {
        const box = this.svg.getBoundingClientRect();
        const px = this.px();
        return at(
            box.width / 2 + (p.x - this.frame.x - this.frame.w / 2) / px,
            box.height / 2 + (-p.y - this.frame.y - this.frame.h / 2) / px,
        );
    }

    /** @param {PointerEvent} event */
    down(event) {
        this.touches.set(event.pointerId, at(event.clientX, event.clientY));
        if (event.button !== 0) {
            return;
        }
        this.svg.setPointerCapture(event.pointerId);
        if (this.touches.size === 2) {
            this.drag = { pinch: this.spread(), frame: this.frame };
            return;
        }
        const id = idOf(event.target) ?? this.thingAt(event);
        const start = this.place(event);
        this.hooks.say("", null);
        if (id && !id.startsWith("bare-")) {
            this.drag = { id, start, by: at(0, 0), moved: false, guides: [] };
        } else {
            this.drag = { pan: true, start, client: at(event.clientX, event.clientY), frame: this.frame, moved: false, id };
        }
    }

    /** @param {PointerEvent} event */
    thingAt(event) {
        const side = /** @type {Element} */ (event.target).getAttribute?.("data-side");
        if (side !== null && side !== undefined && this.view?.plain) {
            return `side-${side}`;
        }
        for (const [key, element] of this.parts) {
            if (element === event.target && key.startsWith("run-line-")) {
                return key.replace("line-", "");
            }
            if (element === event.target && this.view?.things.some((t) => t.id === key && t.plain)) {
                return key;
            }
        }
        return null;
    }

    spread() {
        const [a, b] = [...this.touches.values()];
        return { centre: at((a.x + b.x) / 2, (a.y + b.y) / 2), apart: distance(a, b) || 1 };
    }

    /** @param {PointerEvent} event */
    move(event) {
        if (this.touches.has(event.pointerId)) {
            this.touches.set(event.pointerId, at(event.clientX, event.clientY));
        }
        const drag = this.drag;
        if (!drag) {
            return;
        }
        if (drag.pinch) {
            const now = this.spread();
            const box = this.svg.getBoundingClientRect();
            const px = drag.frame.w / box.width;
            const w = drag.frame.w * (drag.pinch.apart / now.apart);
            const by = w / drag.frame.w;
            const cx = drag.frame.x + (drag.pinch.centre.x - box.left) * px;
            const cy = drag.frame.y + (drag.pinch.centre.y - box.top) * px;
            this.frame = {
                x: cx - (now.centre.x - box.left) * px * by,
                y: cy - (now.centre.y - box.top) * px * by,
                w,
                h: drag.frame.h * by,
            };
        } else if (drag.pan) {
            const px = this.px();
            const dx = event.clientX - drag.client.x;
            const dy = event.clientY - drag.client.y;
            drag.moved = drag.moved || Math.hypot(dx, dy) > 4;
            this.frame = { ...drag.frame, x: drag.frame.x - dx * px, y: drag.frame.y - dy * px };
        } else {
            const p = this.place(event);
            drag.by = at(p.x - drag.start.x, p.y - drag.start.y);
            drag.free = event.altKey;
            drag.moved = drag.moved || Math.hypot(drag.by.x, drag.by.y) > 4 * this.px();
        }
        if (!this.waits) {
            this.waits = true;
            requestAnimationFrame(() => {
                this.waits = false;
                this.paint();
            });
        }
    }

    /**
     * @param {PointerEvent} event
     * @param {boolean} [lost]
     */
    up(event, lost = false) {
        this.touches.delete(event.pointerId);
        const drag = this.drag;
        if (!drag || !this.view) {
            return;
        }
        const view = drag.moved && !lost && drag.id ? this.dragged(this.view) : null;
        const run = view ? this.runAt(drag.id, drag.by, !drag.free) : null;
        this.drag = null;
        if (run) {
            this.hooks.run(run[0], run[1]);
        } else if (view) {
            this.told(drag.id, view);
        } else if (drag.id && !drag.moved && !lost) {
            this.focus(drag.id);
            /** @type {any} */ (this.parts.get(`handle-${drag.id}`) ?? this.parts.get(drag.id))?.focus?.({ preventScroll: true });
            this.paint();
        } else if (drag.pan && !drag.moved && !lost && !this.hooks.spot(drag.start)) {
            this.hooks.select("");
        } else {
            this.paint();
        }
    }

    /**
     * Tells what a drag or a key came to.
     * @param {string} id
     * @param {View} view
     */
    told(id, view) {
        const hole = /^hole-(\d+)-(flow|return)$/.exec(id);
        const thing = view.things.find((t) => id === t.id || id.startsWith(`${t.id}-`));
        const rule = view.rules.find((r) => r.id === id);
        if (rule) {
            this.hooks.rule(rule, rule.points);
        } else if (id === "port" && view.port) {
            this.hooks.port(view.port);
        } else if (hole) {
            const kind = /** @type {"flow" | "return"} */ (hole[2]);
            const found = view.holes.find((h) => h.pair === Number(hole[1]) && h.kind === kind);
            if (found) {
                this.hooks.hole(found.pair, kind, found.at);
            }
        } else if (thing) {
            this.hooks.thing(thing, thing.points);
        } else {
            this.hooks.outline(view.outline);
        }
    }

    /**
     * Where a run that was moved lies, if this is one.
     * @param {string} id
     * @param {Point} by
     * @param {boolean} snap
     */
    runAt(id, by, snap) {
        const run = /^run-(\d+)$/.exec(id);
        return run && this.runs[Number(run[1])] ? this.movedRun(Number(run[1]), by, snap) : null;
    }

    /**
     * Both ends of a run that is moved square to itself.
     * @param {number} i
     * @param {Point} by
     * @param {boolean} snap
     */
    movedRun(i, by, snap) {
        const { from, to } = this.runs[i];
        const far = squareTo(from, to, by, snap ? GRID : 1);
        return [at(from.x + far.x, from.y + far.y), at(to.x + far.x, to.y + far.y)];
    }

    /**
     * The view with what is dragged at its place.
     * @param {View} view
     * @returns {View}
     */
    dragged(view) {
        const drag = this.drag;
        if (!drag?.id || !drag.moved || drag.pan) {
            return view;
        }
        return this.moved(view, drag.id, drag.by, !drag.free);
    }

    /**
     * @param {View} view
     * @param {string} id
     * @param {Point} by
     * @param {boolean} snap
     * @returns {View}
     */
    moved(view, id, by, snap) {
        const corner = /^corner-(\d+)$/.exec(id);
        const side = /^side-(\d+)$/.exec(id);
        const hole = /^hole-(\d+)-(flow|return)$/.exec(id);
        const to = (/** @type {Point} */ p, /** @type {number} */ skip = -1) => this.snapped(at(p.x + by.x, p.y + by.y), snap, skip);
        if (corner) {
            const i = Number(corner[1]);
            return { ...view, outline: view.outline.map((p, k) => (k === i ? { ...p, ...to(p, i) } : p)) };
        }
        const round = /^round-(\d+)$/.exec(id);
        if (round) {
            return { ...view, outline: this.curved(view.outline, Number(round[1]), by, snap) };
        }
        if (side) {
            return { ...view, outline: withSideMoved(view.outline, Number(side[1]), by, snap ? GRID : 1) };
        }
        if (id === "port" && view.port) {
            return { ...view, port: to(view.port) };
        }
        if (/^rule-\d+$/.test(id)) {
            return { ...view, rules: view.rules.map((r) => (r.id === id ? { ...r, points: this.movedRule(r, by, snap) } : r)) };
        }
        if (hole) {
            return {
                ...view,
                holes: view.holes.map((h) => (h.pair === Number(hole[1]) && h.kind === hole[2] ? { ...h, at: to(h.at) } : h)),
            };
        }
        return {
            ...view,
            things: view.things.map((t) => {
                if (id === t.id) {
                    const from = t.points[0];
                    const goal = to(from);
                    return { ...t, points: t.points.map((p) => at(p.x + goal.x - from.x, p.y + goal.y - from.y)) };
                }
                const part = id.startsWith(`${t.id}-`) ? Number(id.slice(t.id.length + 1)) : -1;
                return part < 0 ? t : { ...t, points: t.points.map((p, k) => (k === part ? to(p) : p)) };
            }),
        };
    }

    /**
     * The outline with a side whose middle was moved, square to the side.
     * @param {Point[]} outline
     * @param {number} i
     * @param {Point} by
     * @param {boolean} snap
     */
    curved(outline, i, by, snap) {
        const a = outline[i];
        const b = outline[(i + 1) % outline.length];
        const length = distance(a, b) || 1;
        const before = rise(a, b);
        const to = before + (by.x * (b.y - a.y) - by.y * (b.x - a.x)) / length;
        return withRise(outline, i, snap ? Math.round(to / GRID) * GRID : to, Math.abs(to) > Math.abs(before) && !snap);
    }

    /**
     * A spot goes anywhere, a line square to itself.
     * @param {import("./job.js").Rule} rule
     * @param {Point} by
     * @param {boolean} snap
     */
    movedRule(rule, by, snap) {
        const [a, b] = rule.points;
        if (rule.kind === "noBend") {
            return [this.snapped(at(a.x + by.x, a.y + by.y), snap, -1)];
        }
        const far = squareTo(a, b, by, snap ? GRID : 1);
        return rule.points.map((p) => at(p.x + far.x, p.y + far.y));
    }

    /**
     * A place on the grid, or in line with a corner of the floor that is near.
     * @param {Point} p
     * @param {boolean} snap
     * @param {number} skip the corner that is moved
     */
    snapped(p, snap, skip) {
        if (!snap) {
            return at(Math.round(p.x), Math.round(p.y));
        }
        const near = NEAR * this.px();
        const others = (this.view?.outline ?? []).filter((_, i) => i !== skip);
        const nearest = (/** @type {number[]} */ values, /** @type {number} */ value) =>
            values.filter((v) => Math.abs(v - value) < near).sort((a, b) => Math.abs(a - value) - Math.abs(b - value))[0];
        const x = nearest(others.map((o) => o.x), p.x);
        const y = nearest(others.map((o) => o.y), p.y);
        if (this.drag) {
            this.drag.guides = [...(x === undefined ? [] : [{ x }]), ...(y === undefined ? [] : [{ y }])];
        }
        return at(x ?? Math.round(p.x / GRID) * GRID, y ?? Math.round(p.y / GRID) * GRID);
    }

    /** @param {KeyboardEvent} event */
    key(event) {
        const id = idOf(event.target);
        const arrows = { ArrowLeft: at(-1, 0), ArrowRight: at(1, 0), ArrowUp: at(0, 1), ArrowDown: at(0, -1) };
        const arrow = /** @type {Record<string, Point>} */ (arrows)[event.key];
        if (!id || !this.view) {
            return;
        }
        if (arrow && !id.startsWith("bare-")) {
            event.preventDefault();
            const step = event.altKey ? 1 : event.shiftKey ? 100 : GRID;
            const by = at(arrow.x * step, arrow.y * step);
            const run = this.runAt(id, by, false);
            if (run) {
                this.hooks.run(run[0], run[1]);
            } else {
                this.told(id, this.moved(this.view, id, by, false));
            }
        } else if (event.key === "Delete" || event.key === "Backspace") {
            event.preventDefault();
            this.hooks.remove(id);
        } else if (event.key === "Enter" || event.key === " ") {
            event.preventDefault();
            this.focus(id);
        } else if (event.key === "Escape") {
            this.hooks.say("", null);
        }
    }

    /** @param {string} id */
    focusOn(id) {
        /** @type {any} */ (this.parts.get(`handle-${id}`))?.focus({ preventScroll: true });
    }
}

/** @param {any} target */
function idOf(target) {
    return target?.closest?.("[data-id]")?.getAttribute("data-id") ?? null;
}

/** @param {Point} p */
function where(p) {
    return `at ${shown(p.x)}, ${shown(p.y)} mm`;
}

/**
 * @param {Point[]} points
 * @param {boolean} closed
 */
function path(points, closed) {
    return points.length === 0 ? "" : `M${points.map((p) => `${p.x} ${-p.y}`).join("L")}${closed ? "Z" : ""}`;
}

/**
 * An outline whose sides may be arcs.
 * @param {Point[]} outline
 */
function outlinePath(outline) {
    const sides = outline.map((a, i) => {
        const b = outline[(i + 1) % outline.length];
        if (!a.bulge) {
            return `L${b.x} ${-b.y}`;
        }
        const radius = (distance(a, b) * (1 + a.bulge ** 2)) / (4 * Math.abs(a.bulge));
        return `A${radius} ${radius} 0 ${Math.abs(a.bulge) > 1 ? 1 : 0} ${a.bulge > 0 ? 0 : 1} ${b.x} ${-b.y}`;
    });
    return outline.length === 0 ? "" : `M${outline[0].x} ${-outline[0].y}${sides.join("")}Z`;
}

/**
 * Two short pipes side by side.
 * @param {Point} p
 * @param {number} px
 */
function portSign(p, px) {
    const r = 11 * px;
    return `M${p.x - r} ${-p.y - 4 * px}h${2 * r}M${p.x - r} ${-p.y + 4 * px}h${2 * r}`;
}
