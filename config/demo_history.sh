#!/bin/sh
# Posts the demo plant's fourteen months of production to a ledger that is made anew.
#
#   sh config/demo_history.sh TREE PLACE
#
# TREE is a build tree with the program; the ledger is PLACE/ledger.db, beside the documents that it was made of.
set -eu

top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
tree=$1 place=$2
rm -rf "$place"
mkdir -p "$place"
ledger=$place/ledger.db
log=$place/last-answer

# On the demo's ledger; what is said goes to a file, so that a failure is not lost in a pipe.
quietly() {
    if ! (cd "$top" && "$tree/bin/flutebook" --plant config/demo --ledger "$ledger" "$@") >"$log"; then
        echo "demo_history.sh: flutebook $1 failed: why stands above" >&2
        exit 1
    fi
}

# Every request but the one that fits nowhere, at the prices of two days.
set --
for request in "$top"/config/demo/requests/*.yaml; do
    case $request in
        */R-1009-*) ;;
        *) set -- "$@" "$request" ;;
    esac
done
quietly quote "$@" --save --json --date 2025-10-01
cp "$log" "$place/first-quotes.json"
quietly quote "$@" --save --json --date 2026-04-01
cp "$log" "$place/second-quotes.json"
"$tree/bin/flutebook_history" "$top/config/demo" "$place" "$place/first-quotes.json" "$place/second-quotes.json"

orders=0
while read -r quote quantity number; do
    quietly order "$quote" "$quantity" --as "$number"
    orders=$((orders + 1))
done <"$place/orders.txt"
printf '%d orders taken from %d saved quotes\n' "$orders" $((2 * $#))

# A number or a hash of the last answer in JSON, by its key.
answered() {
    sed -n "s/.*\"$1\": \"\{0,1\}\([0-9a-f]*\).*/\1/p" "$log" | sed -n 1p
}

post() {
    quietly post "$@" --json
    printf '  posted %s' "$(answered posted)"
}

# As plants do: the next month's rows are posted before a month is closed, so it closes under any clock.
before=
for folder in "$place"/20??-??; do
    month=${folder##*/}
    printf '%s' "$month"
    post "$folder"/*.csv
    if [ "$month" = 2026-07 ]; then
        # A row was keyed wrongly: it is undone by its mirror, and the right one posted.
        post "$place/corrections/2026-07-wrong.csv"
        quietly reverse "$(answered first_entry)" --why '640 was keyed for 64'
        printf '  reversed'
        post "$place/corrections/2026-07-right.csv"
    fi
    # The last two months are still open.
    if [ -n "$before" ] && [ "$before" != 2026-10 ]; then
        quietly close "$before" --json
        printf '  %s closed, head %.16s...' "$before" "$(answered head)"
    fi
    before=$month
    printf '\n'
done
