// @ts-check
// Ties it together: one job on the desk, its history, its draft on disk, its plan.

import { get, listen, post, Refusal, send, session } from "./ask.js";
import { Drawing } from "./drawing.js";
import { at, middle, rectangle } from "./floors.js";
import { button, showFloor, showText, showThings, showWishes, toLine } from "./forms.js";
import { find, movableRuns, newJob, newMeasures, pair, put, view, withOutline, withPoints, withRule, withRun } from "./job.js";
import { noPlan, showKit } from "./kit.js";
import { written } from "./lengths.js";
import { byId, fill, made } from "./made.js";
import { Shop } from "./shop.js";
import { showContours, showStart } from "./start.js";

const HISTORY = 200;
const TABS = ["floor", "things", "wishes", "kit", "text"];

/** @type {any} */
const desk = {
    name: "", // of the job file, in the folder of the page
    known: "", // its text when it was opened or saved last
    text: "",
    doc: {},
    floor: null,
    faults: [],
    planFaults: [],
    warnings: [],
    products: null,
    draft: "",
    selected: "",
    undo: [],
    redo: [],
    plan: noPlan(),
    laysAgain: true,
    everLaid: false,
    temperatures: false,
    heatShown: true,
    forbidding: false,
    moving: false, // whether runs can be taken hold of
    revision: 0,
    asked: 0, // when other tabs were asked for this draft, ms
    tab: "floor",
};
/** @type {any} */
let house = { jobs: [], catalogs: [], drafts: [], folder: "" };
/** @type {EventSource | null} */
let hearing = null;
let waiting = 0;
let asking = false;
let askAgain = false;
let typing = false;

const shop = new Shop(byId("shop"), {
    failed: (error) => failed(error),
    products: () => [...(desk.products?.pipes ?? []), ...(desk.products?.plates ?? [])].map((p) => String(p.sku)),
});

const drawing = new Drawing(byId("drawing"), {
    outline: (outline) => change(withOutline(desk.doc, outline)),
    thing: (thing, points) => change(withPoints(desk.doc, thing, points)),
    port: (p) => change(put(desk.doc, ["floor", "port", "at"], pair(desk.doc, p))),
    hole: (index, kind, p) => change(put(desk.doc, ["floor", "port", "holes", index, kind], pair(desk.doc, p))),
    rule: (rule, points) => change(withRule(desk.doc, rule, points)),
    run: (from, to) => moveRun(from, to),
    select: (id) => select(id),
    remove: (id) => remove(id),
    spot: (p) => spot(p),
    say: (words, p) => say(words, p),
});

// ---- one job on the desk ---------------------------------------------------------------------------------------------------

/** Changes the job, one step of undo. */
function change(/** @type {any} */ doc) {
    desk.undo = [...desk.undo.slice(-HISTORY), desk.doc];
    desk.redo = [];
    use(doc);
}

function use(/** @type {any} */ doc) {
    desk.doc = doc ?? {};
    desk.floor = desk.floor && { ...desk.floor };
    desk.revision++;
    typing = false;
    desk.plan.old = desk.plan.kit !== null;
    drawing.age(desk.plan.old);
    stopOld();
    draw();
    later();
}

function step(/** @type {"undo" | "redo"} */ from, /** @type {"undo" | "redo"} */ to) {
    const before = desk[from].pop();
    if (before) {
        desk[to].push(desk.doc);
        use(before);
    }
}

/** Writes the change into the job's text and the draft, and hears what is wrong; one question at a time. */
function later() {
    kept("");
    clearTimeout(waiting);
    waiting = window.setTimeout(sync, 150);
}

async function sync() {
    if (asking) {
        askAgain = true;
        return;
    }
    asking = true;
    const revision = desk.revision;
    const message = {
        name: desk.name || "new.yaml",
        text: desk.text,
        known: desk.known,
        draft: desk.draft,
        title: String(desk.doc?.job ?? ""),
        ...(typing ? {} : { doc: desk.doc }),
    };
    try {
        const read = await post("/api/read", message);
        take(read, revision);
        if (revision === desk.revision) {
            kept(desk.known === desk.text ? "Saved" : "Draft kept");
        }
    } catch (error) {
        failed(error);
    } finally {
        asking = false;
        if (askAgain) {
            askAgain = false;
            sync();
        }
    }
}

