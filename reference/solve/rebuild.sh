#!/bin/sh
# Problems out of the example cars, then their optima: needs the engine built, python3 and scipy (Debian: python3-scipy).
set -eu
cd "$(dirname "$0")/../.."
npx tsc --build packages/engine
node reference/solve/problems.mjs
python3 reference/solve/optimise.py
