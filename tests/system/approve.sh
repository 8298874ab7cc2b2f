#!/bin/sh
# Approves what the program prints now as the golden cost sheets: shows the difference, then replaces them.
#
#   sh tests/system/approve.sh [BUILD TREE]
#
# Each golden/R-NNNN.txt is the printed answer to that request of the demo plant. The build tree is build-release/
# unless another is given.
set -eu

top=$(CDPATH='' cd -- "$(dirname -- "$0")/../.." && pwd)
tree=${1:-$top/build-release}
new=$(mktemp)
trap 'rm -f "$new"' EXIT

for golden in "$top"/tests/system/golden/R-*.txt; do
    number=$(basename "$golden" .txt)
    set -- "$top"/config/demo/requests/"$number"-*.yaml
    "$tree/bin/flutebook" --plant "$top/config/demo" quote "$1" --sheet >"$new"
    if diff -u "$golden" "$new"; then
        echo "$number: nothing has changed"
    else
        cp "$new" "$golden"
        echo "$number: replaced; the difference stands above"
    fi
done
