"""data/reference/high_precision.json is what its script computes."""

import subprocess
import sys
from pathlib import Path


def test_file_is_what_the_script_computes():
    script = Path(__file__).with_name("high_precision.py")
    assert subprocess.run([sys.executable, "-B", script, "--check"], check=False).returncode == 0
