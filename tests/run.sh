#!/bin/sh
# Every check there is, C++ and Python. On a bare Debian 12 it installs what is missing (as root);
# what it builds lives in .build/. A failed build ends it; a failed check is kept for the last line.
set -eu
cd "$(dirname "$0")/.."
. examples/setup.sh
export PYTHONDONTWRITEBYTECODE=1 HYPOTHESIS_STORAGE_DIRECTORY="$PWD/.build/hypothesis"

need g++ clang-14 lld-14 libclang-rt-14-dev clang-format-14 cmake ninja-build \
  libgtest-dev libgmock-dev libfmt-dev nlohmann-json3-dev doxygen chromium fonts-liberation

python_tools() {
  make_venv
  cmp -s tests/requirements.txt "$venv/requirements.txt" && return
  "$venv/bin/pip" install -q -r tests/requirements.txt
  cp tests/requirements.txt "$venv"
}
python_tools &  # waits for the network, so C++ is built meanwhile
python_tools=$!

# attempt COMMAND...: a check; the others run also where it fails.
failed=
attempt() {
  "$@" || failed="$failed
  $*"
}

say "Formatting"
attempt find lib bindings examples tests \( -name '*.[ch]pp' -o -name '*.[ch]' \) -exec clang-format-14 --dry-run --Werror {} +

# build_and_test NAME CMAKE_ARGUMENT...
build_and_test() {
  build=.build/$1
  shift
  say "Building in $build"
  cmake -S . -B "$build" -G Ninja --log-level=WARNING "$@"
  cmake --build "$build"
  say "Testing in $build"
  attempt ctest --test-dir "$build" --output-on-failure --parallel "$(nproc)" --progress
}

# The sanitizers with clang and without optimisation: anything else takes three times as long to compile. What is
# left out is what a bad address shows by itself; it would double the time.
sanitize='-fsanitize=address,undefined,float-cast-overflow -fno-sanitize-recover=all'
sanitize="$sanitize -fno-sanitize=null,alignment,object-size,pointer-overflow,function,vptr"
build_and_test clang-sanitized -DCMAKE_CXX_COMPILER=clang++-14 -DLEVIGATE_BUILD_BINDINGS=OFF \
  -DCMAKE_C_COMPILER=clang-14 -DCMAKE_C_FLAGS="-O0 $sanitize" \
  '-DLEVIGATE_TEST_KINDS=unit;reference' '-DLEVIGATE_CONSUMERS=find_package.headers.20;find_package.compiled.23' \
  '-DCMAKE_EXE_LINKER_FLAGS=-fuse-ld=lld -no-pie' -DCMAKE_CXX_FLAGS="-O0 $sanitize"
wait $python_tools
strict='-Wall -Wextra -Wconversion -Wshadow -Wpedantic -Werror'
say "Installing the Python module"
install_module ./bindings --config-settings=cmake.define.CMAKE_CXX_FLAGS="$strict"

# What hangs on arithmetic, by the other compiler and with the library of the module, which is optimised.
build_and_test gcc -DCMAKE_CXX_COMPILER=g++ -DCMAKE_CXX_FLAGS=-O2 -DLEVIGATE_BUILD_BINDINGS=OFF \
  -DLEVIGATE_BUILD_EXAMPLES=OFF '-DLEVIGATE_CONSUMERS=subdirectory.headers.23;find_package.compiled.20' \
  '-DLEVIGATE_TEST_KINDS=reference;property' -DLEVIGATE_COMPILED_AT="$PWD/.build/module/lib/liblevigate.a"

say "Compiling each header alone that users include"
attempt cmake --build .build/gcc --target headers_alone

say "Generated tables are those of data/"
attempt "$venv/bin/python" data/generate.py --check

say "Schemas are those of the descriptions"
.build/gcc/tests/descriptions >.build/descriptions.json
attempt "$venv/bin/python" data/schemas.py --check <.build/descriptions.json

say "Building the reference"
attempt "$venv/bin/python" lib/reference/build.py

say "Testing the Python module and the repository"
attempt "$venv/bin/python" -m pytest -n "$(nproc)" --dist loadfile --no-loadscope-reorder

if [ -n "$failed" ]; then
  say "Failed:$failed"
  exit 1
fi
say "All passed"
