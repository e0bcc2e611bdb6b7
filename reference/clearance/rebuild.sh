#!/bin/sh
# Builds pairs.cpp and writes pairs.json anew. Needs a C++ compiler and Debian's libfcl-dev.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
out="$here/../../build/reference/clearance"
mkdir -p "$out"
# The compiler options that the library asks for name an older standard: ours has to come after them.
c++ $(pkg-config --cflags fcl eigen3) -std=c++17 -O2 -Wall -o "$out/pairs" "$here/pairs.cpp" $(pkg-config --libs fcl) -lccd
"$out/pairs" > "$out/pairs.json"
mv "$out/pairs.json" "$here/pairs.json"
