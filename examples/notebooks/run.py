"""Runs the cells of a notebook and keeps what they show in it; with --check, only compares the text.

    python examples/notebooks/run.py [--check] NOTEBOOK...

A cell shows what it prints, and the figure or table that its last line is. Lines that start with % are for notebooks alone.
"""

import ast
import base64
import contextlib
import io
import json
import os
import sys
from pathlib import Path


def run_cell(source, names):
    """What a cell prints, and the picture or table that it ends with, if any."""
    tree = ast.parse("\n".join(line for line in source.splitlines() if not line.startswith("%")))
    last = tree.body.pop() if tree.body and isinstance(tree.body[-1], ast.Expr) else None
    printed = io.StringIO()
    with contextlib.redirect_stdout(printed):
        exec(compile(tree, "<cell>", "exec"), names)
        value = (
            None
            if last is None
            else eval(compile(ast.Expression(last.value), "<cell>", "eval"), names)
        )
    picture = None
    if hasattr(value, "savefig"):
        data = io.BytesIO()
        value.savefig(data, format="png", dpi=80, metadata={"Software": None})
        picture = base64.b64encode(data.getvalue()).decode()
    table = value._repr_html_() if hasattr(value, "_repr_html_") else None
    return printed.getvalue(), picture, table


def outputs_of(source, names):
    text, picture, table = run_cell(source, names)
    outputs = []
    if text:
        outputs.append(
            {"name": "stdout", "output_type": "stream", "text": text.splitlines(keepends=True)}
        )
    if picture is not None:
        data = {"image/png": picture, "text/plain": ["<Figure>"]}
        outputs.append({"data": data, "metadata": {}, "output_type": "display_data"})
    if table is not None:
        data = {"text/html": [table], "text/plain": ["<table>"]}
        outputs.append({"data": data, "metadata": {}, "output_type": "display_data"})
    return outputs


def told(outputs):
    """The text and tables of outputs, and whether there is a picture: what must not change unnoticed."""
    return [o["text"] if o["output_type"] == "stream" else o["data"].get("text/html", "picture") for o in outputs]


def main(arguments):
    check = "--check" in arguments
    stale = []
    for path in [Path(a).resolve() for a in arguments if a != "--check"]:
        notebook = json.loads(path.read_text(encoding="utf-8"))
        os.chdir(path.parent)
        names = {"__name__": "__main__"}
        for number, cell in enumerate(notebook["cells"]):
            if cell["cell_type"] != "code":
                continue
            outputs = outputs_of("".join(cell["source"]), names)
            if told(outputs) != told(cell["outputs"]):
                stale.append(
                    f"{path.name}, cell {number + 1}: {told(outputs)} is not {told(cell['outputs'])}"
                )
            cell["outputs"] = outputs
        if not check:
            path.write_text(
                json.dumps(notebook, indent=1, ensure_ascii=False) + "\n", encoding="utf-8"
            )
    if check and stale:
        print("\n".join(stale), file=sys.stderr)
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
