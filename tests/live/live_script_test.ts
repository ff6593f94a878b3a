import { equal, ok } from "node:assert/strict";
import { LIVE_ROLES } from "../../lib/live/_theme.ts";
import { ROLES } from "../../lib/figures/_theme.ts";
import { liveScript } from "sagbook/live/live_script.ts";
import { bundledScriptFile, SCRIPT_FILE } from "sagbook/tasks/_live_bundle.ts";
import { ROOT } from "../tasks/_run_task.ts";

Deno.test("liveScript() is what the library's own geometry compiles to, byte for byte", async () => {
  const made = await bundledScriptFile();
  const kept = await Deno.readTextFile(`${ROOT}${SCRIPT_FILE}`);
  ok(made === kept, "run deno task live-script, and keep what it makes");
});

Deno.test("liveScript() names no host, evaluates no text and writes no markup", async () => {
  const script = await liveScript();
  const found = script.replaceAll("http://www.w3.org/2000/svg", "").match(
    /https?:|\/\/[a-z]|\beval\b|\bFunction\(|innerHTML|outerHTML|insertAdjacent|document\.write|fetch\(|XMLHttp|WebSocket|sendBeacon|import\(|localStorage|cookie/gi,
  );
  equal(found, null);
  ok(!/<\/script|<!--/i.test(script));
});

Deno.test("liveFigure() has the colours of the other figures", () => {
  for (const [role, colours] of Object.entries(LIVE_ROLES)) {
    equal(String(colours), String(ROLES[role as keyof typeof ROLES]), role);
  }
});
