#!/bin/bash
# Builds the program into build/loads at the root and writes forces.json beside this file.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
build="$here/../../build/loads"
if ! command -v g++ >/dev/null || ! pkg-config --exists simbody 2>/dev/null; then
    echo "rebuild.sh: needs the Debian packages g++, pkg-config and libsimbody-dev (3.7):" >&2
    echo "  apt-get install g++ pkg-config libsimbody-dev" >&2
    exit 1
fi
mkdir -p "$build"
g++ $(pkg-config --cflags simbody) -std=c++17 -O2 -ffp-contract=off -Wall -Wextra -Wno-unused-parameter \
    -isystem "$(pkg-config --variable=includedir simbody)" \
    "$here/forces.cpp" "$here/../multibody/car.cpp" -o "$build/forces" $(pkg-config --libs simbody)
"$build/forces" "$here/../multibody/cars.txt" "$here/forces.json"
