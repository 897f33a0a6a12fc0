#!/bin/sh
# shellcheck disable=SC2317  # way() calls the functions
# Every way of getting levigate, tried and timed: prints a table with a line each, and exits with 1 where one fails.
# Some ways need what tests/run.sh has installed, some fetch a tool from the package index. It takes about 15 minutes.
#
#   sh tests/ways.sh            all
#   sh tests/ways.sh cpp        those for C++, about 5 minutes
#   sh tests/ways.sh python     a source archive, and a wheel of it for each python3.9 to python3.14 on the PATH
#
# As root the ways for Python are tried where json and fmt of the system cannot be seen.
set -u
cd "$(dirname "$0")/.." || exit
root=$PWD
scratch=$root/.build/ways
rm -rf "$scratch"
mkdir -p "$scratch"
small=$root/tests/consumer/small
failed=0

# way NAME COMMAND...: a line of the table. What the command prints is kept beside its results.
way() {
  name=$1
  shift
  log=$scratch/$(echo "$name" | tr -c 'A-Za-z0-9.\n' '_').log
  start=$(date +%s.%N)
  works=yes
  "$@" >"$log" 2>&1 || { works="NO, see $log"; failed=1; }
  printf '| %s | %s | %.1f |\n' "$name" "$works" "$(echo "$(date +%s.%N) - $start" | bc)"
}

# by_cmake NAME CMAKE ARGUMENT...: configures, builds and runs the small user.
by_cmake() {
  build=$scratch/$1
  cmake=$2
  shift 2
  "$cmake" -S "$small" -B "$build" -G Ninja "$@" && "$cmake" --build "$build" && "$build/small"
}

