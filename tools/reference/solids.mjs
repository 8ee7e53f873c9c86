// Reads one scene per line (JSON) on standard input and writes, per line, what
// manifold-3d makes of it: bodies united less cutters united.
//
//   {"bodies": [prim], "cutters": [prim]} -> {"volume": mm3, "area": mm2, "status": "..."}
//   with "oneByOne": true the cutters are taken away in turn instead
//   {"a": scene, "b": scene} -> the same for a and b intersected
//   prim: {"loops": [[[x, y], ...], ...], "from": z, "to": z, "frame": [o, u, v, w]}
//   with "turns": n the loops are turned about the y axis, in n steps, instead; the
//   y axis becomes w
//
// With the argument "time" it runs every scene five times and adds the best in
// milliseconds, primitives included.
import Module from 'manifold-3d';
import { createInterface } from 'node:readline';

const wasm = await Module();
wasm.setup();
const { Manifold } = wasm;
const timing = process.argv.includes('time');

function primitive(p) {
  const [o, u, v, w] = p.frame;
  const m = p.turns ? Manifold.revolve(p.loops, p.turns) : Manifold.extrude(p.loops, p.to - p.from).translate([0, 0, p.from]);
  return m.transform([...u, 0, ...v, 0, ...w, 0, ...o, 1]);
}

function scene(s) {
  if (s.a) return Manifold.intersection(scene(s.a), scene(s.b));
  const body = Manifold.union(s.bodies.map(primitive));
  if (s.oneByOne) return s.cutters.reduce((m, c) => m.subtract(primitive(c)), body);
  return s.cutters.length ? Manifold.difference(body, Manifold.union(s.cutters.map(primitive))) : body;
}

for await (const line of createInterface({ input: process.stdin })) {
  if (!line) continue;
  const s = JSON.parse(line);
  const out = {};
  for (let i = 0; i < (timing ? 5 : 1); i++) {
    const start = performance.now();
    const m = scene(s);
    out.volume = m.volume();
    const ms = performance.now() - start;
    out.ms = Math.min(out.ms ?? ms, ms);
    out.area = m.surfaceArea();
    out.triangles = m.numTri();
    out.status = String(m.status());
  }
  if (!timing) delete out.ms;
  console.log(JSON.stringify(out));
}
