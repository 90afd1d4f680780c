// Reads a DXF file with a package of npm and prints how many entities lie on each layer of model space, how many on paper,
// and the length of all polylines of a layer: node read_dxf.js FOLDER_OF_PACKAGES PACKAGE FILE
"use strict";
const fs = require("fs");
const path = require("path");

const [folder, name, file] = process.argv.slice(2);
const library = require(path.join(path.resolve(folder), "node_modules", name));

// How each package reads a text, and how it marks what lies on paper (code 67).
const packages = {
  "dxf-parser": { read: (text) => new (library.default || library)().parseSync(text).entities, paper: (e) => e.inPaperSpace },
  dxf: { read: (text) => library.parseString(text).entities, paper: (e) => e.paperSpace },
  "dxf-json": { read: (text) => new library.DxfParser().parseSync(text).entities, paper: (e) => e.isInPaperSpace },
};

// A bulge is the tangent of a quarter of the sweep.
function partLength(a, b) {
  const chord = Math.hypot(b.x - a.x, b.y - a.y);
  const bulge = a.bulge || 0;
  const quarter = Math.atan(Math.abs(bulge));
  return bulge === 0 ? chord : (chord * 2 * quarter) / Math.sin(2 * quarter);
}

function polylineLength(vertices, closed) {
  let sum = 0;
  for (let i = 0; i + 1 < vertices.length; i++) {
    sum += partLength(vertices[i], vertices[i + 1]);
  }
  return closed ? sum + partLength(vertices[vertices.length - 1], vertices[0]) : sum;
}

const reader = packages[name];
const counts = new Map();
const lengths = new Map();
let paper = 0;
for (const entity of reader.read(fs.readFileSync(file, "utf8"))) {
  if (reader.paper(entity)) {
    paper++;
    continue;
  }
  counts.set(entity.layer, (counts.get(entity.layer) || 0) + 1);
  if (entity.type === "LWPOLYLINE" || entity.type === "POLYLINE") {
    const closed = entity.shape === true || entity.closed === true || (entity.flag & 1) === 1;
    lengths.set(entity.layer, (lengths.get(entity.layer) || 0) + polylineLength(entity.vertices, closed));
  }
}
for (const layer of [...counts.keys()].sort()) {
  console.log("count", layer, counts.get(layer));
}
for (const layer of [...lengths.keys()].sort()) {
  console.log("length", layer, lengths.get(layer).toFixed(4));
}
console.log("paper", paper);
