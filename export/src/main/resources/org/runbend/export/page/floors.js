// @ts-check
// Floors from a few numbers, and changes of an outline. Corners in mm, x to the right, y up, anticlockwise.

/**
 * @typedef {{ x: number, y: number, bulge?: number }} Point a corner of an outline whose side to the next one is an arc has its
 *     bulge: the tangent of a quarter of the arc's angle, positive where the arc turns anticlockwise
 */

/**
 * @param {number} x
 * @param {number} y
 * @returns {Point}
 */
export function at(x, y) {
    return { x, y };
}

/** The floors to begin with: what is asked and the outline that comes of it. */
export const SHAPES = [
    {
        name: "Rectangle",
        asks: [
            { key: "length", label: "Length", value: 2700 },
            { key: "width", label: "Width", value: 1600 },
        ],
        outline: (/** @type {Record<string, number>} */ n) => rectangle(n.length, n.width),
        wrong: () => "",
    },
    {
        name: "L",
        asks: [
            { key: "length", label: "Length", value: 3200 },
            { key: "width", label: "Width", value: 2400 },
            { key: "notchLength", label: "Notch, length", value: 1400 },
            { key: "notchWidth", label: "Notch, width", value: 1100 },
        ],
        outline: (/** @type {Record<string, number>} */ n) => ell(n.length, n.width, n.notchLength, n.notchWidth),
        wrong: (/** @type {Record<string, number>} */ n) =>
            n.notchLength < n.length && n.notchWidth < n.width ? "" : "The notch has to be smaller than the floor.",
    },
    {
        name: "Taper",
        asks: [
            { key: "length", label: "Length", value: 2600 },
            { key: "wide", label: "Width at the wide end", value: 1900 },
            { key: "narrow", label: "Width at the narrow end", value: 1000 },
        ],
        outline: (/** @type {Record<string, number>} */ n) => taper(n.length, n.wide, n.narrow),
        wrong: (/** @type {Record<string, number>} */ n) =>
            n.narrow <= n.wide ? "" : "The narrow end has to be narrower than the wide one.",
    },
    {
        name: "Van body",
        asks: [
            { key: "length", label: "Length, rear doors to cab", value: 2700 },
            { key: "width", label: "Width", value: 1600 },
            { key: "from", label: "Rear doors to wheel arch", value: 800 },
            { key: "arch", label: "Wheel arch, length", value: 800 },
            { key: "depth", label: "Wheel arch, depth", value: 210 },
        ],
        outline: (/** @type {Record<string, number>} */ n) => van(n.length, n.width, n.from, n.arch, n.depth),
        wrong: (/** @type {Record<string, number>} */ n) =>
            n.from + n.arch < n.length && 2 * n.depth < n.width
                ? ""
                : "The wheel arches have to lie within the length and leave floor between them.",
    },
];

/**
 * @param {number} length
 * @param {number} width
 */
export function rectangle(length, width) {
    return [at(0, 0), at(length, 0), at(length, width), at(0, width)];
}

/**
 * @param {number} length
 * @param {number} width
 * @param {number} notchLength
 * @param {number} notchWidth
 */
export function ell(length, width, notchLength, notchWidth) {
    return [
        at(0, 0),
        at(length, 0),
        at(length, width - notchWidth),
        at(length - notchLength, width - notchWidth),
        at(length - notchLength, width),
        at(0, width),
    ];
}

/**
 * @param {number} length
 * @param {number} wide
 * @param {number} narrow
 */
export function taper(length, wide, narrow) {
    const inset = (wide - narrow) / 2;
    return [at(0, 0), at(length, inset), at(length, wide - inset), at(0, wide)];
}

/**
 * @param {number} length
 * @param {number} width
 * @param {number} from
 * @param {number} arch
 * @param {number} depth
 */
export function van(length, width, from, arch, depth) {
    const to = from + arch;
    const low = from > 0 ? [at(0, 0), at(from, 0), at(from, depth)] : [at(0, depth)];
    const high = from > 0 ? [at(from, width - depth), at(from, width), at(0, width)] : [at(0, width - depth)];
    return [...low, at(to, depth), at(to, 0), at(length, 0), at(length, width), at(to, width), at(to, width - depth), ...high];
}

/**
 * @param {Point} a
 * @param {Point} b
 */
export function distance(a, b) {
    return Math.hypot(b.x - a.x, b.y - a.y);
}

/**
 * The area in mm2, positive for anticlockwise.
 * @param {Point[]} outline
 */
export function area(outline) {
    return outline.reduce((sum, p, i) => {
        const q = outline[(i + 1) % outline.length];
        return sum + (p.x * q.y - q.x * p.y) / 2 + underArc(p, q);
    }, 0);
}

/**
 * The area between an arc and its chord, positive where it turns anticlockwise.
 * @param {Point} a
 * @param {Point} b
 */
function underArc(a, b) {
    const angle = 4 * Math.atan(a.bulge ?? 0);
    const radius = a.bulge ? (distance(a, b) * (1 + a.bulge ** 2)) / (4 * a.bulge) : 0;
    return (radius ** 2 / 2) * (angle - Math.sin(angle));
}

/**
 * The bulge of the arc from a through a point to b; not a finite number where there is none.
 * @param {Point} a
 * @param {Point} through
 * @param {Point} b
 */
