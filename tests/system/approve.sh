#!/bin/sh
# Approves what the program prints now as the golden cost sheets, and the charts that the tests drew last: shows the
# difference, then replaces them.
#
#   sh tests/system/approve.sh [BUILD TREE]
#
# Each golden/R-NNNN.txt is the printed answer to that request of the demo plant, each golden/U-NNN.txt that of the us
# demo plant at 80 columns. The build tree is build-release/ unless another is given.
set -eu

top=$(CDPATH='' cd -- "$(dirname -- "$0")/../.." && pwd)
tree=${1:-$top/build-release}
new=$(mktemp)
trap 'rm -f "$new"' EXIT

for golden in "$top"/tests/system/golden/*.txt; do
    number=$(basename "$golden" .txt)
    case $number in
        R-*) plant=$top/config/demo columns=100 ;;
        *) plant=$top/config/demo-us columns=80 ;;
    esac
    set -- "$plant"/requests/"$number"-*.yaml
    COLUMNS=$columns "$tree/bin/flutebook" --plant "$plant" quote "$1" --sheet >"$new"
    if diff -u "$golden" "$new"; then
        echo "$number: nothing has changed"
    else
        cp "$new" "$golden"
        echo "$number: replaced; the difference stands above"
    fi
done

# Each form of chart, as unit_charts drew it.
for drawn in "$tree"/charts/*.svg; do
    [ -e "$drawn" ] || continue
    golden=$top/tests/unit/charts/golden/$(basename "$drawn")
    if cmp -s "$golden" "$drawn"; then
        echo "$(basename "$drawn"): nothing has changed"
    else
        [ ! -e "$golden" ] || diff -u "$golden" "$drawn" || true
        cp "$drawn" "$golden"
        echo "$(basename "$drawn"): replaced; look at it in a browser"
    fi
done
