#!/bin/sh
# Makes .venv with the packages of a lock file, or says why it cannot. Used by the Makefile.
#   tools/set_up.sh run|dev
set -eu
cd "$(dirname "$0")/.."
what="${1:-run}"
lock="requirements/$what.lock"

say() { printf '%s\n' "$*" >&2; }

fits() { "$1" -c 'import sys; sys.exit(sys.version_info < (3, 11))' 2>/dev/null; }

if [ ! -x .venv/bin/python ] || ! fits .venv/bin/python; then
    python=""
    for candidate in ${PYTHON:-} python3 python3.14 python3.13 python3.12 python3.11; do
        if command -v "$candidate" >/dev/null 2>&1 && fits "$candidate"; then python="$candidate"; break; fi
    done
    if [ -z "$python" ]; then
        say "Witnessmark needs Python 3.11 or newer, and none was found."
        say "Install one (Debian and Ubuntu: apt-get install python3 python3-venv), or name it: make PYTHON=/path/to/python3.12 demo"
        exit 1
    fi
    say "Making .venv with $("$python" --version) ..."
    rm -rf .venv
    if ! "$python" -m venv .venv >.venv-log 2>&1; then
        say "Python could not make a virtual environment:"
        tail -n 3 .venv-log >&2
        say "On Debian and Ubuntu this usually means: apt-get install python3-venv"
        rm -rf .venv .venv-log
        exit 1
    fi
    rm -f .venv-log
fi

say "Installing the packages of $lock (hashes checked) ..."
if ! .venv/bin/python -m pip install --quiet --disable-pip-version-check --require-hashes -r "$lock" 2>.venv/install-log; then
    grep -v '^WARNING' .venv/install-log | tail -n 12 >&2
    say "The packages could not be installed. They come from the Python package index: is the network reachable,"
    say "and does 'python -m pip download six' work here? Nothing outside .venv was changed."
    exit 1
fi
if ! .venv/bin/python -m pip install --quiet --disable-pip-version-check --no-build-isolation --no-deps -e . 2>.venv/install-log; then
    grep -v '^WARNING' .venv/install-log | tail -n 12 >&2
    say "Witnessmark itself could not be installed into .venv; the lines above say why."
    exit 1
fi
# Some tests ask a program that is not Python: without it they are skipped and say so. In CI they must run.
needs_program() { # command, Debian package
    if command -v "$1" >/dev/null 2>&1; then return; fi
    say "Installing $2 (for $1) ..."
    if ! { apt-get update -qq && apt-get install -qq -y --no-install-recommends "$2"; } >.venv/install-log 2>&1; then
        tail -n 5 .venv/install-log >&2
        say "Some tests need $1, which is not here and could not be installed. As root: apt-get install $2"
        if [ -n "${CI:-}" ]; then exit 1; fi
    fi
}
lacks_program() { # command, Debian package, what is skipped
    if ! command -v "$1" >/dev/null 2>&1; then say "No $1 here: $3 are skipped. As root: apt-get install $2"; fi
}
if [ "$what" = dev ] && { [ -n "${CI:-}" ] || [ "$(id -u)" = 0 ]; }; then
    needs_program javac default-jdk-headless
    needs_program chromium chromium
elif [ "$what" = dev ]; then
    lacks_program javac default-jdk-headless "tests of the PDF by a validator"
    lacks_program chromium chromium "tests of pages in a browser"
fi

touch ".venv/ready-$what"
