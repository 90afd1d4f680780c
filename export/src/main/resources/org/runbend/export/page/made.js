// @ts-check
// Makes elements: no text becomes markup, whatever a job says.

const SVG = "http://www.w3.org/2000/svg";

/**
 * @typedef {string | number | Node | null | undefined | false} Child
 * @typedef {Record<string, any>} Attributes
 */

/**
 * An element of HTML. Attributes that begin with "on" are listeners, true stands for an empty one, false and null for none.
 * @param {string} name
 * @param {Attributes} [attributes]
 * @param {...Child} children
 * @returns {HTMLElement}
 */
export function made(name, attributes = {}, ...children) {
    const element = document.createElement(name);
    set(element, attributes);
    add(element, children);
    return element;
}

/**
 * An element of SVG.
 * @param {string} name
 * @param {Attributes} [attributes]
 * @param {...Child} children
 * @returns {SVGElement}
 */
export function drawn(name, attributes = {}, ...children) {
    const element = /** @type {SVGElement} */ (document.createElementNS(SVG, name));
    set(element, attributes);
    add(element, children);
    return element;
}

/**
 * @param {Element} element
 * @param {Attributes} attributes
 */
export function set(element, attributes) {
    for (const [key, value] of Object.entries(attributes)) {
        if (key.startsWith("on")) {
            element.addEventListener(key.slice(2), value);
        } else if (value === false || value === null || value === undefined) {
            element.removeAttribute(key);
        } else if (key === "value" && "value" in element) {
            /** @type {any} */ (element).value = value;
            element.setAttribute("data-shown", String(value));
        } else {
            const text = value === true ? "" : String(value);
            if (element.getAttribute(key) !== text) {
                element.setAttribute(key, text);
            }
        }
    }
}

/**
 * @param {Element} element
 * @param {Child[]} children
 */
function add(element, children) {
    for (const child of children) {
        if (child !== null && child !== undefined && child !== false) {
            element.append(child instanceof Node ? child : String(child));
        }
    }
}

/**
 * The element of an id that the page's frame has.
 * @param {string} id
 * @returns {any}
 */
export function byId(id) {
    return document.getElementById(id);
}

/**
 * Puts children in the place of what was there, and the focus back on the control of the same id.
 * @param {Element} element
 * @param {...Child} children
 */
export function fill(element, ...children) {
    const before = /** @type {any} */ (element.contains(document.activeElement) ? document.activeElement : null);
    element.replaceChildren();
    add(element, children);
    const after = /** @type {any} */ (before?.id ? document.getElementById(before.id) : null);
    if (after && after !== before) {
        after.focus({ preventScroll: true });
        if (before.selectionStart === 0 && before.selectionEnd === before.value?.length) {
            after.select?.();
        }
    }
}
