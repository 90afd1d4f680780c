// Checks the types of all modules in a folder: node check_types.js NPM_FOLDER typescript FOLDER
const path = require("path");
const fs = require("fs");
const ts = require(path.join(process.argv[2], "node_modules", process.argv[3]));

const folder = process.argv[4];
const files = fs.readdirSync(folder).filter((name) => name.endsWith(".js")).map((name) => path.join(folder, name));
const program = ts.createProgram(files, {
    noEmit: true,
    allowJs: true,
    checkJs: true,
    strict: true,
    target: ts.ScriptTarget.ES2022,
    module: ts.ModuleKind.ES2022,
    moduleResolution: ts.ModuleResolutionKind.Bundler,
    lib: ["lib.es2022.d.ts", "lib.dom.d.ts", "lib.dom.iterable.d.ts"],
});
const faults = ts.getPreEmitDiagnostics(program).map((fault) => {
    const text = ts.flattenDiagnosticMessageText(fault.messageText, " ");
    const place = fault.file ? fault.file.getLineAndCharacterOfPosition(fault.start) : { line: 0 };
    return `${fault.file ? path.basename(fault.file.fileName) : ""}:${place.line + 1}: ${text}`;
});
console.log(faults.length === 0 ? `${files.length} modules, no fault` : faults.join("\n"));
