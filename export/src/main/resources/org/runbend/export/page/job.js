// @ts-check
// The job as a tree of plain values, the same keys as in the job file. Nothing is changed in place: each change is a new tree,
// and keys that the page does not know stay as they are.

import { apex, at, bulgeThrough, cornerName, distance } from "./floors.js";
import { mm, round, written } from "./lengths.js";

/**
 * @typedef {import("./floors.js").Point} Point
 * @typedef {Record<string, any>} Tree
 * @typedef {"keepOut" | "unheated" | "below" | "supports" | "marks"} List
 * @typedef {object} Thing
 * @property {List} list where it stands in the job
 * @property {number} index which one of the list
 * @property {string} id
 * @property {string} name
 * @property {string} kind
 * @property {"circle" | "point" | "polygon" | "line" | "edge"} shape
 * @property {Point[]} points centre, corners or ends
 * @property {number} radius of a circle, or as a point is drawn
 * @property {number} clearance
 * @property {number} width of a line
 * @property {boolean} plain whether it can be changed in the drawing
 * @typedef {object} View
 * @property {Point[]} outline
 * @property {boolean} plain whether the outline can be changed in the drawing
 * @property {string[]} names of corners, where they come from elsewhere than the drawing
 * @property {string} given how it is given where not by corners
 * @property {Thing[]} things
 * @property {Point | null} port
 * @property {boolean} portPlain
 * @property {{ kind: "flow" | "return", pair: number, at: Point }[]} holes
 * @property {Rule[]} rules where pipe may not, or must, go
 * @typedef {object} Rule
 * @property {number} index which one of layout.veto
 * @property {string} id
 * @property {"noBend" | "noPipe" | "mustRun"} kind
 * @property {Point[]} points middle of a circle, corners of a region or ends of a line
 * @property {number} radius of a circle
 */

/** Kinds of keep-outs, in the words of the job file, and what a new one is. */
export const KINDS = [
    { kind: "vent", name: "Vent", circle: 60 },
    { kind: "drain", name: "Drain", circle: 40 },
    { kind: "bolt", name: "Bolt", point: true },
    { kind: "anchor", name: "Anchor", point: true },
    { kind: "pillar", name: "Pillar", box: [200, 200] },
    { kind: "hatch", name: "Hatch", box: [400, 300] },
    { kind: "other", name: "Other", box: [200, 150] },
];

/** Radius that a bare point stands for, by kind, mm; the reader of jobs has the same. */
const POINT_RADIUS = { bolt: 15, anchor: 40 };

/** What a keep-out keeps where the job does not say it, mm: half a groove of 18 and air by kind. */
const AIR = { vent: 20, drain: 20, anchor: 25, hatch: 15 };

/**
 * The value at a path; undefined where there is none.
 * @param {any} tree
 * @param {(string | number)[]} path
 * @returns {any}
 */
export function find(tree, path) {
    return path.reduce((value, key) => (value === null || typeof value !== "object" ? undefined : value[key]), tree);
}

/**
 * A tree with another value at a path; undefined takes the key away, and a list or mapping that gets empty with it.
 * @param {any} tree
 * @param {(string | number)[]} path
 * @param {any} value
 * @returns {any}
 */
export function put(tree, path, value) {
    if (path.length === 0) {
        return value;
    }
    const [key, ...rest] = path;
    const asList = typeof key === "number";
    const copy = Array.isArray(tree) ? [...tree] : tree !== null && typeof tree === "object" ? { ...tree } : asList ? [] : {};
    const made = put(copy[key], rest, value);
    if (made !== undefined) {
        copy[key] = made;
    } else if (Array.isArray(copy)) {
        copy.splice(Number(key), 1);
    } else {
        delete copy[key];
    }
    return path.length > 0 && Object.keys(copy).length === 0 ? undefined : copy;
}

/**
 * @param {any} pair
 * @param {string} unit
 * @returns {Point | null}
 */
function point(pair, unit) {
    const x = Array.isArray(pair) && pair.length === 2 ? mm(pair[0], unit) : null;
    const y = Array.isArray(pair) && pair.length === 2 ? mm(pair[1], unit) : null;
    return x === null || y === null ? null : at(x, y);
}

