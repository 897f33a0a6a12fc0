#!/bin/sh
# From a bare Debian 12 to a plan: installs what is missing, builds the Python module, plans the demo
# (a walnut mantel-clock case and a drawer of mixed paper), prints the bench sheet, says where the files are.
set -eu
cd "$(dirname "$0")/.."
. examples/setup.sh

need g++
make_venv

say "Building levigate, what changed since the last time"
install_module "./bindings[plot]"

say "Planning data/demo/job.json with the paper of data/demo/stack.json"
"$venv/bin/python" -m levigate plan data/demo/job.json data/demo/stack.json --out .out

say "Done. The plan, as data, sheet, explanation and pictures:"
ls -1 "$PWD"/.out/*