/** Takes what the server understood, unless the job has gone on meanwhile. */
function take(/** @type {any} */ read, /** @type {number} */ revision) {
    const current = revision === desk.revision;
    if (current || !typing) {
        desk.text = read.text;
    }
    if (!current) {
        return;
    }
    if (read.doc && typing) {
        if (JSON.stringify(read.doc) !== JSON.stringify(desk.doc)) {
            desk.undo = [...desk.undo.slice(-HISTORY), desk.doc];
            desk.redo = [];
            desk.plan.old = desk.plan.kit !== null;
            drawing.age(desk.plan.old);
        }
        desk.doc = read.doc;
    }
    desk.faults = read.faults ?? [];
    desk.planFaults = [];
    desk.warnings = read.warnings ?? [];
    desk.products = read.products ?? desk.products;
    desk.floor = read.floor ?? (desk.faults.length > 0 ? desk.floor : null);
    draw();
    if (desk.plan.old && desk.laysAgain && desk.everLaid && desk.faults.length === 0) {
        clearTimeout(layingSoon);
        layingSoon = window.setTimeout(() => lay(false), 700);
    }
}
let layingSoon = 0;

function retype(/** @type {string} */ text) {
    desk.text = text;
    desk.revision++;
    typing = true;
    stopOld();
    later();
}

function select(/** @type {string} */ id) {
    if (desk.selected === id) {
        return;
    }
    desk.selected = id;
    if (/^(keepOut|unheated|below|supports|marks|port|hole)/.test(id) && desk.tab !== "things") {
        tab("things");
    } else if (/^rule/.test(id) && desk.tab !== "kit") {
        tab("kit");
    } else if (/^(corner|side|round)/.test(id) && desk.tab !== "floor") {
        tab("floor");
    }
    draw();
    if (id && !document.activeElement?.closest("#drawing, dialog")) {
        drawing.focusOn(id);
    }
}

function remove(/** @type {string} */ id) {
    const corner = /^corner-(\d+)$/.exec(id);
    const thing = /^(keepOut|unheated|below|supports|marks)-(\d+)/.exec(id);
    const rule = /^rule-(\d+)$/.exec(id);
    if (rule) {
        desk.selected = "";
        change(put(desk.doc, ["layout", "veto", Number(rule[1])], undefined));
    } else if (corner && current().outline.length > 3) {
        desk.selected = "";
        change(withOutline(desk.doc, current().outline.filter((_, i) => i !== Number(corner[1]))));
    } else if (thing) {
        desk.selected = "";
        change(put(desk.doc, ["floor", thing[1], Number(thing[2])], undefined));
    }
}

/** A run that was taken elsewhere: pipe lies along there, and all else is laid again. The rule can be moved on, or taken away. */
function moveRun(/** @type {import("./floors.js").Point} */ from, /** @type {import("./floors.js").Point} */ to) {
    const doc = withRun(desk.doc, from, to);
    const id = `rule-${find(doc, ["layout", "veto"]).length - 1}`;
    change(doc);
    select(id);
    drawing.focusOn(id);
}

/** A spot that was clicked: while spots are forbidden, no bend lies there any more. */
function spot(/** @type {import("./floors.js").Point} */ p) {
    if (!desk.forbidding) {
        return false;
    }
    desk.forbidding = false;
    const unit = String(desk.doc.units ?? "mm");
    const radius = written(Math.max(60, Number(find(desk.doc, ["layout", "spacing"]) ?? 150) / 2) || 75, unit);
    const veto = find(desk.doc, ["layout", "veto"]) ?? [];
    change(put(desk.doc, ["layout", "veto"], [...veto, { noBend: [...pair(desk.doc, p), radius] }]));
    return true;
}

function current() {
    return view(desk.doc, desk.floor);
}

// ---- showing ---------------------------------------------------------------------------------------------------------------

function draw() {
    const seen = current();
    const faults = [...desk.faults, ...desk.planFaults];
    drawing.show(seen, desk.selected, wrongOnes(faults));
    showRuns();
    drawing.showCrosses(faults.filter((f) => /^floor\.outline/.test(f.path)).flatMap((f) => placesIn(f.message)));
    const title = byId("title");
    if (document.activeElement !== title) {
        title.value = String(desk.doc.job ?? "");
    }
    document.title = `${desk.doc.job ? `${desk.doc.job} - ` : ""}Runbend`;
    byId("undo").disabled = desk.undo.length === 0;
    byId("redo").disabled = desk.redo.length === 0;
    showFaults(faults);
    showPart();
}

/** Runs can be taken hold of while somebody wants to move them and the plan is that of the floor. */
function showRuns() {
    drawing.showRuns(desk.moving && desk.tab === "kit" && desk.plan.kit && !desk.plan.old ? movableRuns(desk.plan.kit) : []);
}

