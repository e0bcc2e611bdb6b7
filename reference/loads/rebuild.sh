#!/bin/bash
# Builds the program into build/loads at the root and writes forces.json beside this file.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
program="$here/../../build/loads/forces"
source "$here/../multibody/library.sh"
compile_with_library "$program" "$here/forces.cpp" "$here/../multibody/car.cpp"
"$program" "$here/../multibody/cars.txt" "$here/forces.json"
