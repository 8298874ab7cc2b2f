#!/bin/sh
# Performs the SDK's own page in a clean folder, from its first command to the quote, and says how long it took.
#
#   sh page_test.sh README.md BUILD SOURCES
set -u

page=$1
build=$2
sources=$3
clean=$(mktemp -d) || exit 1
trap 'rm -rf "$clean"' EXIT

begun=$(date +%s)
sh "$sources/tests/support/perform_page.sh" "$page" "$build" "$sources" "$clean" || exit 1
took=$(($(date +%s) - begun))

grep -q 'Varnish' "$clean/last.said" || {
    echo 'FAILED: no varnish in the quote that the page ends with'
    cat "$clean/last.said"
    exit 1
}
cmp "$clean/author/varnish/varnish.cpp" "$sources/sdk/examples/varnish/varnish.cpp" || {
    echo 'FAILED: the model of the page is no longer the example'
    exit 1
}
echo "the page took $took s, of the ten minutes that it promises"
[ "$took" -lt 600 ]
