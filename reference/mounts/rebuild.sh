#!/usr/bin/env bash
# Writes problems.json out of the engine (built before: npx tsc --build), lets the optimiser search them, writes optima.json.
set -euo pipefail
cd "$(dirname "$0")"
node problem.mjs
python3 optimise.py
