#!/bin/sh
# Configures and builds one build tree.
#
#   sh config/build.sh DIR [CMAKE OPTION]...
#
# DIR belongs to this script: a tree that was configured elsewhere, for a copy of these sources at another path or by
# another generator, cannot be reused and is made anew.
set -eu

top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
tree=$1
shift

# What a configured tree remembers under a name.
remembered() {
    sed -n "s/^$1:INTERNAL=//p" "$tree/CMakeCache.txt"
}

if [ -e "$tree/CMakeCache.txt" ]; then
    if [ "$(remembered CMAKE_HOME_DIRECTORY)" != "$top" ] || [ "$(remembered CMAKE_GENERATOR)" != Ninja ]; then
        rm -rf "$tree"
    fi
fi

cmake -S "$top" -B "$tree" -G Ninja "$@"
cmake --build "$tree" --parallel "$(nproc)"
