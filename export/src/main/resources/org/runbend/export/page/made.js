// @ts-check
// Makes elements: no text becomes markup, whatever a job says.

const SVG = "http://www.w3.org/2000/svg";

/**
 * @typedef {string | number | Node | null | undefined | false} Child
 * @typedef {Record<string, any>} Attributes
 */

/** What an element listens to, by the property that holds it. @type {WeakMap<Element, string[]>} */
const heard = new WeakMap();

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
            /** @type {any} */ (element)[key] = value;
            heard.set(element, [...(heard.get(element) ?? []), key]);
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

/**
 * Makes what is shown into what should be shown, and keeps every element that stays: a click that has begun finds its button
 * where it was, the focus and what is scrolled to stay. For parts that change while nobody touches them; their listeners ask
 * the event for its element, as that may be an earlier one.
 * @param {Element} element
 * @param {...Child} children
 */
export function refill(element, ...children) {
    const wanted = document.createElement("div");
    add(wanted, children);
    const before = /** @type {any} */ (element.contains(document.activeElement) ? document.activeElement : null);
    become(element, wanted);
    const after = before === null || before.isConnected ? before : byId(before.id);
    if (after && after !== document.activeElement) {
        after.focus({ preventScroll: true });
    }
}

/**
 * Gives one element the children of another.
 * @param {Element} element
 * @param {Element} wanted
 */
function become(element, wanted) {
    const named = new Map([...element.children].filter((e) => e.id).map((e) => [e.id, e]));
    const ids = new Set([...wanted.children].map((e) => e.id).filter(Boolean));
    let place = element.firstChild;
    for (const child of [...wanted.childNodes]) {
        while (place instanceof Element && place.id && !ids.has(place.id)) {
            const gone = place;
            place = place.nextSibling;
            gone.remove();
        }
        const same = child instanceof Element && child.id ? named.get(child.id) : undefined;
        const kept = same ?? (place && !(place instanceof Element && place.id) && !(child instanceof Element && child.id) ? place : null);
        if (kept === null || !alike(kept, child)) {
            element.insertBefore(child, place);
            if (kept !== null && kept === place) {
                place = place.nextSibling;
                kept.remove();
            }
            continue;
        }
        if (kept === place) {
            place = place.nextSibling;
        } else {
            element.insertBefore(kept, place);
        }
        if (kept instanceof Element && child instanceof Element) {
            take(kept, child);
        } else if (kept.nodeValue !== child.nodeValue) {
            kept.nodeValue = child.nodeValue;
        }
    }
    while (place) {
        const gone = place;
        place = place.nextSibling;
        gone.remove();
    }
}

/**
 * @param {Node} kept
 * @param {Node} child
 */
function alike(kept, child) {
    const ofOneKind = kept.nodeType === child.nodeType && kept.nodeName === child.nodeName;
    return ofOneKind && !(kept instanceof SVGElement && !kept.isEqualNode(child));
}

/**
 * Gives one element what another of its name has: attributes, listeners, children, and what its control shows.
 * @param {Element} kept
 * @param {Element} child
 */
function take(kept, child) {
    if (kept instanceof SVGElement) {
        return; // an equal one
    }
    for (const { name } of [...kept.attributes]) {
        if (!child.hasAttribute(name) && !(name === "open" && kept.nodeName === "DETAILS")) {
            kept.removeAttribute(name);
        }
    }
    for (const { name, value } of child.attributes) {
        if (kept.getAttribute(name) !== value) {
            kept.setAttribute(name, value);
        }
    }
    for (const key of heard.get(kept) ?? []) {
        /** @type {any} */ (kept)[key] = null;
    }
    for (const key of heard.get(child) ?? []) {
        /** @type {any} */ (kept)[key] = /** @type {any} */ (child)[key];
    }
    heard.set(kept, heard.get(child) ?? []);
    become(kept, child);
    for (const key of ["value", "checked"]) {
        if (key in kept && /** @type {any} */ (kept)[key] !== /** @type {any} */ (child)[key]) {
            /** @type {any} */ (kept)[key] = /** @type {any} */ (child)[key];
        }
    }
}