/** One button lays the loop and, while that lasts, stops it. */
function showLay() {
    const busy = isBusy();
    const lay = byId("lay");
    lay.textContent = busy ? "Stop" : "Lay the loop";
    lay.disabled = !busy && (desk.faults.length > 0 || desk.text === "");
    lay.classList.toggle("main", !busy);
}

function isBusy() {
    return desk.plan.state === "at work" || desk.plan.state === "laid" || desk.plan.choosing;
}

/** Whether somebody types into the numbers, or holds a button of them down: what is under a hand is not made anew. */
let held = false;
let partWaits = false;

function inHand() {
    const typed = /** @type {any} */ (document.activeElement);
    return held || (typed?.closest?.("#panel") && typed.matches("input:not([type=checkbox])") && typed.value !== typed.dataset.shown);
}

function showPart() {
    showLay();
    partWaits = Boolean(inHand());
    if (partWaits) {
        return;
    }
    const shown = {
        ...desk,
        get doc() {
            return desk.doc;
        },
        get view() {
            return current();
        },
        catalogs: house.catalogs,
        change,
        select,
        retype,
        notice,
        addCatalog,
        next: (/** @type {string} */ name) => (name === "lay" ? void lay(true) : tab(name)),
        mayLay: !byId("lay").disabled && !isBusy(),
    };
    const part = byId(`part-${desk.tab}`);
    if (desk.tab === "floor") {
        showFloor(part, shown);
    } else if (desk.tab === "things") {
        showThings(part, shown);
    } else if (desk.tab === "wishes") {
        showWishes(part, shown);
    } else if (desk.tab === "text") {
        showText(part, { ...shown, faults: [...desk.faults, ...desk.planFaults] });
    } else {
        showKit(part, desk.plan, acts());
    }
}

function tab(/** @type {string} */ name) {
    held = false;
    desk.tab = name;
    for (const each of TABS) {
        const chosen = each === name;
        byId(`tab-${each}`).setAttribute("aria-selected", String(chosen));
        byId(`tab-${each}`).tabIndex = chosen ? 0 : -1;
        byId(`part-${each}`).hidden = !chosen;
    }
    showRuns();
    showPart();
}

/** Ids of corners and things that a fault speaks of. */
function wrongOnes(/** @type {any[]} */ faults) {
    /** @type {Set<string>} */
    const ids = new Set();
    for (const fault of faults) {
        const corner = /^floor\.outline\[(\d+)\]/.exec(fault.path);
        const thing = /^floor\.(keepOut|unheated|below|supports|marks)\[(\d+)\]/.exec(fault.path);
        const rule = /^layout\.veto\[(\d+)\]/.exec(fault.path);
        if (rule) {
            ids.add(`rule-${rule[1]}`);
        } else if (corner) {
            ids.add(`corner-${corner[1]}`);
        } else if (thing) {
            ids.add(`${thing[1]}-${thing[2]}`);
        } else if (/^floor\.port/.test(fault.path)) {
            ids.add("port");
        } else if (/^floor\.outline/.test(fault.path)) {
            const { outline } = current();
            for (const place of placesIn(fault.message)) {
                const nearest = outline.map((p, i) => ({ i, far: Math.hypot(place.x - p.x, place.y - p.y) })).sort((a, b) => a.far - b.far)[0];
                if (nearest) {
                    ids.add(`corner-${nearest.i}`);
                }
            }
        }
    }
    return ids;
}

/** Places of the floor that a sentence names, such as [600, 450]. */
function placesIn(/** @type {string} */ words) {
    return [...String(words).matchAll(/\[(-?[\d.]+), (-?[\d.]+)\]/g)].map((m) => at(Number(m[1]), Number(m[2])));
}

function showFaults(/** @type {any[]} */ faults) {
    const box = byId("faults");
    box.hidden = faults.length === 0;
    fill(
        box,
        faults.length > 0 && made("h2", {}, faults.length === 1 ? "This has to be put right" : `${faults.length} things have to be put right`),
        made(
            "ul",
            {},
            ...faults.slice(0, 6).map((fault, i) => {
                const [id] = wrongOnes([fault]);
                return made(
                    "li",
                    {},
                    button(`${plainPath(fault)}${fault.message}`, () => (id ? select(id) : wrongLine(fault)), { id: `fault-${i}` }),
                    fault.line > 0 ? button(`line ${fault.line}`, () => wrongLine(fault), { class: "line", "aria-label": `To line ${fault.line} of the job file` }) : null,
                );
            }),
        ),
        faults.length > 6 ? made("p", {}, `and ${faults.length - 6} more`) : null,
    );
}

