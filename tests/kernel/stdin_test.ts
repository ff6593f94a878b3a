import { deepEqual, equal } from "node:assert/strict";
import { pause, Session } from "./_session.ts";

Deno.test("Kernel() asks the user for prompt and confirm, after what was printed before", async () => {
  await using session = await Session.start();
  const asked: string[] = [];
  const answers = ["60 mm", "y", "n"];
  const seen: string[] = [];
  const { value } = await session.run(
    "console.log('before'); const ring = prompt('Ring?'); [ring, confirm('Sure?'), confirm('Really?')]",
    {
      onOutput: (o) => {
        if (o.output_type === "stream") seen.push(o.text);
      },
      onInput: async (prompt) => {
        await pause(50);
        if (asked.length === 0) seen.push("asked");
        asked.push(prompt.trim());
        return answers.shift()!;
      },
    },
  );
  equal(value, '[ "60 mm", true, false ]');
  deepEqual(asked, ["Ring?", "Sure? [y/N]", "Really? [y/N]"]);
  deepEqual(seen, ["before\n", "asked"]);
});

Deno.test("Kernel() says in words that nobody can be asked", async () => {
  await using session = await Session.start();
  const { error } = await session.run("prompt('Ring?')");
  equal(
    error?.evalue,
    "Cannot ask for input as the notebook runs without a user: give the value in the cell, or as a parameter",
  );
});

Deno.test("Kernel() ends a question at an interrupt, and the next cell can ask again", async () => {
  await using session = await Session.start();
  const running = session.run("prompt('Ring?'); globalThis.after = 1", {
    onInput: () => new Promise(() => {}),
  });
  await pause(300);
  await session.kernel.interrupt();
  equal((await running).error?.ename, "Interrupted");
  const { value } = await session.run(
    "[typeof globalThis.after, prompt('?')]",
    {
      onInput: () => "again",
    },
  );
  equal(value, '[ "undefined", "again" ]');
});
