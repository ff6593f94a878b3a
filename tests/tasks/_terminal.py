"""Runs a command in a terminal of its own and types at its prompts.

Called with a file of JSON: {"command": [...], "env": {...}, "typed": [[PROMPT,
TEXT], ...], "wait": SECONDS}. Each TEXT is typed once PROMPT (a regular
expression) ends what has been shown since the last. Prints what was shown;
ends with the command's exit code, or 90 when a prompt did not come.
"""
import json
import os
import pty
import re
import select
import sys
import time


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        order = json.load(file)
    pid, terminal = pty.fork()
    if pid == 0:
        env = dict(os.environ)
        for name in order.get("without", []):
            env.pop(name, None)
        env.update(order.get("env", {}))
        os.execvpe(order["command"][0], order["command"], env)
    shown = bytearray()
    since = 0
    typed = list(order["typed"])
    end = time.monotonic() + order.get("wait", 120)
    code = None
    while time.monotonic() < end:
        ready, _, _ = select.select([terminal], [], [], 0.1)
        if ready:
            try:
                chunk = os.read(terminal, 65536)
            except OSError:
                break
            if not chunk:
                break
            shown += chunk
        text = shown[since:].decode("utf-8", "replace")
        if typed and re.search(typed[0][0] + r"$", text):
            _, keys = typed.pop(0)
            since = len(shown)
            os.write(terminal, keys.encode("utf-8"))
    else:
        code = 90
    sys.stdout.buffer.write(bytes(shown))
    sys.stdout.flush()
    if code is None:
        _, status = os.waitpid(pid, 0)
        code = os.waitstatus_to_exitcode(status)
        if typed:
            sys.stdout.write("\nNOT TYPED: " + json.dumps(typed) + "\n")
            code = code or 91
    else:
        os.kill(pid, 9)
    sys.exit(code if code >= 0 else 128 - code)


main()