/** What a fault is about, in words where the page has some. */
function plainPath(/** @type {any} */ fault) {
    const corner = /^floor\.outline\[(\d+)\]/.exec(fault.path);
    const thing = /^floor\.(keepOut|unheated|below|supports|marks)\[(\d+)\]/.exec(fault.path);
    if (corner) {
        return `Corner ${String.fromCharCode(65 + (Number(corner[1]) % 26))}: `;
    }
    if (thing) {
        const found = current().things.find((t) => t.id === `${thing[1]}-${thing[2]}`);
        return `${found?.name ?? thing[1]}: `;
    }
    const others = /** @type {[RegExp, string][]} */ ([
        [/^floor\.outline/, ""],
        [/^floor\.measured/, "Measures: "],
        [/^floor\.port/, "Flow and return: "],
        [/^layout\.veto/, "Your wish for the pipe: "],
    ]);
    const known = others.find(([form]) => form.test(fault.path));
    return known ? known[1] : fault.path ? `${fault.path}: ` : "";
}

function wrongLine(/** @type {any} */ fault) {
    tab("text");
    const area = /** @type {HTMLTextAreaElement} */ (byId("text"));
    toLine(area, fault.line);
}

function say(/** @type {string} */ words, /** @type {import("./floors.js").Point | null} */ p) {
    const callout = byId("callout");
    callout.hidden = words === "" || p === null;
    if (callout.hidden || p === null) {
        return;
    }
    fill(callout, made("p", {}, words), button("Close", () => say("", null)));
    const place = drawing.onScreen(p);
    const box = byId("sheet").getBoundingClientRect();
    const left = Math.min(Math.max(8, place.x + 14), Math.max(8, box.width - callout.offsetWidth - 8));
    const top = Math.min(Math.max(8, place.y + 14), Math.max(8, box.height - callout.offsetHeight - 8));
    callout.style.setProperty("left", `${left}px`);
    callout.style.setProperty("top", `${top}px`);
}

let noticeEnds = 0;
function notice(/** @type {string} */ words) {
    const box = byId("notice");
    clearTimeout(noticeEnds);
    box.hidden = words === "";
    fill(box, words, words ? button("Close", () => notice("")) : null);
    noticeEnds = window.setTimeout(() => notice(""), 12000);
}

function kept(/** @type {string} */ words) {
    byId("kept").textContent = words;
}

function failed(/** @type {any} */ error) {
    notice(error instanceof Refusal ? error.message : `Something went wrong on this page: ${error?.message ?? error}`);
    if (!(error instanceof Refusal)) {
        console.error(error);
    }
}

// ---- planning --------------------------------------------------------------------------------------------------------------

function acts() {
    return {
        lay: () => lay(true),
        stop,
        take: takeAlternative,
        light: (/** @type {string | null} */ bar) => drawing.light(bar),
        say: (/** @type {string} */ words, /** @type {number[] | null} */ p) => say(words, p ? at(p[0], p[1]) : null),
        forbid: (/** @type {boolean} */ on) => {
            desk.forbidding = on;
            desk.moving = false;
            showRuns();
            showPart();
        },
        forbidding: desk.forbidding,
        move: (/** @type {boolean} */ on) => {
            desk.moving = on;
            desk.forbidding = false;
            showRuns();
            showPart();
        },
        moving: desk.moving,
        rules: current().rules,
        drop: (/** @type {string} */ id) => remove(id),
        choose: (/** @type {string} */ id) => {
            select(id);
            drawing.focusOn(id);
        },
        set: (/** @type {string} */ path, /** @type {any} */ value) => change(put(desk.doc, path.split("."), value)),
        again: (/** @type {boolean} */ on) => {
            desk.laysAgain = on;
        },
        laysAgain: desk.laysAgain,
        hasStock: shop.title !== "",
        keep,
        toShop: () => void showShop(true),
        heatShown: desk.heatShown,
        showHeat: (/** @type {boolean} */ on) => {
            desk.heatShown = on;
            drawing.heatOn(on);
        },
        temperatures: desk.temperatures,
        withTemperatures: (/** @type {boolean} */ on) => {
            desk.temperatures = on;
            if (on && desk.plan.files.length > 0 && !isBusy()) {
                lay(true);
            }
        },
    };
}

/** Keeps stock for the plan on the screen; pressed twice it is asked once. */
async function keep() {
    const plan = desk.plan;
    if (plan.keeping) {
        return;
    }
    plan.keeping = true;
    showPart();
    try {
        plan.came = await shop.act("keep", { plan: plan.id, ...(plan.came?.asks ? { anew: true } : {}) });
    } catch (error) {
        failed(error);
    } finally {
        if (plan.came?.asks) {
            showPart();
            await new Promise((go) => setTimeout(go, 1000)); // the second half of a double click answers no question
        }
        plan.keeping = false;
        showPart();
    }
}

