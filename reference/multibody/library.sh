# Read by the scripts that build programs on the multibody library: sees that it is there, and compiles with it.
#   compile_with_library PROGRAM SOURCE...
if ! command -v g++ >/dev/null || ! pkg-config --exists simbody 2>/dev/null; then
    echo "$0: needs the Debian packages g++, pkg-config and libsimbody-dev (3.7):" >&2
    echo "  apt-get install g++ pkg-config libsimbody-dev" >&2
    exit 1
fi
compile_with_library() {
    local program=$1
    shift
    mkdir -p "$(dirname "$program")"
    # -std=c++17 after pkg-config's own, which asks for an older one. No contraction, so that the last digits stay put.
    g++ $(pkg-config --cflags simbody) -std=c++17 -O2 -ffp-contract=off -Wall -Wextra -Wno-unused-parameter \
        -isystem "$(pkg-config --variable=includedir simbody)" "$@" -o "$program" $(pkg-config --libs simbody)
}
