#!/bin/bash
# Builds the program into build/multibody at the root and writes cycle.json beside this file.
#   bash reference/multibody/rebuild.sh          program and data
#   bash reference/multibody/rebuild.sh --time   program, then its timings
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
program="$here/../../build/multibody/cycle"
source "$here/library.sh"
compile_with_library "$program" "$here"/{cycle,car,mechanism,follow,json,clock}.cpp
if [ "${1:-}" = --time ]; then
    "$program" --time "$here/cars.txt"
else
    "$program" "$here/cars.txt" "$here/cycle.json"
fi
