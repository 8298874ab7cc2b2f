#!/bin/sh
# The gate of the ABI, tried on headers that break it: each must be stopped, by the net that is there for it. A gate that
# lets one through, or that stops a header that only grew at its ends, fails this test.
#
#   sh abi_gate_test.sh SDK RELEASED TYPED_SYMBOL
#
# SDK is the folder sdk/, RELEASED the include folder of the newest release, TYPED_SYMBOL the gate's dummy.
set -u

sdk=$1
released=$2
typed_symbol=$3
scratch=$(mktemp -d) || exit 1
trap 'rm -rf "$scratch"' EXIT
today=$sdk/include
failed=0

# gate HEADERS RELEASED [TYPED_SYMBOL [LAYOUT]]: what it said stands in $scratch/said.
gate() {
    sh "$sdk/abi/gate.sh" "$1" "$2" "${3:-$typed_symbol}" "${4:-$sdk/abi/1.0.layout}" >"$scratch/said" 2>&1
}

# header NAME SED: today's header, changed. The change must take place, or the control controls nothing.
header() {
    mkdir -p "$scratch/$1/flutebook"
    sed "$2" "$today/flutebook/plugin.h" >"$scratch/$1/flutebook/plugin.h"
    if cmp -s "$today/flutebook/plugin.h" "$scratch/$1/flutebook/plugin.h"; then
        echo "FAILED: the header for '$1' is no other header"
        failed=1
    fi
}

holds() {
    if [ "$2" -eq 0 ]; then echo "passes: $1"; else
        echo "FAILED: should pass: $1"
        cat "$scratch/said"
        failed=1
    fi
}

# stopped WHAT RESULT PATTERN...: the gate said no, and each net that should see it did.
stopped() {
    what=$1
    result=$2
    shift 2
    for pattern in "$@"; do
        if [ "$result" -eq 0 ] || ! grep -q "$pattern" "$scratch/said"; then
            echo "FAILED: should be stopped with '$pattern': $what"
            cat "$scratch/said"
            failed=1
            return
        fi
    done
    echo "stopped: $what"
}

first='1\.0\.layout: '
second='abidiff finds a change'

gate "$today" "$released"
holds "today's header" $?

header grown 's/^} flutebook_name;/    const char* source;\n&/; s/^} flutebook_block;/    const double* weights;\n&/'
gate "$scratch/grown" "$scratch/grown"
holds 'fields appended, and released' $?
gate "$scratch/grown" "$released"
stopped 'fields appended, and not released' $? "$second"
grep -q "$first" "$scratch/said" && { echo 'FAILED: the layout has something against appended fields'; failed=1; }

header inserted 's/^    double low, high;/    double typical;\n&/'
gate "$scratch/inserted" "$released"
stopped 'a field inserted' $? "$first.*flutebook_name.low 24 8 double" "$second"

header wider 's/^    uint32_t axis, reserved;/    double axis;\n    uint32_t reserved;/'
gate "$scratch/wider" "$released"
stopped 'a type changed, of another size' $? "$first.*flutebook_name.axis" "$second"

header signed 's/^    uint32_t axis, reserved;/    int32_t axis;\n    uint32_t reserved;/'
gate "$scratch/signed" "$released"
stopped 'a type changed, of the same size' $? "$first.*flutebook_name.axis" "$second"

header swapped 's/double low, high;/double high, low;/'
gate "$scratch/swapped" "$released"
stopped 'two fields swapped' $? "$first.*flutebook_name.low" "$second"

header removed '/^    flutebook_span reasons;/d'
gate "$scratch/removed" "$released"
stopped 'a field taken out' $? "$first.*flutebook_model.reasons" "$second"

header other_function 's/(\*evaluate)(const flutebook_block\* block)/(*evaluate)(flutebook_block block)/'
gate "$scratch/other_function" "$released"
stopped 'a function of another kind' $? "$first.*flutebook_model.evaluate"

header renumbered 's/FLUTEBOOK_PLY = 1/FLUTEBOOK_PLY = 3/'
gate "$scratch/renumbered" "$released"
stopped 'a constant of another value' $? "$first.*FLUTEBOOK_PLY 1"

header unknown 's/^    double low, high;/    double low, high;\n    unsigned whole : 1;/'
gate "$scratch/unknown" "$released"
stopped 'a declaration that the table cannot show' $? 'the layout of .* cannot be read'

gate "$today" "$released" "" "$scratch/no.layout"
stopped 'a table that is not there' $? 'empty or missing'

CFLAGS='-g0 -O2' gate "$today" "$released"
stopped 'no debug information' $? 'no type of flutebook_plugin'

sed -e 's/^const flutebook_model flutebook_plugin.*/const void* const flutebook_untyped = evaluate;/' \
    "$typed_symbol" >"$scratch/untyped.c"
gate "$today" "$released" "$scratch/untyped.c"
stopped 'a symbol without a type' $? 'no type of flutebook_plugin'

mkdir "$scratch/tools"
for tool in sh awk cc gcc as ld grep head basename dirname mktemp rm tr cut cat; do
    ln -s "$(command -v $tool)" "$scratch/tools/$tool"
done
PATH=$scratch/tools gate "$today" "$released"
stopped 'no abidiff' $? 'abidiff and abidw are missing'

exit $failed
