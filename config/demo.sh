#!/bin/sh
# Shows the main job on the demo plant: installs what is missing, builds Flutebook, costs a few orders, posts fourteen
# months of production, prints the account of one month and what an order of a bad month really cost, and says how to
# open the pages.
#
#   sh config/demo.sh
#
# Needs nothing but a shell and apt, from any folder, as often as you like. All that it makes is one build tree.
set -eu

top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)

echo "== what it is built with"
sh "$top/config/install.sh" build

tree=$(sh "$top/config/tree.sh" build)
echo "== building in $tree (some minutes the first time)"
log=$(mktemp)
trap 'rm -f "$log"' EXIT
if ! sh "$top/config/build.sh" "$tree" -DCMAKE_BUILD_TYPE=Release -DFLUTEBOOK_TESTS=OFF >"$log" 2>&1; then
    cat "$log" >&2
    echo "demo.sh: the build failed: its output stands above; the last error in it is the one to read" >&2
    exit 1
fi

# Shows a command as a person would type it here, then runs it.
flutebook() {
    printf '\n== flutebook --plant config/demo %s\n\n' "$*"
    (cd "$top" && "$tree/bin/flutebook" --plant config/demo "$@")
}

flutebook plugin list
flutebook quote config/demo/requests/R-1001-everyday-box.yaml
flutebook quote config/demo/requests/R-1007-print-cut-glue.yaml
flutebook quote config/demo/requests/R-1005-double-wall.yaml

printf '\n== Next: a box measured in inches, at another plant\n'
printf '\n== flutebook --plant config/demo-us quote config/demo-us/requests/U-101-sixteenths.yaml\n\n'
(cd "$top" && "$tree/bin/flutebook" --plant config/demo-us quote config/demo-us/requests/U-101-sixteenths.yaml)

printf '\n== Next: an order that nothing here can make, answered with the limits that stop it\n'
# Refused is the right answer (1); anything else is not.
refused=0
flutebook quote config/demo/requests/R-1009-fits-nowhere.yaml || refused=$?
if [ "$refused" -ne 1 ]; then
    echo "demo.sh: the order that fits nowhere ended with $refused: 1 was due; look at the lines above" >&2
    exit 1
fi

printf '\n== Next: fourteen months of production, in a ledger that is made anew each time\n\n'
ledger=$tree/demo-history/ledger.db
sh "$top/config/demo_history.sh" "$tree" "$tree/demo-history"

flutebook --ledger "$ledger" verify
flutebook --ledger "$ledger" month 2026-10
flutebook --ledger "$ledger" order cost 2603-02

printf '\n== Next: the same in a browser\n\n'
printf 'Type this, and open the address that it prints:\n\n  %s --plant %s --ledger %s serve\n\n' \
    "$tree/bin/flutebook" "$top/config/demo" "$ledger"
printf 'New quote asks for a price, which can be saved and offered. October 2026 is the month to review: drop documents\n'
printf 'on it (those that it has lie in %s), then close it.\n' "$tree/demo-history/2026-10"