/** Shows orders and shelf in the place of the floor, or the floor again. */
async function showShop(/** @type {boolean} */ on) {
    say("", null);
    byId("desk").hidden = on;
    byId("shop").hidden = !on;
    document.body.classList.toggle("in-shop", on);
    byId("to-floor").setAttribute("aria-pressed", String(!on));
    byId("to-shop").setAttribute("aria-pressed", String(on));
    if (on) {
        await shop.refresh().catch(failed);
    }
}

/** Ends a plan for a job that has changed since. */
function stopOld() {
    if (hearing && isBusy()) {
        stop();
    }
}

function stop() {
    clearTimeout(layingSoon);
    hearing?.close();
    hearing = null;
    if (desk.plan.id) {
        post(`/api/plans/${desk.plan.id}/cancel`, {}).catch(() => {});
    }
    const laid = desk.plan.files.length > 0;
    desk.plan = { ...desk.plan, state: laid ? "whole" : "stopped", choosing: false, words: laid ? "" : "Stopped." };
    showPart();
}

async function lay(/** @type {boolean} */ show) {
    clearTimeout(layingSoon);
    stopOld();
    desk.everLaid = true;
    if (show) {
        tab("kit");
    }
    performance.mark("lay");
    const before = desk.plan;
    desk.plan = { ...noPlan(), state: "at work", words: "getting ready", kit: before.kit, picture: before.picture, old: before.kit !== null };
    desk.planFaults = [];
    showPart();
    try {
        while (asking || askAgain) {
            await new Promise((go) => setTimeout(go, 30));
        }
        const asked = await post("/api/plans", {
            name: desk.name || "new.yaml",
            text: desk.text,
            alternatives: true,
            temperatures: desk.temperatures,
        });
        desk.plan.id = String(asked.plan);
        hear(desk.plan);
    } catch (error) {
        desk.plan = { ...desk.plan, state: "stopped", words: error instanceof Refusal ? error.message : "" };
        failed(error);
        showPart();
    }
}

function hear(/** @type {import("./kit.js").Plan} */ plan) {
    const mine = (/** @type {(data: any) => void} */ heard) => (/** @type {any} */ data) => {
        if (desk.plan === plan) {
            heard(data);
            if (desk.tab === "kit") {
                showPart();
            } else {
                showLay();
            }
        }
    };
    hearing = listen(
        `/api/plans/${plan.id}/events`,
        {
            queued: mine((data) => {
                plan.words = data.before > 0 ? `waiting, ${data.before} before this one` : "getting ready";
            }),
            step: mine((data) => {
                plan.words = data.of > 0 ? `${data.what}, ${data.at} of ${data.of}` : String(data.what);
                plan.count = data.of > 0 ? data : null;
            }),
            sketch: mine((data) => {
                drawing.showSketch(data.lines);
                once("first-loop");
            }),
            laid: mine((data) => {
                plan.picture = data;
                plan.state = "laid";
                drawing.showPlan(data.svg);
                drawing.age(false);
                drawing.showPieces(data.pieces, (bar, piece) => {
                    drawing.light(bar);
                    say(bar === null ? "" : `${piece.product}, ${piece.length} mm, cut from bar ${piece.bar}`, bar === null ? null : middle(piece.corners.map((/** @type {number[]} */ c) => at(c[0], c[1]))));
                });
                once("laid");
            }),
            kit: mine((data) => {
                plan.kit = data.kit;
                plan.old = false;
                drawing.showBare(data.kit.bareFloor ?? []);
                showRuns();
            }),
            files: mine((data) => {
                plan.files = data.files.map(String);
                heat(plan);
                plan.choosing = true;
                plan.words = "";
                once("files");
            }),
            alternatives: mine((data) => {
                plan.choice = data;
                once("alternatives");
            }),
            lost: mine((data) => {
                plan.lost = data.words;
            }),
            refused: mine((data) => {
                plan.state = "refused";
                plan.words = "This cannot be laid as it is.";
                plan.kit = null;
                plan.picture = null;
                drawing.showPlan(null);
                drawing.showBare([]);
                desk.planFaults = data.faults;
                draw();
            }),
            over: mine((data) => {
                hearing = null;
                plan.choosing = false;
                plan.count = null;
                if (plan.files.length > 0) {
                    plan.state = "whole";
                    plan.words = "";
                    plan.lost = data.words || plan.lost;
                } else if (plan.state !== "refused") {
                    plan.state = "stopped";
                    plan.words = data.words;
                }
                once("over");
            }),
        },
        () => mine(() => {
            plan.state = plan.files.length > 0 ? "whole" : "stopped";
            plan.choosing = false;
            plan.words = "Runbend does not answer. If it has ended, start runbend page again: your draft is kept.";
        })(null),
    );
}

