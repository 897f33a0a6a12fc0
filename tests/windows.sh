#!/bin/sh
# The library on Windows: compiles all of it with MinGW, warnings as errors, then runs its tests under Wine. Not a part of
# run.sh. With an argument it runs the tests of these areas alone, such as "io c"; without one, those of all areas.
set -eu
cd "$(dirname "$0")/.."
. examples/setup.sh
need g++-mingw-w64-x86-64-posix wine64 libgtest-dev libgmock-dev googletest libfmt-dev nlohmann-json3-dev

build=.build/windows
mkdir -p "$build/include" "$build/tests"
ln -sfn /usr/include/nlohmann "$build/include/nlohmann"  # without what is for Linux beside them
ln -sfn /usr/include/fmt "$build/include/fmt"
ccache=$(command -v ccache || true)
strict='-Wall -Wextra -Wconversion -Wshadow -Wpedantic -Werror'
gtest="-isystem /usr/src/googletest/googletest/include -isystem /usr/src/googletest/googlemock/include"
# -Wa: a test holds more sections than the usual format of objects has numbers for.
common="-std=c++20 -ffp-contract=off -Wa,-mbig-obj -DFMT_HEADER_ONLY -Ilib/include -isystem $build/include"

cxx() {
  # shellcheck disable=SC2086  # lists of words
  $ccache x86_64-w64-mingw32-g++-posix $common "$@"
}
link() {
  x86_64-w64-mingw32-g++-posix -static "$@"
}
run() {
  WINEDEBUG=-all WINEPREFIX="$PWD/$build/wine" wine "$@"
}
# two COMMAND...: in the background, no more than two at once. A failure shows when a file is missing at the link.
running=0
two() {
  "$@" &
  running=$((running + 1))
  if [ $((running % 2)) = 0 ]; then wait; fi
}

say "Compiling the library"
objects=
for source in plan_to_risk io grade_stack surface_film_wheel text c_interface; do
  rm -f "$build/$source.o"
  # shellcheck disable=SC2086
  two cxx -O2 $strict -DLEVIGATE_COMPILED -c "lib/src/$source.cpp" -o "$build/$source.o"
  objects="$objects $build/$source.o"
done
wait
rm -f "$build/liblevigate.a"
# shellcheck disable=SC2086
x86_64-w64-mingw32-ar rcs "$build/liblevigate.a" $objects

say "Compiling every header after that of the system, whose macros are many"
(cd lib/include && find levigate -name '*.hpp' -not -path '*/work/*' | sort | sed 's/.*/#include "&"/') >"$build/every_header.hpp"
# shellcheck disable=SC2086
cxx -O0 $strict -fsyntax-only -DNOMINMAX -include windows.h "-I$build" tests/consumer/every.cpp

say "The golden plan"
cxx -O1 -DLEVIGATE_COMPILED -c tests/golden/golden_plan.cpp -o "$build/golden_plan.o"
link "$build/golden_plan.o" "$build/liblevigate.a" -o "$build/golden_plan.exe"
failed=
run "$build/golden_plan.exe" data || failed="$failed golden_plan"

say "Eight writers of a journal"
cxx -O1 -DLEVIGATE_COMPILED -c tests/windows/writer.cpp -o "$build/writer.o"
link "$build/writer.o" "$build/liblevigate.a" -o "$build/writer.exe"
rm -f "$build/eight.jsonl"
for who in 1 2 3 4 5 6 7 8; do
  run "$build/writer.exe" "$build/eight.jsonl" "writer $who" 50 &
done
wait
run "$build/writer.exe" "$build/eight.jsonl" 8= 50 || failed="$failed writers"

say "The C interface as a library of its own"
# shellcheck disable=SC2086
cxx -O2 $strict -DLEVIGATE_COMPILED -DLEVIGATE_C_MAKES -c lib/src/c_interface.cpp -o "$build/c_makes.o"
link -shared "$build/c_makes.o" "$build/liblevigate.a" -o "$build/levigate_c.dll"
x86_64-w64-mingw32-gcc-posix -std=c99 -Wall -Wextra -pedantic -Werror -Ilib/include examples/c/first_plan.c \
  "$build/levigate_c.dll" -o "$build/first_plan.exe"
run "$build/first_plan.exe" >"$build/first_plan.json" || failed="$failed first_plan"

say "Compiling the unit tests"
for part in googletest/src/gtest-all googlemock/src/gmock_main googlemock/src/gmock-all; do
  # shellcheck disable=SC2086
  [ -f "$build/$(basename $part).o" ] || cxx -O1 $gtest -I/usr/src/googletest/googletest -I/usr/src/googletest/googlemock \
    -c "/usr/src/googletest/$part.cc" -o "$build/$(basename $part).o"
done
# journal_test and strike_test make processes and directories as POSIX does; the others hold on every system.
tests=$(cd tests/unit && find ${1:-.} -name '*_test.cpp' | grep -Ev '(journal|strike)_test' | sort)
objects=
for test in $tests; do
  object="$build/tests/$(echo "$test" | tr '/' '_').o"
  rm -f "$object"
  # shellcheck disable=SC2086
  two cxx -O0 $gtest -DLEVIGATE_COMPILED "-DLEVIGATE_DATA_DIR=\"data\"" -Itests -include gmock/gmock.h -include gtest/gtest.h \
    -include levigate/levigate.hpp -c "tests/unit/$test" -o "$object"
  objects="$objects $object"
done
wait
# shellcheck disable=SC2086
link $objects "$build"/g*-all.o "$build/gmock_main.o" "$build/liblevigate.a" -o "$build/test_unit.exe"
say "Running the unit tests"
run "$build/test_unit.exe" --gtest_brief=1 || failed="$failed unit"

if [ -n "$failed" ]; then
  say "Failed:$failed"
  exit 1
fi
say "All passed"