/**
 * @param {any} list
 * @param {string} unit
 * @returns {Point[] | null}
 */
function points(list, unit) {
    const found = Array.isArray(list) ? list.map((p) => point(p, unit)) : [null];
    return found.includes(null) ? null : /** @type {Point[]} */ (found);
}

/**
 * The corners of an outline; a side that is an arc has its bulge at the corner where it begins.
 * @param {any} list
 * @param {string} unit
 * @returns {Point[] | null}
 */
function outlineOf(list, unit) {
    /** @type {Point[]} */
    const corners = [];
    for (const entry of Array.isArray(list) ? list : [null]) {
        const arc = Array.isArray(entry?.arc) && entry.arc.length === 2 ? entry.arc : null;
        const p = point(arc ? arc[1] : entry, unit);
        const through = arc ? point(arc[0], unit) : null;
        const before = corners[corners.length - 1];
        if (!p || (arc && (!through || !before))) {
            return null;
        }
        if (through) {
            const bulge = bulgeThrough(before, through, p);
            if (!Number.isFinite(bulge) || bulge === 0) {
                return null;
            }
            corners[corners.length - 1] = { ...before, bulge };
        }
        corners.push(p);
    }
    const closed = corners.length > 3 && distance(corners[0], corners[corners.length - 1]) === 0;
    return closed ? corners.slice(0, -1) : corners;
}

/**
 * What is drawn of a job: of its own numbers where they are plain, else of the floor as the server understood it.
 * @param {Tree} doc
 * @param {any} floor
 * @returns {View}
 */
export function view(doc, floor) {
    const unit = String(doc.units ?? "mm");
    const own = outlineOf(find(doc, ["floor", "outline"]), unit);
    const port = point(find(doc, ["floor", "port", "at"]), unit);
    const known = floor?.port?.at;
    return {
        outline: own ?? understood(floor?.outline ?? []),
        plain: own !== null,
        names: (find(doc, ["floor", "measured", "corners"]) ?? []).map(String),
        given: own !== null ? "" : find(doc, ["floor", "measured"]) ? "tape" : doc.extends ? "base" : "arcs",
        things: [
            ...things(doc, floor, "keepOut"),
            ...things(doc, floor, "unheated"),
            ...things(doc, floor, "below"),
            ...things(doc, floor, "supports"),
            ...things(doc, floor, "marks"),
        ],
        port: port ?? (known ? at(known[0], known[1]) : null),
        portPlain: port !== null,
        holes: holes(doc, unit),
        rules: rules(find(doc, ["layout", "veto"]), unit),
    };
}

/**
 * @param {any} list
 * @param {string} unit
 * @returns {Rule[]}
 */
function rules(list, unit) {
    /** @type {Rule[]} */
    const all = [];
    (Array.isArray(list) ? list : []).forEach((/** @type {any} */ entry, /** @type {number} */ index) => {
        const made = { index, id: `rule-${index}`, radius: 0 };
        const spot = Array.isArray(entry?.noBend) && entry.noBend.length === 3 ? entry.noBend : null;
        const centre = point(spot?.slice(0, 2), unit);
        const radius = mm(spot?.[2], unit);
        const line = points(entry?.mustRun, unit);
        const region = points(entry?.noPipe, unit);
        if (centre && radius !== null) {
            all.push({ ...made, kind: "noBend", points: [centre], radius });
        } else if (line && line.length === 2) {
            all.push({ ...made, kind: "mustRun", points: line });
        } else if (region) {
            all.push({ ...made, kind: "noPipe", points: region });
        }
    });
    return all;
}

/**
 * What a rule says, in words.
 * @param {Rule} rule
 */
export function ruleWords(rule) {
    const [a, b] = rule.points;
    if (rule.kind === "noBend") {
        return `No bend within ${round(rule.radius)} mm of ${round(a.x)}, ${round(a.y)}`;
    }
    if (rule.kind === "noPipe") {
        return `No pipe in the region at ${round(a.x)}, ${round(a.y)}`;
    }
    return `A run from ${round(a.x)}, ${round(a.y)} to ${round(b.x)}, ${round(b.y)}`;
}

/**
 * The job with a rule whose points are others.
 * @param {Tree} doc
 * @param {Rule} rule
 * @param {Point[]} moved
 */
