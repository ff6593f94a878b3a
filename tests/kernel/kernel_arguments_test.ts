import { deepEqual, equal, throws } from "node:assert/strict";
import { parseKernelArguments } from "sagbook/kernel/kernel_arguments.ts";
import { kernelCommand } from "sagbook/kernel/kernel_command.ts";

Deno.test("parseKernelArguments() reads installing, removing and serving", () => {
  const installing = { action: "install", check: true };
  deepEqual(parseKernelArguments([]), installing);
  deepEqual(parseKernelArguments(["--user"]), installing);
  deepEqual(parseKernelArguments(["--prefix=/p", "--no-check"]), {
    action: "install",
    prefix: "/p",
    check: false,
  });
  equal(parseKernelArguments(["uninstall"]).action, "uninstall");
  equal(parseKernelArguments(["--uninstall"]).action, "uninstall");
  equal(parseKernelArguments(["-h"]).action, "help");
});

Deno.test("parseKernelArguments() reads back what kernelCommand() writes", () => {
  const limits = { read: ["/a", "/b"], net: true } as const;
  const command = kernelCommand({
    main: "/k.ts",
    config: "/d.json",
    check: false,
    limits,
  });
  const at = command.indexOf("serve");
  deepEqual(command.slice(0, at), [
    ...[Deno.execPath(), "run", "--allow-all", "--no-check", "--quiet"],
    ...["--config=/d.json", "/k.ts"],
  ]);
  deepEqual(parseKernelArguments(command.slice(at)), {
    action: "serve",
    connectionFile: "{connection_file}",
    config: "/d.json",
    check: false,
    limits,
  });
  const none = kernelCommand({ main: "/k.ts", config: "/d.json", limits: {} });
  const read = parseKernelArguments(none.slice(none.indexOf("serve")));
  deepEqual(read.action === "serve" && read.limits, {});
});

Deno.test("parseKernelArguments() refuses words it does not know, and missing values", () => {
  throws(() => parseKernelArguments(["--fast"]), {
    name: "SyntaxError",
    message:
      'Cannot run the task as its words must be known ones: current value is "--fast" (see deno task kernel --help)',
  });
  throws(() => parseKernelArguments(["--prefix"]), {
    message:
      "Cannot run the task as --prefix must be followed by a value: there is none",
  });
  for (const word of ["--limits", "--config", "--connection-file"]) {
    throws(() => parseKernelArguments([`${word}=x`]), /must be known ones/);
  }
  throws(() => parseKernelArguments(["serve"]), {
    message:
      "Cannot serve as a kernel as --connection-file must be given: it is not",
  });
});
