# Sourced by the scripts that a newcomer runs, from the root of the checkout: progress lines, Debian
# packages, the virtual environment. Everything made lives in .build/.
set -eu
started=$(date +%s)
venv=$PWD/.build/venv
export PIP_DISABLE_PIP_VERSION_CHECK=1
mkdir -p .build

say() {
  printf '\n[%4d s] %s\n' "$(($(date +%s) - started))" "$*"
}

# need PACKAGE...: installs the Debian packages that are missing. Who is not root is told which.
need() {
  if ! command -v dpkg-query >/dev/null; then
    echo "Not a Debian system: taking for granted what these packages bring: $*"
    return
  fi
  missing=
  for package in "$@"; do
    case $(dpkg-query -W -f '${Status}' "$package" 2>/dev/null) in
      *' ok installed') ;;
      *) missing="$missing $package" ;;
    esac
  done
  [ -n "$missing" ] || return 0
  if [ "$(id -u)" != 0 ]; then
    echo "Missing, and only root can install: apt-get install$missing" >&2
    exit 1
  fi
  say "Installing$missing"
  [ -n "${lists_read:-}" ] || apt-get update -qq
  lists_read=yes
  # shellcheck disable=SC2086  # a list of words
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $missing >.build/apt.log 2>&1 ||
    { cat .build/apt.log >&2; exit 1; }
}

python_can_build() {
  python3 -c '
import ensurepip, os, sys, sysconfig
header = os.path.join(sysconfig.get_path("include"), "Python.h")
sys.exit(sys.version_info < (3, 9) or not os.path.exists(header))' 2>/dev/null
}

# Makes .build/venv, or keeps the one that is there. It is made anew where it no longer runs, as in a
# checkout that was moved.
make_venv() {
  python_can_build || need python3-venv python3-dev
  "$venv/bin/python" -m pip --version >/dev/null 2>&1 && return
  say "Making the virtual environment"
  rm -rf "$venv"
  python3 -m venv "$venv"
}

# What the build of the module needs: pyproject.toml says it, and what the system has no tool for.
build_needs() {
  "$venv/bin/python" - <<'PYTHON'
try:
    import tomllib
except ImportError:
    from pip._vendor import tomli as tomllib
with open("bindings/pyproject.toml", "rb") as file:
    print(*tomllib.load(file)["build-system"]["requires"], sep="\n")
PYTHON
  for tool in cmake ninja; do
    command -v $tool >/dev/null || echo $tool
  done
}

# install_module WHAT ARGUMENT...: builds what changed since the last time, one line for each file.
install_module() {
  build_needs >.build/needs.txt
  cmp -s .build/needs.txt "$venv/needs.txt" || {
    "$venv/bin/pip" install -q -r .build/needs.txt
    cp .build/needs.txt "$venv"
  }
  {
    PATH=$venv/bin:$PATH CMAKE_GENERATOR=Ninja "$venv/bin/pip" install -v --no-build-isolation \
      --config-settings=build-dir="$PWD/.build/module" "$@" 2>&1 && echo installed
  } | tee .build/install.log | sed -un 's|^ *\(\[[0-9]*/[0-9]*\]\) Building .*/\([^/]*\)\.o$|  \1 \2|p'
  [ "$(tail -n 1 .build/install.log)" = installed ] || {
    cat .build/install.log >&2
    exit 1
  }
}