export function withRule(doc, rule, moved) {
    const path = ["layout", "veto", rule.index, rule.kind];
    const places = moved.map((p) => pair(doc, p));
    return put(doc, path, rule.kind === "noBend" ? [...places[0], find(doc, path)[2]] : places);
}

/**
 * The job with one more run that must be, along a line; the index of the rule is that of the last one.
 * @param {Tree} doc
 * @param {Point} from
 * @param {Point} to
 */
export function withRun(doc, from, to) {
    const before = find(doc, ["layout", "veto"]) ?? [];
    return put(doc, ["layout", "veto"], [...before, { mustRun: [pair(doc, from), pair(doc, to)] }]);
}

/**
 * Runs of a kit that can be moved: straight pipe on the lattice, longer than two spacings. A line is shorter than its run by
 * half a spacing at each end, so that the bends find room where it is moved to.
 * @param {any} kit
 * @returns {{ name: string, from: Point, to: Point }[]}
 */
export function movableRuns(kit) {
    return (kit?.loops ?? []).flatMap((/** @type {any} */ loop) => {
        const [before, after] = loop.leadIn ?? [0, 0];
        const inner = loop.elements.slice(before, loop.elements.length - after);
        let number = 0;
        return inner
            .filter((/** @type {any} */ e) => e.kind === "run")
            .flatMap((/** @type {any} */ e) => {
                number++;
                const spacing = kit.lattice?.spacing ?? loop.lattice?.spacing ?? 150;
                const [a, b] = [at(e.from[0], e.from[1]), at(e.to[0], e.to[1])];
                const length = distance(a, b);
                if (length < 2 * spacing) {
                    return [];
                }
                const by = spacing / 2 / length;
                const cut = at((b.x - a.x) * by, (b.y - a.y) * by);
                return [{ name: `Run ${number} of loop ${loop.name}`, from: at(a.x + cut.x, a.y + cut.y), to: at(b.x - cut.x, b.y - cut.y) }];
            });
    });
}

/** @param {number[][]} pairs */
function understood(pairs) {
    return pairs.map(([x, y]) => at(x, y));
}

/**
 * @param {Tree} doc
 * @param {string} unit
 */
function holes(doc, unit) {
    /** @type {View["holes"]} */
    const all = [];
    const pairs = find(doc, ["floor", "port", "holes"]);
    (Array.isArray(pairs) ? pairs : []).forEach((pair, index) => {
        for (const kind of /** @type {("flow" | "return")[]} */ (["flow", "return"])) {
            const place = point(pair?.[kind], unit);
            if (place) {
                all.push({ kind, pair: index, at: place });
            }
        }
    });
    return all;
}

/**
 * @param {Tree} doc
 * @param {any} floor
 * @param {List} list
 * @returns {Thing[]}
 */
function things(doc, floor, list) {
    const own = find(doc, ["floor", list]);
    const from = Array.isArray(own) ? own : doc.extends ? (floor?.[list] ?? []) : [];
    const plain = Array.isArray(own);
    const unit = plain ? String(doc.units ?? "mm") : "mm";
    return from.map((/** @type {any} */ entry, /** @type {number} */ index) => thing(entry, list, index, unit, plain) ?? fallback(floor, list, index)).filter(Boolean);
}

/**
 * @param {any} floor
 * @param {List} list
 * @param {number} index
 * @returns {any}
 */
function fallback(floor, list, index) {
    const entry = floor?.[list]?.[index];
    return entry ? thing(entry, list, index, "mm", false) : null;
}

/**
 * @param {any} entry
 * @param {List} list
 * @param {number} index
 * @param {string} unit
 * @param {boolean} plain
 * @returns {Thing | null}
 */