/** The temperatures of the floor as a layer, where they were reckoned. */
async function heat(/** @type {import("./kit.js").Plan} */ plan) {
    const name = "temperatures.svg";
    plan.heat = [];
    if (plan.files.includes(name)) {
        const answer = await fetch(`/api/plans/${plan.id}/files/${name}`);
        if (answer.ok && desk.plan === plan) {
            plan.heat = drawing.showHeat(await answer.text());
            drawing.heatOn(desk.heatShown);
            showPart();
        }
    } else {
        drawing.showHeat(null);
    }
}

/** A mark of time, for whoever measures. */
function once(/** @type {string} */ name) {
    performance.mark(name);
}

function takeAlternative(/** @type {{ key: string, value: any }[]} */ wishes) {
    let doc = desk.doc;
    for (const wish of wishes) {
        doc = put(doc, String(wish.key).split("."), value(wish.value));
    }
    change(doc);
    lay(true);
}

/** A value as it would stand in a file: a list in brackets, or a text. */
function value(/** @type {any} */ written) {
    const text = String(written);
    const list = /^\[(.*)\]$/.exec(text);
    return list ? list[1].split(/,\s*/).filter((v) => v !== "") : written;
}

// ---- opening and saving ----------------------------------------------------------------------------------------------------

function newDraft() {
    const bytes = crypto.getRandomValues(new Uint8Array(12));
    return `d${[...bytes].map((b) => b.toString(16).padStart(2, "0")).join("")}`;
}

/** Tabs of one browser tell each other what lies on their desks: the same draft in two of them would be written by both. */
const tabs = new BroadcastChannel("runbend");
tabs.addEventListener("message", (event) => {
    if (event.data.asks && event.data.asks === desk.draft) {
        tabs.postMessage({ has: desk.draft });
    } else if (event.data.has && event.data.has === desk.draft && performance.now() - desk.asked < 2000) {
        desk.asked = 0;
        desk.draft = newDraft();
        history.replaceState(null, "", `#${desk.draft}`);
        notice("This draft is open in another tab: this tab goes on with a copy.");
        later();
    }
});

/** Puts a job on the desk; its history begins. */
function begin(/** @type {any} */ job) {
    stopOld();
    Object.assign(desk, {
        name: job.name ?? "",
        known: job.known ?? "",
        text: job.text ?? "",
        doc: job.doc ?? {},
        floor: job.floor ?? null,
        faults: job.faults ?? [],
        planFaults: [],
        warnings: job.warnings ?? [],
        products: job.products ?? desk.products,
        draft: job.draft ?? newDraft(),
        selected: "",
        undo: [],
        redo: [],
        plan: noPlan(),
        everLaid: false,
        moving: false,
        forbidding: false,
        revision: desk.revision + 1,
    });
    typing = false;
    history.replaceState(null, "", `#${desk.draft}`);
    desk.asked = performance.now();
    tabs.postMessage({ asks: desk.draft });
    drawing.showPlan(null);
    drawing.showHeat(null);
    drawing.showBare([]);
    drawing.age(false);
    draw();
    drawing.fit();
    tab(job.doc ? "floor" : "text");
}

async function addCatalog() {
    const added = await post("/api/catalog", {});
    house = await session();
    change(put(desk.doc, ["catalog"], String(added.catalog)));
}

/** The first catalog of the folder with its products; the demo workshop's where none lies there. */
async function catalogToBegin() {
    if (house.catalogs.length === 0) {
        await post("/api/catalog", {});
        house = await session();
        notice("No catalog lay in this folder: the demo workshop's, workshop.yaml, lies there now.");
    }
    const catalog = String(house.catalogs[0] ?? "workshop.yaml");
    const { products } = await post("/api/read", { name: "new.yaml", text: `catalog: ${catalog}\n` });
    return { catalog, products };
}

async function beginShape(/** @type {import("./floors.js").Point[]} */ outline) {
    try {
        const { catalog, products } = await catalogToBegin();
        begin({ doc: newJob(outline, catalog, products), products, text: "" });
        sync();
    } catch (error) {
        failed(error);
    }
}

/** A floor by tape: its measures, and the pipes at the middle of its first side. */
async function beginTape(/** @type {number} */ corners) {
    try {
        const { catalog, products } = await catalogToBegin();
        const { measured, first } = newMeasures(corners);
        const doc = newJob(rectangle(first, 1000), catalog, products);
        doc.floor = { measured, port: { at: [Math.round(first / 2), 0] } };
        begin({ doc, products, text: "" });
        await sync();
        drawing.fit();
    } catch (error) {
        failed(error);
    }
}

