#!/usr/bin/env bash
# Makes cope.json anew with a general solid-geometry library from npm, installed beside the build, not into the project.
set -euo pipefail
cd "$(dirname "$0")"
mkdir -p ../../build/cope
npm install --no-audit --no-fund --prefix ../../build/cope manifold-3d@3.5.4
node cope.mjs "$(cd ../../build/cope && pwd)" > cope.json
