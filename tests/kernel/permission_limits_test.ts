import { deepEqual, equal } from "node:assert/strict";
import { isAllowed, PermissionBroker } from "sagbook/kernel/mod.ts";
import {
  joinLimits,
  mayFetch,
  PERMISSION_NAMES,
} from "sagbook/kernel/permission_limits.ts";

Deno.test("joinLimits() grants what either side names, and nothing of what neither does", () => {
  const [some, more] = [
    { read: ["/a"], net: true, env: ["A"] },
    { read: ["/b"], net: ["h"], write: ["/c"] },
  ] as const;
  deepEqual(joinLimits(some, more), {
    read: ["/a", "/b"],
    write: ["/c"],
    net: true,
    env: ["A"],
  });
  deepEqual(joinLimits({}, {}), {});
});

Deno.test("mayFetch() lets the runtime fetch only where a host or an import is granted", () => {
  equal(mayFetch({}), false);
  equal(mayFetch({ net: [], read: true, run: true }), false);
  equal(mayFetch({ net: ["h"] }), true);
  equal(mayFetch({ import: true }), true);
});

Deno.test("isAllowed() grants no permission that is not named, whichever it is", () => {
  for (const name of PERMISSION_NAMES) {
    for (const value of ["x", "/x", null]) {
      equal(isAllowed({}, name, value), false, name);
    }
    equal(isAllowed({ [name]: true }, name, null), true, name);
  }
  equal(isAllowed({ read: ["/"] }, "read", "/proc/self/environ"), false);
  equal(isAllowed({ read: ["/"] }, "read", "/dev/fd/3"), false);
  equal(isAllowed({ read: ["/proc"] }, "read", "/proc/self/x"), true);
});

Deno.test({
  name:
    "PermissionBroker() answers questions cut anywhere, follows new limits, and hangs up on what is no question",
  ignore: !PermissionBroker.isSupported,
  fn: async () => {
    const broker = await PermissionBroker.start({ read: ["/data"] });
    const open = () => Deno.connect({ transport: "unix", path: broker.path });
    const connection = await open();
    const send = async (text: string) => {
      await connection.write(new TextEncoder().encode(text));
    };
    const answer = async () => {
      const chunk = new Uint8Array(4096);
      const count = await connection.read(chunk);
      return JSON.parse(new TextDecoder().decode(chunk.subarray(0, count!)));
    };
    const question = (id: number, permission: string, value: string | null) =>
      JSON.stringify({ v: 1, id, permission, value }) + "\n";
    await send(question(1, "read", "/data/x"));
    deepEqual(await answer(), { id: 1, result: "allow" });
    const [head, tail] = [
      question(2, "net", "h:80").slice(0, 9),
      question(2, "net", "h:80").slice(9),
    ];
    await send(head);
    await send(tail);
    deepEqual(await answer(), {
      id: 2,
      result: "deny",
      reason:
        "the notebook was not allowed to reach h:80 (that needs --allow-net)",
    });
    broker.restrict({ net: ["h"] });
    await send(question(3, "net", "h:80"));
    equal((await answer()).result, "allow");
    await send(question(4, "read", "/data/x"));
    equal((await answer()).result, "deny");
    await send(question(5, "everything", null));
    equal((await answer()).result, "deny");
    await send("no question\n");
    equal(await connection.read(new Uint8Array(9)), null);
    connection.close();
    await broker.close();
    await broker.close();
  },
});
