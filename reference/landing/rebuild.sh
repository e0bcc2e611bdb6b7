#!/bin/bash
# Writes landing.json beside this file.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
if ! python3 -c "import numpy, scipy" 2>/dev/null; then
    echo "rebuild.sh: needs python3 with NumPy and SciPy:" >&2
    echo "  apt-get install python3-numpy python3-scipy" >&2
    exit 1
fi
python3 "$here/landing.py" "$here/car.json" "$here/landing.json"
