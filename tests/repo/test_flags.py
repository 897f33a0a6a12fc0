"""The flags that our builds compile with."""

import json
import re
import subprocess
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]


def test_nothing_is_compiled_with_contraction(tmp_path):
    configure = ["cmake", "-S", ROOT, "-B", tmp_path, "-G", "Ninja", "--log-level=WARNING"]
    options = ["-DCMAKE_EXPORT_COMPILE_COMMANDS=ON", "-DLEVIGATE_BUILD_BINDINGS=OFF"]
    subprocess.run([*configure, *options], check=True, capture_output=True)
    commands = json.loads((tmp_path / "compile_commands.json").read_text())
    assert len(commands) > 10
    assert [c["file"] for c in commands if "-ffp-contract=off" not in c["command"].split()] == []


def test_library_and_module_say_so_themselves():
    for folder, target in (("lib", "levigate_compiled"), ("bindings/src", "_core")):
        text = (ROOT / folder / "CMakeLists.txt").read_text()
        assert re.search(rf"^ *target_compile_options\({target} PRIVATE -ffp-contract=off\)$", text, re.MULTILINE)