# What json and fmt are brought from in place of their releases, for a machine that cannot reach these: archives of the
# headers that the system has. The checkout is a copy whose pins name them.
brought() {
  copy=$scratch/brought
  mkdir -p "$copy/checkout" "$copy/nlohmann_json/include" "$copy/fmt/include" || return
  git archive HEAD CMakeLists.txt lib | tar x -C "$copy/checkout" || return
  needs=$copy/checkout/lib/cmake/levigate-needs.cmake
  for target in nlohmann_json::nlohmann_json fmt::fmt-header-only; do
    need=${target%%::*}
    cp -r "/usr/include/${need%_json}" "$copy/$need/include" || return
    echo "cmake_minimum_required(VERSION 3.16)
project($need LANGUAGES CXX)
add_library(${target##*::} INTERFACE)
add_library($target ALIAS ${target##*::})
target_include_directories(${target##*::} INTERFACE include)
target_compile_definitions(${target##*::} INTERFACE FMT_HEADER_ONLY)" >"$copy/$need/CMakeLists.txt"
    tar czf "$copy/$need.tar.gz" -C "$copy" "$need" || return
    hash=$(sha256sum "$copy/$need.tar.gz" | cut -d' ' -f1)
    sed -i "/levigate_need_$need\$/,/SHA256/{s|URL .*|URL file://$copy/$need.tar.gz|;s|SHA256 [0-9a-f]*|SHA256 $hash|}" "$needs"
  done
  # The pins of the releases are gone from the copy, so that nothing else can have been brought.
  ! grep https: "$needs" || return
  cmake=$1
  by_cmake "brought_$2" "$cmake" -DLEVIGATE_WAY=subdirectory -DLEVIGATE_CHECKOUT="$copy/checkout" \
    -DCMAKE_DISABLE_FIND_PACKAGE_nlohmann_json=ON -DCMAKE_DISABLE_FIND_PACKAGE_fmt=ON || return
  [ -d "$scratch/brought_$2/_deps/nlohmann_json-src" ] && [ -d "$scratch/brought_$2/_deps/fmt-src" ]
}

install_headers() {
  cmake -S . -B "$scratch/headers" -G Ninja -DCMAKE_INSTALL_PREFIX="$scratch/prefix" -DLEVIGATE_BUILD_TESTS=OFF \
    -DLEVIGATE_BUILD_EXAMPLES=OFF -DLEVIGATE_BUILD_BINDINGS=OFF -DLEVIGATE_BUILD_COMPILED=OFF \
    -DCMAKE_DISABLE_FIND_PACKAGE_nlohmann_json=ON -DCMAKE_DISABLE_FIND_PACKAGE_fmt=ON &&
    cmake --install "$scratch/headers"
}

by_pkg_config() {
  # shellcheck disable=SC2046  # a list of flags
  "$@" $(PKG_CONFIG_PATH=$scratch/prefix/share/pkgconfig pkg-config --cflags levigate) "$small/small.cpp" \
    -o "$scratch/pkg_config" && "$scratch/pkg_config"
}

by_meson() {
  PKG_CONFIG_PATH=$scratch/prefix/share/pkgconfig "$scratch/tools/bin/meson" setup "$scratch/meson" "$small" &&
    "$scratch/tools/bin/meson" test -C "$scratch/meson"
}

compiled_library() {
  cmake -S . -B "$scratch/compiled" -G Ninja -DCMAKE_INSTALL_PREFIX="$scratch/compiled_prefix" \
    -DLEVIGATE_BUILD_TESTS=OFF -DLEVIGATE_BUILD_EXAMPLES=OFF -DLEVIGATE_BUILD_BINDINGS=OFF -DCMAKE_BUILD_TYPE=Release &&
    cmake --build "$scratch/compiled" && cmake --install "$scratch/compiled"
}

by_compiled() {
  cmake -S tests/consumer/compiled -B "$scratch/compiled_user" -G Ninja -DLEVIGATE_DEMO="$root/data/demo" \
    -DCMAKE_PREFIX_PATH="$scratch/compiled_prefix" -DCMAKE_CXX_STANDARD=20 &&
    cmake --build "$scratch/compiled_user" && ctest --test-dir "$scratch/compiled_user" --output-on-failure
}

by_compiled_pkg_config() {
  flags=$(PKG_CONFIG_PATH=$scratch/compiled_prefix/share/pkgconfig pkg-config --cflags --libs levigate-compiled) || return
  # shellcheck disable=SC2086  # a list of flags
  g++ -std=c++20 tests/consumer/compiled/*.cpp $flags -o "$scratch/compiled_pkg_config" &&
    "$scratch/compiled_pkg_config" data/demo
}

refused_component() {
  mkdir "$scratch/refused"
  echo 'cmake_minimum_required(VERSION 3.22)
project(refused LANGUAGES CXX)
find_package(levigate REQUIRED COMPONENTS jsn)' >"$scratch/refused/CMakeLists.txt"
  ! cmake -S "$scratch/refused" -B "$scratch/refused/build" -DCMAKE_PREFIX_PATH="$scratch/prefix" >"$scratch/refused/said" 2>&1 &&
    grep "no component jsn" "$scratch/refused/said"
}

cpp_ways() {
  python3 -m venv "$scratch/tools" && "$scratch/tools/bin/pip" install -q 'cmake==3.22.*' meson ninja
  python3 -m venv "$scratch/oldest" && "$scratch/oldest/bin/pip" install -q 'cmake==3.16.*'
  python3 -m venv "$scratch/newest" && "$scratch/newest/bin/pip" install -q cmake
  old=$scratch/tools/bin/cmake
  newest=$scratch/newest/bin/cmake
  git archive --format=tar.gz -o "$scratch/levigate.tar.gz" HEAD
  way "install headers, neither json nor fmt at hand" install_headers
  for compiler in g++ clang++-14 $newer; do
    for standard in 20 23; do
      way "find_package, $compiler, C++$standard" by_cmake "find_$compiler$standard" cmake -DLEVIGATE_WAY=find_package \
        -DCMAKE_PREFIX_PATH="$scratch/prefix" -DCMAKE_CXX_COMPILER="$compiler" -DCMAKE_CXX_STANDARD="$standard"
    done
  done
  for cmake in "$scratch/oldest/bin/cmake" "$old" "$newest"; do
    version=$("$cmake" --version | head -n 1 | cut -d' ' -f3)
    way "find_package, CMake $version" by_cmake "find_$version" "$cmake" -DLEVIGATE_WAY=find_package \
      -DCMAKE_PREFIX_PATH="$scratch/prefix"
  done
  for cmake in "$old" cmake "$newest"; do
    version=$("$cmake" --version | head -n 1 | cut -d' ' -f3)
    way "add_subdirectory, CMake $version" by_cmake "subdirectory_$version" "$cmake" -DLEVIGATE_WAY=subdirectory \
      -DLEVIGATE_CHECKOUT="$root"
    way "add_subdirectory that brings json and fmt, CMake $version" brought "$cmake" "$version"
  done
  way "FetchContent of an archive" by_cmake fetch cmake -DLEVIGATE_WAY=fetch -DLEVIGATE_ARCHIVE="$scratch/levigate.tar.gz"
  way "pkg-config, g++" by_pkg_config g++ -std=c++20
  way "pkg-config, clang" by_pkg_config clang++-14 -std=c++20
  way "Meson" by_meson
  way "build and install levigate::compiled" compiled_library
  way "levigate::compiled by find_package" by_compiled
  way "levigate::compiled by pkg-config" by_compiled_pkg_config
  way "a component that there is not is refused" refused_component
}

# hidden COMMAND...: where the headers of json and fmt that the system has cannot be seen, as root.
hidden() {
  if [ "$(id -u)" != 0 ]; then
    "$@"
    return
  fi
  mkdir -p "$scratch/empty"
  # shellcheck disable=SC2016  # for the inner shell
  unshare --mount sh -c 'empty=$1; shift
    for there in /usr/include/fmt /usr/include/nlohmann /usr/lib/*/cmake/fmt /usr/share/cmake/nlohmann_json; do
      [ ! -d "$there" ] || mount --bind "$empty" "$there" || exit
    done
    exec "$@"' sh "$scratch/empty" "$@"
}

source_archive() {
  python3 -m venv "$scratch/build_tool" && "$scratch/build_tool/bin/pip" install -q build &&
    "$scratch/build_tool/bin/python" -m build --sdist -o "$scratch/sdist" bindings
}

wheel_of_archive() {
  hidden "$1" -m pip wheel --no-deps -v -w "$scratch/$1" "$scratch"/sdist/levigate-*.tar.gz
}

# The wheel alone, in an empty directory: its demo is planned, its schema read, its tag looked at.
plan_from_wheel() {
  "$1" -m venv "$scratch/$1/venv" || return
  "$scratch/$1/venv/bin/pip" install -q "$scratch/$1"/levigate-*.whl || return
  mkdir "$scratch/$1/nothing_else" && cd "$scratch/$1/nothing_else" || return
  "$scratch/$1/venv/bin/python" - <<'PYTHON'
import importlib.resources, json, sys, sysconfig
import levigate
data = importlib.resources.files("levigate") / "data"
demo = data / "demo"
plan = levigate.plan(levigate.Job.from_json((demo / "job.json").read_text()),
                     levigate.Stack.from_json((demo / "stack.json").read_text()))
assert plan.found and len(plan.steps) == 4, plan
assert json.loads((data / "schema" / "job.schema.json").read_text())["type"] == "object"
tag = sysconfig.get_config_var("SOABI")
assert tag.split("-")[1] in levigate._core.__file__, (tag, levigate._core.__file__)
print(sys.version, len(plan.steps))
PYTHON
  result=$?
  cd "$root" || return
  return "$result"
}

python_ways() {
  way "source archive" source_archive
  for version in 3.9 3.10 3.11 3.12 3.13 3.13t 3.14 3.14t; do
    python=python$version
    "$python" -c '' 2>/dev/null || continue
    way "wheel of the archive, $python" wheel_of_archive "$python"
    way "demo planned from that wheel alone, $python" plan_from_wheel "$python"
  done
}

newer=
for candidate in clang++-19 clang++-16 g++-13; do
  command -v "$candidate" >/dev/null && newer="$newer $candidate"
done
echo "| way | works | s |"
echo "|---|---|---|"
case ${1:-all} in
  cpp) cpp_ways ;;
  python) python_ways ;;
  all) cpp_ways; python_ways ;;
  *) echo "usage: sh tests/ways.sh [cpp|python]" >&2; exit 2 ;;
esac
exit $failed
