"""Jupyter's own tests for kernels (Debian: python3-jupyter-kernel-test).

KERNEL_NAME chooses the kernel. Every optional test has a sample.
"""

import os
import unittest

import jupyter_kernel_test

NAME = os.environ["KERNEL_NAME"]


class KernelTests(jupyter_kernel_test.KernelTests):
    kernel_name = NAME
    language_name = "typescript"
    file_extension = ".ts"
    code_hello_world = "console.log('hello, world')"
    code_stderr = "console.error('test')"
    completion_samples = [
        {"text": "Math.flo", "matches": ["floor"]},
        {"text": "Number.isS", "matches": ["isSafeInteger"]},
        {"text": "con", "matches": ["confirm", "console", "const", "continue"]},
        {"text": "const sagitta = 1; sagi", "matches": ["sagitta"]},
    ]
    complete_code_samples = ["1", "await x", "if (a) { b }", "const f = () => 1;"]
    incomplete_code_samples = ["if (a) {", "f(", "const a =", "`text"]
    invalid_code_samples = ["const = 5", "a b c", "}"]
    code_page_something = (
        "await Deno.jupyter.broadcast('page', { data: { 'text/plain': 'help' } })"
    )
    code_generate_error = "throw new Error('sag')"
    code_execute_result = [
        {"code": "6*7", "result": "42"},
        {"code": "`${6*7} mm`", "result": '"42 mm"'},
        {"code": "({ R: 2520 })", "result": "{ R: 2520 }"},
        {"code": "Deno.jupyter.html`<b>R</b>`", "mime": "text/html", "result": "<b>R</b>"},
    ]
    code_display_data = [
        {
            "code": "await Deno.jupyter.display({ 'text/html': '<b>R</b>' }, { raw: true })",
            "mime": "text/html",
        },
        {
            "code": "await Deno.jupyter.display(Deno.jupyter.svg`<svg></svg>`)",
            "mime": "image/svg+xml",
        },
        {
            "code": "await Deno.jupyter.display(Deno.jupyter.md`*R*`)",
            "mime": "text/markdown",
        },
    ]
    code_history_pattern = "6?7*"
    supported_history_operations = ("tail", "range", "search")
    code_inspect_sample = "parseInt"
    code_clear_output = "await Deno.jupyter.broadcast('clear_output', { wait: false })"


if __name__ == "__main__":
    unittest.main(verbosity=2)