export function bulgeThrough(a, through, b) {
    const cross = (through.x - a.x) * (b.y - a.y) - (through.y - a.y) * (b.x - a.x);
    const one = Math.atan2(a.y - through.y, a.x - through.x);
    const other = Math.atan2(b.y - through.y, b.x - through.x);
    const between = Math.abs(Math.atan2(Math.sin(one - other), Math.cos(one - other)));
    return cross === 0 ? NaN : Math.sign(cross) * Math.tan((Math.PI - between) / 2);
}

/**
 * The middle of a side, on its arc if it is one.
 * @param {Point} a
 * @param {Point} b
 */
export function apex(a, b) {
    const by = (a.bulge ?? 0) / 2;
    return at((a.x + b.x) / 2 + (b.y - a.y) * by, (a.y + b.y) / 2 - (b.x - a.x) * by);
}

/**
 * How far the middle of a side lies off its chord, positive to the right of it, which is outside where corners go anticlockwise.
 * @param {Point} a
 * @param {Point} b
 */
export function rise(a, b) {
    return ((a.bulge ?? 0) * distance(a, b)) / 2;
}

/** Largest radius of an arc, mm; the reader of jobs has the same. */
const MOST_RADIUS = 100000;

/**
 * The outline with a side curved by a rise; what is too flat for an arc is straight, and more than half a circle is none.
 * @param {Point[]} outline
 * @param {number} side
 * @param {number} wanted mm, positive to the right of the side
 * @param {boolean} [grows] whether the side is to be curved at least a little
 * @returns {Point[]}
 */
export function withRise(outline, side, wanted, grows = false) {
    const a = outline[side];
    const chord = distance(a, outline[(side + 1) % outline.length]) || 1;
    const least = Math.max(2, (1.01 * chord ** 2) / (8 * MOST_RADIUS));
    const flat = Math.abs(wanted) < least;
    const far = flat ? (grows ? Math.sign(wanted) * least : 0) : Math.max(-chord / 2, Math.min(chord / 2, wanted));
    const { x, y } = a;
    return outline.map((p, i) => (i === side ? (far === 0 ? { x, y } : { x, y, bulge: (2 * far) / chord }) : p));
}

/**
 * The outline with one more corner at the middle of a side.
 * @param {Point[]} outline
 * @param {number} side
 * @returns {Point[]}
 */
export function withCorner(outline, side) {
    const a = outline[side];
    const half = apex(a, outline[(side + 1) % outline.length]);
    const bulge = a.bulge ? Math.tan(Math.atan(a.bulge) / 2) : undefined;
    const part = (/** @type {Point} */ p) => (bulge === undefined ? { x: p.x, y: p.y } : { x: p.x, y: p.y, bulge });
    return [...outline.slice(0, side), part(a), part(half), ...outline.slice(side + 1)];
}

/**
 * The outline with a side of another length: its far end goes along it and takes the next side along, as when a wall is moved.
 * @param {Point[]} outline
 * @param {number} side from corner side to the next
 * @param {number} length
 */
export function withSide(outline, side, length) {
    const a = outline[side];
    const b = outline[(side + 1) % outline.length];
    const now = distance(a, b);
    if (now === 0) {
        return outline;
    }
    const by = at(((b.x - a.x) / now) * (length - now), ((b.y - a.y) / now) * (length - now));
    const moved = [(side + 1) % outline.length, (side + 2) % outline.length];
    return outline.map((p, i) => (moved.includes(i) ? { ...p, x: p.x + by.x, y: p.y + by.y } : p));
}

/**
 * The outline with a side moved square to itself.
 * @param {Point[]} outline
 * @param {number} side
 * @param {Point} by only the part square to the side counts
 * @param {number} grid it goes in whole steps of this, mm
 */
export function withSideMoved(outline, side, by, grid) {
    const next = (side + 1) % outline.length;
    const far = squareTo(outline[side], outline[next], by, grid);
    return outline.map((p, i) => (i === side || i === next ? { ...p, x: p.x + far.x, y: p.y + far.y } : p));
}

/**
 * How far a line is moved square to itself, in whole steps.
 * @param {Point} a
 * @param {Point} b
 * @param {Point} by only the part square to the line counts
 * @param {number} grid mm
 * @returns {Point} by how much both ends move
 */
export function squareTo(a, b, by, grid) {
    const length = distance(a, b) || 1;
    const square = at(-(b.y - a.y) / length, (b.x - a.x) / length);
    const far = Math.round((by.x * square.x + by.y * square.y) / grid) * grid;
    return at(square.x * far, square.y * far);
}

/**
 * The name of a corner as a tape's sheet has it: A to Z, then A2 and so on.
 * @param {number} index
 */
export function cornerName(index) {
    const letter = String.fromCharCode(65 + (index % 26));
    return index < 26 ? letter : letter + (Math.floor(index / 26) + 1);
}

/**
 * The middle of some points.
 * @param {Point[]} points
 */
export function middle(points) {
    const xs = points.map((p) => p.x);
    const ys = points.map((p) => p.y);
    return at((Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2);
}

/**
 * Whether a point lies in a polygon (crossings of a ray to the right).
 * @param {Point} p
 * @param {Point[]} polygon
 */
export function inside(p, polygon) {
    let odd = false;
    polygon.forEach((a, i) => {
        const b = polygon[(i + 1) % polygon.length];
        if (a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x)) {
            odd = !odd;
        }
    });
    return odd;
}