/** A floor from a drawing; where several lines could be it, which one is asked. */
async function beginDrawing(/** @type {File} */ file, contour = 0) {
    try {
        const name = encodeURIComponent(file.name);
        const read = await send(`/api/drawing?name=${name}${contour > 0 ? `&contour=${contour}` : ""}`, file);
        if (!read.text) {
            if (read.candidates.length === 0) {
                notice(read.words);
            }
            showContours(byId("dialog"), read, (number) => beginDrawing(file, number), () => start(false));
            return;
        }
        const { catalog, products } = await catalogToBegin();
        const understood = await post("/api/read", { name: "new.yaml", text: read.text });
        const outline = view(understood.doc, null).outline;
        const usual = newJob(outline.length > 0 ? outline : rectangle(1000, 1000), catalog, products);
        begin({ doc: filledIn(understood.doc, usual), products, text: read.text });
        await sync();
        drawing.fit();
        notice([...read.guesses, ...read.leftOut.map((/** @type {string} */ l) => `left out: ${l}`)].slice(0, 3).join("; "));
    } catch (error) {
        failed(error);
        start(false);
    }
}

/** What a drawing does not say, as for a new job; its own words stay. */
function filledIn(/** @type {any} */ own, /** @type {any} */ usual) {
    const doc = { ...own };
    for (const [key, value] of Object.entries(usual)) {
        if (own[key] === undefined || own[key] === "") {
            doc[key] = value;
        } else if (key !== "layout" && typeof value === "object" && !Array.isArray(value) && typeof own[key] === "object") {
            doc[key] = filledIn(own[key], key === "floor" ? { port: usual.floor.port } : value);
        }
    }
    return doc;
}

async function beginDraft(/** @type {string} */ id) {
    try {
        const draft = await get(`/api/draft?id=${encodeURIComponent(id)}`);
        const text = String(draft.text);
        const read = await post("/api/read", { name: String(draft.name) || "new.yaml", text });
        begin({ ...read, name: String(draft.name ?? "") === "new.yaml" ? "" : String(draft.name ?? ""), known: String(draft.known ?? ""), draft: id });
        kept("Draft kept");
    } catch (error) {
        failed(error);
        start(false);
    }
}

async function beginJob(/** @type {string} */ name) {
    try {
        const job = await get(`/api/job?name=${encodeURIComponent(name)}`);
        begin({ ...job, name, known: job.text });
        sync();
    } catch (error) {
        failed(error);
    }
}

async function beginFile(/** @type {File} */ file) {
    if (/\.dxf$/i.test(file.name)) {
        await beginDrawing(file);
        return;
    }
    try {
        if (file.size > 2e6) {
            throw new Refusal(413, `${file.name} is larger than any job file.`);
        }
        const bytes = await file.arrayBuffer();
        let text;
        try {
            text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
        } catch {
            throw new Refusal(400, `${file.name} is no text, so it is no job file.`);
        }
        const read = await post("/api/read", { name: "new.yaml", text });
        begin({ ...read, name: "", known: "" });
        sync();
    } catch (error) {
        failed(error);
    }
}

function start(/** @type {boolean} */ mayClose) {
    showStart(byId("dialog"), house, { shape: beginShape, tape: beginTape, draft: beginDraft, job: beginJob, file: beginFile, forget: (id) => void post("/api/draft/forget", { id }).catch(failed) }, mayClose);
}

function save() {
    const dialog = byId("dialog");
    dialog.className = "";
    const suggested = desk.name || `${String(desk.doc.job ?? "floor").toLowerCase().replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-|-$/g, "") || "floor"}.yaml`;
    const input = /** @type {HTMLInputElement} */ (made("input", { id: "save-name", value: suggested, autocomplete: "off" }));
    const words = made("p", { class: "field-fault", role: "alert" });
    fill(
        dialog,
        made("h2", { id: "dialog-title" }, "Save the job"),
        made(
            "form",
            {
                onsubmit: async (/** @type {Event} */ event) => {
                    event.preventDefault();
                    const name = /\.ya?ml$/.test(input.value) ? input.value : `${input.value}.yaml`;
                    try {
                        await post("/api/save", { name, text: desk.text, known: name === desk.name ? desk.known : "" });
                        desk.name = name;
                        desk.known = desk.text;
                        dialog.close();
                        house = await session();
                        await sync();
                        kept(`Saved as ${name}`);
                    } catch (error) {
                        words.textContent = error instanceof Refusal ? error.message : String(error);
                    }
                },
            },
            made("label", { for: "save-name" }, `Name of the file in ${house.folder}`),
            input,
            words,
            made(
                "div",
                { class: "row" },
                made("button", { type: "submit", class: "main" }, "Save"),
                button("Save to this browser's downloads", () => download(input.value)),
                button("Not now", () => dialog.close()),
            ),
        ),
    );
    dialog.showModal();
    input.focus();
}

