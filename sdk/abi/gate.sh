#!/bin/sh
# Whether a plugin.h still keeps what was released: two nets, and whatever cannot be looked at has failed.
#
#   sh gate.sh HEADERS RELEASED TYPED_SYMBOL LAYOUT...
#
# HEADERS and RELEASED are include folders: the one to be judged and the one of the newest release. TYPED_SYMBOL is the
# dummy that exports the symbol with its type; `CFLAGS` replaces how it is compiled (-g -O0). Each LAYOUT is a table of a
# release, `struct.field offset size type` and `NAME value`.
#
# First net: every line of every layout must still be there, and within a struct nothing may stand before them. Second
# net: abidiff must find no change at all against the newest release. Fields that are appended for the next release pass
# the first net; the second one wants that release's own header as RELEASED. Ends with 0 only when both hold.
set -u

headers=$1
released=$2
typed_symbol=$3
shift 3
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd) || exit 1
scratch=$(mktemp -d) || exit 1
trap 'rm -rf "$scratch"' EXIT
failed=0

fail() {
    printf 'abi gate: %s\n' "$1"
    failed=1
}

# --- where everything lies
layout() {
    awk -f "$here/layout.awk" "$headers/flutebook/plugin.h" >"$scratch/layout.c" &&
        "${CC:-cc}" -std=c99 -I"$headers" "$scratch/layout.c" -o "$scratch/layout" &&
        "$scratch/layout" >"$scratch/layout.txt" && [ -s "$scratch/layout.txt" ]
}

# Lines of $1 that the layout of today lacks, or has behind a field that the release did not know.
broken_lines() {
    awk '
        function owner(name) { return index(name, ".") ? substr(name, 1, index(name, ".") - 1) : "" }
        FNR == NR {
            now[$0] = 1
            if (owner($1) != "") place[$0] = ++fields[owner($1)]
            next
        }
        !($0 in now) { print "is gone or was changed: " $0; next }
        owner($1) != "" && place[$0] != ++old[owner($1)] { print "no longer stands where it stood: " $0 }
    ' "$scratch/layout.txt" "$1"
}

if layout 2>"$scratch/said"; then
    [ $# -gt 0 ] || fail 'no layout was given to compare with'
    for table in "$@"; do
        [ -s "$table" ] || fail "$table is empty or missing"
        broken_lines "$table" >"$scratch/broken" || fail "$table cannot be compared"
        while read -r line; do fail "$(basename "$table"): $line"; done <"$scratch/broken"
    done
else
    fail "the layout of $headers cannot be read: $(head -n 3 "$scratch/said")"
fi

# --- what the compiler's debug information says
dummy() {
    # shellcheck disable=SC2086  # a list of words
    "${CC:-cc}" -std=c99 ${CFLAGS:--g -O0} -shared -fPIC -I"$1" "$typed_symbol" -o "$2" 2>"$scratch/said" ||
        { fail "the typed symbol does not compile with $1: $(head -n 3 "$scratch/said")"; return 1; }
    # Without types abidiff finds nothing to compare, and calls that no change.
    abidw --no-show-locs "$2" 2>/dev/null | grep -q "<class-decl name='flutebook_model' .*size-in-bits" ||
        { fail "no type of flutebook_plugin in the debug information of $1"; return 1; }
}

if ! command -v abidiff >/dev/null || ! command -v abidw >/dev/null; then
    fail 'abidiff and abidw are missing: install abigail-tools'
elif dummy "$released" "$scratch/released.so" && dummy "$headers" "$scratch/now.so"; then
    abidiff --no-show-locs "$scratch/released.so" "$scratch/now.so" >"$scratch/abidiff" 2>&1 ||
        fail "abidiff finds a change against the newest release: $(tr -s ' \n' ' ' <"$scratch/abidiff" | cut -c1-600)"
fi

exit $failed