function thing(entry, list, index, unit, plain) {
    if (entry === null || typeof entry !== "object") {
        return null;
    }
    const kind = list === "keepOut" ? String(entry.kind ?? "other") : list;
    const air = /** @type {Record<string, number>} */ (AIR)[kind] ?? 10;
    /** @type {Thing} */
    const made = {
        list,
        index,
        id: `${list}-${index}`,
        name: String(entry.name ?? entry.text ?? "").trim() || title(kind),
        kind,
        shape: "polygon",
        points: [],
        radius: 0,
        clearance: list === "keepOut" ? (mm(entry.clearance, unit) ?? 9 + air) : 0,
        width: mm(entry.width ?? 30, unit) ?? 30,
        plain,
    };
    const centre = point(entry.circle?.centre, unit);
    const radius = mm(entry.circle?.radius, unit);
    const place = point(entry.point ?? (Array.isArray(entry.at) ? entry.at : undefined), unit);
    const polygon = points(entry.polygon, unit);
    const line = points(entry.line, unit);
    if (centre && radius !== null) {
        return { ...made, shape: "circle", points: [centre], radius };
    }
    if (place) {
        const bare = /** @type {Record<string, number>} */ (POINT_RADIUS)[kind] ?? 5;
        return { ...made, shape: "point", points: [place], radius: bare };
    }
    if (polygon && polygon.length > 2) {
        return { ...made, points: polygon };
    }
    if (line && line.length === 2) {
        return { ...made, shape: "line", points: line };
    }
    return list === "marks" && typeof entry.edge === "number" ? { ...made, shape: "edge", radius: entry.edge } : null;
}

/**
 * What a kind is called on its own.
 * @param {string} kind
 */
export function title(kind) {
    const others = { unheated: "Unheated part", below: "Under the floor", supports: "Rib or batten", marks: "Mark" };
    return KINDS.find((k) => k.kind === kind)?.name ?? /** @type {Record<string, string>} */ (others)[kind] ?? "Thing";
}

/**
 * @param {Tree} doc
 * @param {Point} p
 */
export function pair(doc, p) {
    const unit = String(doc.units ?? "mm");
    return [written(p.x, unit), written(p.y, unit)];
}

/**
 * @param {Tree} doc
 * @param {Point[]} outline
 */
export function withOutline(doc, outline) {
    const unit = String(doc.units ?? "mm");
    const before = find(doc, ["floor", "outline"]);
    const arcs = new Map();
    (outlineOf(before, unit) ?? []).forEach((p, i, all) => {
        if (p.bulge) {
            arcs.set(arcKey(p, all[(i + 1) % all.length]), before[i + 1]);
        }
    });
    const arc = (/** @type {Point} */ a, /** @type {Point} */ b) => arcs.get(arcKey(a, b)) ?? { arc: [pair(doc, apex(a, b)), pair(doc, b)] };
    const entries = outline.map((p, i) => (i > 0 && outline[i - 1].bulge ? arc(outline[i - 1], p) : pair(doc, p)));
    const last = outline[outline.length - 1];
    return put(doc, ["floor", "outline"], last?.bulge ? [...entries, arc(last, outline[0])] : entries);
}

/**
 * What an arc is known by: one that did not change stays as it was written.
 * @param {Point} a
 * @param {Point} b
 */
function arcKey(a, b) {
    return `${a.x} ${a.y} ${a.bulge} ${b.x} ${b.y}`;}

/**
 * The job with a thing whose points are others.
 * @param {Tree} doc
 * @param {Thing} thing
 * @param {Point[]} moved
 */
export function withPoints(doc, thing, moved) {
    const path = ["floor", thing.list, thing.index];
    const places = moved.map((p) => pair(doc, p));
    switch (thing.shape) {
        case "circle":
            return put(doc, [...path, "circle", "centre"], places[0]);
        case "point":
            return put(doc, [...path, "point"], places[0]);
        case "line":
            return put(doc, [...path, "line"], places);
        case "polygon":
            return put(doc, [...path, "polygon"], places);
        default:
            return doc;
    }
}

/**
 * The corners of a rectangle around a middle.
 * @param {Point} centre
 * @param {number} length along x
 * @param {number} width
 */
export function box(centre, length, width) {
    const x = round(centre.x - length / 2);
    const y = round(centre.y - width / 2);
    return [at(x, y), at(x + length, y), at(x + length, y + width), at(x, y + width)];
}

/**
 * The job with one more thing, and where it stands in its list.
 * @param {Tree} doc
 * @param {List} list
 * @param {string} kind
 * @param {Point} place
 * @returns {{ doc: Tree, id: string }}
 */
