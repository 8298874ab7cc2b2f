#!/bin/sh
# Takes the README's pictures again, of the quote desk and of a month's review, from the program in a build tree: on the
# demo plant with its fourteen months.
#
#   sh config/pictures.sh [TREE]
#
# Needs what `sh config/install.sh test` brings, and the packages of tests/browser.
set -eu
umask 022

top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
tree=${1:-$(sh "$top/config/tree.sh" build)}
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT

sh "$top/config/demo_history.sh" "$tree" "$place/history" >/dev/null
cd "$top/tests/browser"
[ -d node_modules/playwright-core ] || npm ci --ignore-scripts --no-audit --no-fund
FLUTEBOOK_PROGRAM=$tree/bin/flutebook node pictures.mjs "$place/history/ledger.db" "$place"

mkdir -p "$top/config/pictures"
for picture in quote-desk month-review; do
    # Few colours, as a page has, so that a clone stays small.
    pngquant --force --strip --speed 1 --output "$top/config/pictures/$picture.png" 64 -- "$place/$picture.png"
    printf '%s: %s bytes\n' "config/pictures/$picture.png" "$(wc -c <"$top/config/pictures/$picture.png")"
done
