#!/bin/sh
# Compares what two builds answer: the JSON of all demo requests, of the demo's fourteen months and of its orders.
#
#   sh tests/compare_answers.sh OLD_BIN NEW_BIN
#
# OLD_BIN and NEW_BIN are the folders of `flutebook` and `flutebook_history`. Each build costs the requests and posts the
# demo's production in a ledger of its own, as config/demo.sh does. A value of the old build that the new one has not, or
# has otherwise, is a difference and ends with 1. Keys that only the new build has are listed. Needs sqlite3.
set -eu

if [ $# -ne 2 ] || [ ! -x "$1/flutebook" ] || [ ! -x "$2/flutebook" ]; then
    echo "compare_answers.sh: usage: sh tests/compare_answers.sh OLD_BIN NEW_BIN, the folders of two builds" >&2
    exit 2
fi
old=$(CDPATH='' cd -- "$1" && pwd)
new=$(CDPATH='' cd -- "$2" && pwd)
cd "$(dirname -- "$0")/.."
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT

# flutebook of the build $bin on the demo plant and the ledger in $side.
flutebook() {
    "$bin/flutebook" --plant config/demo --ledger "$side/ledger.db" "$@"
}

# The answer to these words as a file NAME.json, with the exit code beside it.
keep() {
    name=$1
    shift
    code=0
    flutebook "$@" --json >"$side/$name.json" 2>/dev/null || code=$?
    echo "$code" >"$side/$name.code"
}

post() {
    flutebook post "$@" --json >"$side/posted"
}

save_quotes() {
    set --
    for request in config/demo/requests/*.yaml; do
        case $request in
            */R-1009-*) ;;
            *) set -- "$@" "$request" ;;
        esac
    done
    flutebook quote "$@" --save --json --date 2025-10-01 >"$side/first"
    flutebook quote "$@" --save --json --date 2026-04-01 >"$side/second"
}

post_month() {
    post "$1"/*.csv
    [ "${1##*/}" = 2026-07 ] || return 0
    post "$side/corrections/2026-07-wrong.csv"
    entry=$(sed -n 's/.*"first_entry": \([0-9]*\).*/\1/p' "$side/posted" | sed -n 1p)
    flutebook reverse "$entry" --why '640 was keyed for 64' >"$side/posted"
    post "$side/corrections/2026-07-right.csv"
}

answer_all() {
    bin=$1 side=$2
    mkdir -p "$side"
    for request in config/demo/requests/*.yaml; do
        keep "quote-$(basename "$request" .yaml)" quote "$request"
        keep "explained-$(basename "$request" .yaml)" quote "$request" --explain paper --date 2026-04-01
    done
    save_quotes
    "$bin/flutebook_history" config/demo "$side" "$side/first" "$side/second"
    while read -r quote quantity number; do
        keep "order-$number" order "$quote" "$quantity" --as "$number"
    done <"$side/orders.txt"
    for folder in "$side"/20??-??; do
        post_month "$folder"
        month=${folder##*/}
        for axis in machine shift board order; do keep "month-$month-$axis" month "$month" --by "$axis"; done
        case $month in
            2026-10 | 2026-11) ;;
            *) flutebook close "$month" >"$side/posted" ;;
        esac
    done
    while read -r quote quantity number; do
        keep "cost-$number" order cost "$number"
    done <"$side/orders.txt"
}

# The plain values of a document by their paths.
leaves() {
    echo "SELECT fullkey, type, atom FROM json_tree(CASE WHEN json_valid(readfile('$1')) THEN readfile('$1') ELSE 'null' END)
          WHERE type NOT IN ('object', 'array')"
}

compare_all() {
    documents=0 differing=0
    for file in "$place"/old/*.json; do
        name=$(basename "$file" .json)
        documents=$((documents + 1))
        other=$place/new/$name.json
        sqlite3 :memory: "$(leaves "$file") EXCEPT $(leaves "$other")" >"$place/gone"
        cmp -s "$place/old/$name.code" "$place/new/$name.code" || echo "exit code" >>"$place/gone"
        sqlite3 :memory: "SELECT fullkey FROM ($(leaves "$other")) WHERE fullkey NOT IN (SELECT fullkey FROM ($(leaves "$file")))" |
            sed 's/\[[0-9]*\]//g' >>"$place/added"
        if [ -s "$place/gone" ]; then
            differing=$((differing + 1))
            echo "$name differs:"
            sed -n '1,5s/^/  was /p' "$place/gone"
        fi
    done
    values=$(for file in "$place"/old/*.json; do sqlite3 :memory: "SELECT count(*) FROM ($(leaves "$file"))"; done |
        awk '{ sum += $1 } END { print sum }')
    echo "$documents documents, $values values, $differing documents differ"
    echo "keys that only the new build has:"
    sort "$place/added" | uniq -c | sed 's/^/  /'
    [ "$differing" -eq 0 ]
}

: >"$place/added"
answer_all "$old" "$place/old"
answer_all "$new" "$place/new"
compare_all