function download(/** @type {string} */ name) {
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([desk.text], { type: "text/yaml" }));
    link.download = name;
    link.click();
    URL.revokeObjectURL(link.href);
}

// ---- the frame -------------------------------------------------------------------------------------------------------------

function frame() {
    const panel = byId("panel");
    const release = () =>
        setTimeout(() => {
            held = false;
            if (partWaits) {
                showPart();
            }
        });
    panel.addEventListener("pointerdown", () => {
        held = true;
    });
    for (const end of ["pointerup", "pointercancel"]) {
        document.addEventListener(end, release);
    }
    panel.addEventListener("focusout", release);
    panel.addEventListener("change", release);
    byId("open").addEventListener("click", async () => {
        house = await session().catch(() => house);
        start(true);
    });
    byId("save").addEventListener("click", save);
    byId("to-floor").addEventListener("click", () => showShop(false));
    byId("to-shop").addEventListener("click", () => showShop(true));
    window.addEventListener("focus", () => {
        if (!byId("shop").hidden) {
            shop.refresh().catch(failed);
        }
    });
    byId("undo").addEventListener("click", () => step("undo", "redo"));
    byId("redo").addEventListener("click", () => step("redo", "undo"));
    byId("lay").addEventListener("click", () => (isBusy() ? stop() : lay(true)));
    byId("closer").addEventListener("click", () => drawing.zoom(1 / 1.4));
    byId("farther").addEventListener("click", () => drawing.zoom(1.4));
    byId("whole").addEventListener("click", () => drawing.fit());
    byId("title").addEventListener("change", (/** @type {Event} */ e) => change(put(desk.doc, ["job"], /** @type {HTMLInputElement} */ (e.target).value.trim() || "My floor")));
    for (const [i, name] of TABS.entries()) {
        byId(`tab-${name}`).addEventListener("click", () => tab(name));
        byId(`tab-${name}`).addEventListener("keydown", (/** @type {KeyboardEvent} */ e) => {
            const by = e.key === "ArrowRight" ? 1 : e.key === "ArrowLeft" ? TABS.length - 1 : 0;
            if (by > 0) {
                const next = TABS[(i + by) % TABS.length];
                tab(next);
                byId(`tab-${next}`).focus();
            }
        });
    }
    document.addEventListener("keydown", (event) => {
        const inField = /** @type {Element} */ (event.target).closest?.("input, textarea, select, dialog");
        if (!(event.ctrlKey || event.metaKey) || inField || byId("desk").hidden) {
            return;
        }
        if (event.key === "z" && !event.shiftKey) {
            event.preventDefault();
            step("undo", "redo");
        } else if (event.key === "y" || (event.key.toLowerCase() === "z" && event.shiftKey)) {
            event.preventDefault();
            step("redo", "undo");
        } else if (event.key === "s") {
            event.preventDefault();
            save();
        } else if (event.key === "Enter" && !byId("lay").disabled) {
            event.preventDefault();
            lay(true);
        }
    });
    document.addEventListener("dragover", (event) => event.preventDefault());
    document.addEventListener("drop", (event) => {
        event.preventDefault();
        const file = event.dataTransfer?.files[0];
        if (file) {
            /** @type {HTMLDialogElement} */ (byId("dialog")).close();
            beginFile(file);
        }
    });
    byId("dialog").addEventListener("cancel", (/** @type {Event} */ event) => {
        if (desk.text === "" && byId("dialog").className === "start") {
            event.preventDefault(); // there is no floor to go back to
        }
    });
}

async function open() {
    frame();
    tab("floor");
    try {
        house = await session();
        shop.title = String(house.stock ?? "");
        byId("views").hidden = shop.title === "";
        listen("/api/house", { ended: (data) => notice(data.words) });
        const id = /^#(d[a-z0-9]{8,40})$/.exec(location.hash)?.[1];
        if (id && house.drafts.some((/** @type {any} */ d) => d.id === id)) {
            await beginDraft(id);
        } else {
            start(false);
        }
    } catch (error) {
        failed(error);
    }
    document.documentElement.dataset.ready = "yes";
}

open();
