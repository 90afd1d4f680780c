// @ts-check
// Lengths as people write them, for drawing. What is not understood here is left to the reader of job files.

const INCH = 25.4;
const METRIC = { mm: 1, cm: 10, m: 1000 };

/**
 * A length in mm; null if it is none that is understood here.
 * @param {unknown} written
 * @param {string} [unit] of a number without one
 * @returns {number | null}
 */
export function mm(written, unit = "mm") {
    if (typeof written === "number") {
        return unit === "in" ? written * INCH : written;
    }
    const text = String(written ?? "").trim().replace(/\s+/g, " ");
    if (/^[+-]?\d+(\.\d*)?$|^[+-]?\.\d+$/.test(text)) {
        return Number(text) * (unit === "in" ? INCH : 1);
    }
    const metric = /^([+-]?\d+(?:\.\d*)?|[+-]?\.\d+) ?(mm|cm|m)$/.exec(text);
    if (metric) {
        return Number(metric[1]) * METRIC[/** @type {"mm" | "cm" | "m"} */ (metric[2])];
    }
    const feet = /^(?:(\d+) ?(?:ft|'))? ?(?:(\d+(?:\.\d+)?)?(?:(?:^| )?(\d+)\/(\d+))? ?(in|"))?$/.exec(text);
    if (feet && text !== "" && (feet[1] || feet[2] || feet[3])) {
        const fraction = feet[3] ? Number(feet[3]) / Number(feet[4]) : 0;
        return (Number(feet[1] ?? 0) * 12 + Number(feet[2] ?? 0) + fraction) * INCH;
    }
    return null;
}

/**
 * What stands in the job for a length in mm.
 * @param {number} value
 * @param {string} [unit] of a number without one
 * @returns {number | string}
 */
export function written(value, unit = "mm") {
    const rounded = round(value);
    return unit === "in" ? `${rounded} mm` : rounded;
}

/**
 * To a tenth of a millimetre, which nobody measures.
 * @param {number} value
 */
export function round(value) {
    return Math.round(value * 10) / 10 + 0;
}

/**
 * A length for a person: mm without needless digits.
 * @param {number} value
 */
export function shown(value) {
    return String(round(value));
}
