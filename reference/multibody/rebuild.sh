#!/bin/bash
# Builds the program into build/multibody at the root and writes cycle.json beside this file.
#   bash reference/multibody/rebuild.sh          program and data
#   bash reference/multibody/rebuild.sh --time   program, then its timings
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
build="$here/../../build/multibody"
if ! command -v g++ >/dev/null || ! pkg-config --exists simbody 2>/dev/null; then
    echo "rebuild.sh: needs the Debian packages g++, pkg-config and libsimbody-dev (3.7):" >&2
    echo "  apt-get install g++ pkg-config libsimbody-dev" >&2
    exit 1
fi
mkdir -p "$build"
# -std=c++17 after pkg-config's own, which asks for an older one. No contraction, so that the last digits stay put.
g++ $(pkg-config --cflags simbody) -std=c++17 -O2 -ffp-contract=off -Wall -Wextra -Wno-unused-parameter \
    -isystem "$(pkg-config --variable=includedir simbody)" \
    "$here"/{cycle,car,mechanism,follow,json,clock}.cpp -o "$build/cycle" $(pkg-config --libs simbody)
if [ "${1:-}" = --time ]; then
    "$build/cycle" --time "$here/cars.txt"
else
    "$build/cycle" "$here/cars.txt" "$here/cycle.json"
fi
