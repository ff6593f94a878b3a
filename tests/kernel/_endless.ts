/** Cells that never end by themselves: the kernel's interrupt table. */
export const ENDLESS: Readonly<Record<string, string>> = {
  "a loop in the cell": "while (true) {}",
  "a pattern that backtracks": "/(a+)+$/.test('a'.repeat(40) + 'b')",
  "an await": "await new Promise((done) => setTimeout(done, 1e9))",
  "a loop after an await": "await 0; while (true) {}",
  "a loop in an imported library": "import { spin } from './spin.ts'; spin();",
  "a loop in an async function":
    "async function spin2() { await 0; for (;;) {} } await spin2()",
  "a loop that catches everything":
    "while (true) { try { await new Promise((d) => setTimeout(d, 1)) } catch {} }",
  "a blocked thread":
    "Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0)",
};

/** What `./spin.ts` in the cells above must hold. */
export const SPIN = "export function spin() { for (;;) {} }";
