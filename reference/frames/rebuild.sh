#!/bin/sh
# Solves the frames of frames.json with CalculiX and writes calculix.json anew. Needs Node and Debian's calculix-ccx.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
out="$here/../../build/reference/frames"
mkdir -p "$out"
node "$here/run.mjs" "$here/frames.json" "$out" "$out/calculix.json"
mv "$out/calculix.json" "$here/calculix.json"
