// Runs recompute.py under Python in WebAssembly, on copies of the very source files that CPython runs.
// Usage: node run.mjs FILES.json   where FILES.json lists [path in the virtual file system, path on disk].
// Nothing may be fetched: the interpreter and its standard library come from node_modules.
import fs from "node:fs";
import path from "node:path";

for (const name of ["fetch", "XMLHttpRequest", "WebSocket"]) {
  globalThis[name] = () => {
    throw new Error(`the proof must run without a network, but ${name} was called`);
  };
}
const { loadPyodide } = await import("pyodide");
const python = await loadPyodide({ stderr: (line) => console.error(line) });
for (const [inside, outside] of JSON.parse(fs.readFileSync(process.argv[2], "utf8"))) {
  python.FS.mkdirTree(path.posix.dirname(inside));
  python.FS.writeFile(inside, fs.readFileSync(outside));
}
python.runPython(`
import runpy, sys
sys.path[:0] = ["/source"]
sys.dont_write_bytecode = True
runpy.run_path("/recompute.py", run_name="__main__")
`);
const version = python.runPython("import sys; f'{sys.implementation.name} {sys.version.split()[0]} {sys.platform}'");
const answers = JSON.parse(python.FS.readFile("/answers.json", { encoding: "utf8" }));
process.stdout.write(JSON.stringify({ version, answers }), () => process.exit(0));
