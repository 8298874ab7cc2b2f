#!/bin/sh
# A host built with the first released header, three plugins of one source: the file built with that very header and
# kept, one built today, and one built with a header that has grown at the end of every struct. The host must say the
# same of all three, to the last bit.
#
#   sh old_host_test.sh OLD_HOST TODAY GROWN [RELEASED]
#
# RELEASED is left out where the kept file is of another machine.
set -u

host=$1
today=$2
grown=$3
scratch=$(mktemp -d) || exit 1
trap 'rm -rf "$scratch"' EXIT
failed=0

# ask NAME FILE
ask() {
    "$host" "$2" >"$scratch/$1" 2>"$scratch/$1.size" || {
        echo "FAILED: the old host cannot use $2"
        exit 1
    }
}

# same NAME: as today's, and it says something.
same() {
    if cmp "$scratch/today" "$scratch/$1"; then echo "same bits: $1"; else
        diff "$scratch/today" "$scratch/$1"
        failed=1
    fi
}

ask today "$today"
grep -q '^quantities .*0x1' "$scratch/today" || {
    echo 'FAILED: nothing was charged, so nothing was compared'
    failed=1
}
ask grown "$grown"
same grown
if cmp -s "$scratch/today.size" "$scratch/grown.size"; then
    echo "FAILED: the grown header has not grown: $(cat "$scratch/grown.size")"
    failed=1
fi
if [ $# -gt 3 ]; then
    ask released "$4"
    same released
fi
exit $failed
