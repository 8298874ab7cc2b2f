#!/bin/sh
# The golden order of a new plugin: a model that charges something else than was expected fails its test, which shows
# both; what it found is taken only when its author says so, and then it passes.
#
#   sh golden_order_test.sh BUILD      the build tree, which has the shape of an installed Flutebook
set -u

build=$1
scratch=$(mktemp -d) || exit 1
trap 'rm -rf "$scratch"' EXIT
cd "$scratch" || exit 1
# What the program remembers of the files it tried is nobody else's.
export XDG_CACHE_HOME="$scratch/cache"

# must WHAT RESULT PATTERN: the last command ended so (0 or not), and said so.
must() {
    if { [ "$2" = passes ] && [ "$result" -ne 0 ]; } || { [ "$2" = fails ] && [ "$result" -eq 0 ]; } ||
        ! grep -qF -- "$3" said; then
        echo "FAILED: $1 should be one that $2, with '$3':"
        cat said
        exit 1
    fi
}
try() {
    "$@" >said 2>&1
    result=$?
}

try "$build/bin/flutebook" plugin new wax
must 'a new plugin' passes 'wax.cpp is where to begin'
try cmake -G Ninja -S wax -B wax/build -DCMAKE_PREFIX_PATH="$build"
must 'its configuration' passes 'Build files have been written'
try cmake --build wax/build
must 'its build' passes 'Linking'
try ctest --test-dir wax/build -V
must 'its golden order' passes 'wax charges what golden/expected.csv says'

sed -i 's/price: 2/price: 3/' wax/golden/plugins.yaml
cp wax/golden/expected.csv before
try ctest --test-dir wax/build --output-on-failure
must 'another price' fails '990,wax,1,,15.3'
cmp before wax/golden/expected.csv || { echo 'FAILED: a failing test wrote what it expects'; exit 1; }
try cmake --build wax/build --target wax_golden
must 'taking what was found' passes 'taken as expected'
[ "$(tail -n 1 wax/golden/expected.csv)" = '990,wax,1,,15.3' ] || { echo 'FAILED: not taken'; exit 1; }
try ctest --test-dir wax/build
must 'what was taken' passes '100% tests passed'

sed -i 's/  - wax:.*/  - wax: {prize: 3}/' wax/golden/plugins.yaml
try ctest --test-dir wax/build --output-on-failure
must 'a golden plant that does not open' fails 'did you mean'
rm wax/golden/expected.csv
sed -i 's/  - wax:.*/  - wax: {use: {FG1: 5}, price: 3}/' wax/golden/plugins.yaml
try ctest --test-dir wax/build --output-on-failure
must 'nothing that is expected' fails '990,wax,1,,15.3'
echo 'a golden order holds what it is told to hold'