export function withThing(doc, list, kind, place) {
    const before = find(doc, ["floor", list]);
    const entries = Array.isArray(before) ? before : [];
    const name = freeName(entries, title(kind).toLowerCase());
    const corners = (/** @type {number} */ l, /** @type {number} */ w) => box(place, l, w).map((p) => pair(doc, p));
    const form = KINDS.find((k) => k.kind === kind);
    const unit = String(doc.units ?? "mm");
    /** @type {Tree} */
    let entry;
    if (list === "marks") {
        entry = { point: pair(doc, place), text: "door" };
    } else if (list === "supports") {
        const half = 300;
        entry = { name, line: [pair(doc, at(place.x, place.y - half)), pair(doc, at(place.x, place.y + half))], width: written(30, unit) };
    } else if (form?.circle) {
        entry = { name, kind, circle: { centre: pair(doc, place), radius: written(form.circle, unit) } };
    } else if (form?.point) {
        entry = { name, kind, point: pair(doc, place) };
    } else if (form?.box) {
        entry = { name, kind, polygon: corners(form.box[0], form.box[1]) };
    } else {
        entry = { name, polygon: corners(600, 400) };
    }
    return { doc: put(doc, ["floor", list], [...entries, entry]), id: `${list}-${entries.length}` };
}

/**
 * @param {any[]} entries
 * @param {string} wanted
 */
function freeName(entries, wanted) {
    const taken = entries.map((e) => String(e?.name ?? ""));
    let name = wanted;
    for (let n = 2; taken.includes(name); n++) {
        name = `${wanted} ${n}`;
    }
    return name;
}

/** Corners from which on not every diagonal is asked for. */
const MANY = 6;

/**
 * Measures of a floor to begin with, those of points on an ellipse: sides and all diagonals, or those from three corners where there
 * are many. Each corner then has more than two, so that a wrong measure can be told.
 * @param {number} corners
 */
export function newMeasures(corners) {
    const names = Array.from({ length: corners }, (_, i) => cornerName(i));
    const places = names.map((_, i) => {
        const angle = (2 * Math.PI * i) / corners - Math.PI / 2 - Math.PI / corners;
        return at(1500 * Math.cos(angle), 1000 * Math.sin(angle));
    });
    const pairs = names.map((_, i) => [i, (i + 1) % corners]);
    const diagonalsFrom = corners > MANY ? 3 : corners;
    for (let from = 0; from < diagonalsFrom; from++) {
        for (let to = from + 2; to < corners; to++) {
            if ((to + 1) % corners !== from && !pairs.some(([a, b]) => a === to && b === from)) {
                pairs.push([from, to]);
            }
        }
    }
    const lengths = pairs.map(([a, b]) => [names[a], names[b], Math.round(distance(places[a], places[b]))]);
    return { measured: { corners: names, lengths }, first: distance(places[0], places[1]) };
}

/**
 * A new job on an outline, with what the catalog offers first.
 * @param {Point[]} outline
 * @param {string} catalog
 * @param {any} products
 * @returns {Tree}
 */
export function newJob(outline, catalog, products) {
    const ys = outline.map((p) => p.y);
    const left = Math.min(...outline.map((p) => p.x));
    const onLeft = outline.filter((p) => p.x === left).map((p) => p.y);
    const pipe = products?.pipes?.[0];
    const plates = (products?.plates ?? [])
        .filter((/** @type {any} */ p) => p.groove === pipe?.outer)
        .map((/** @type {any} */ p) => p.sku);
    return {
        job: "My floor",
        order: "1",
        catalog,
        floor: {
            outline: outline.map((p) => [round(p.x), round(p.y)]),
            port: { at: [left, round((Math.min(...onLeft, Math.max(...ys)) + Math.max(...onLeft)) / 2)] },
        },
        layout: { spacing: 150, edge: 75 },
        pipe: { product: pipe?.sku ?? "PX-16", tails: [900, 1100] },
        plates: { product: plates.length > 0 ? plates : ["SP-1"] },
        build: { insulation: 30, cover: { thickness: 12, material: products?.covers?.[0]?.sku ?? "birch-ply" } },
        heating: {
            coolant: products?.coolants?.find((/** @type {any} */ c) => /propylene/.test(c.sku))?.sku ?? "water",
            flow: 40,
            room: 20,
            outside: -10,
            pump: products?.pumps?.[0]?.sku ?? "CP-12",
        },
    };
}
