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
must 'another price' fails '+ 990,wax,1,,15.3'
must 'another price' fails '- 990,wax,1,,10.2'
must 'another price' fails '  boxes,line,step,ply,amount'
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

# A model that charges nothing is held to what it provides.
cat >wax/wax.cpp <<'CPP'
#include <flutebook/plugin.hpp>
using namespace flutebook;

struct Wax : Model {
    Need<step> fed = need("run.fed", "1", "pieces fed to each step");
    Need<ply> issued = need("paper.issued", "kg", "paper issued for each ply");
    Setting<by_plant> share = setting("share", "1", 0.5, {0, 1}, "pieces that are waxed, as a share");
    Provide<step> waxed = provide("wax.pieces", "1", "pieces waxed at each step");
    Provide<ply> kept = provide("wax.paper", "kg", "paper that is not waxed");

    void evaluate(Frame& f) const {
        for (auto k : f.steps()) f.set(waxed, k, f[fed][k] * f[share]);
        for (auto p : f.plies()) f.set(kept, p, f[issued][p] * (1 - f[share]));
    }
};
FLUTEBOOK_MODEL(Wax, "wax", "1.0.0", "Wax by the piece")
CPP
sed -i 's/  - wax:.*/  - wax: {}/' wax/golden/plugins.yaml
try cmake --build wax/build
must 'a model that only provides' passes 'Linking'
try cmake --build wax/build --target wax_golden
must 'taking what it provides' passes 'taken as expected'
must 'what it provides' passes '+ 990,wax.pieces,1,,510'
[ "$(head -n 1 wax/golden/expected.csv)" = 'boxes,name,step,ply,value' ] || { echo 'FAILED: no numbers'; exit 1; }
grep -q '^990,wax.paper,,1,' wax/golden/expected.csv || { echo 'FAILED: plies do not count from 1'; exit 1; }
try ctest --test-dir wax/build -V
must 'what it provides' passes 'wax provides what golden/expected.csv says'
sed -i 's/  - wax:.*/  - wax: {share: 0.25}/' wax/golden/plugins.yaml
try ctest --test-dir wax/build -R golden --output-on-failure
must 'another share' fails '- 990,wax.pieces,1,,510'
must 'another share' fails '+ 990,wax.pieces,1,,255'
echo 'a golden order holds what it is told to hold'
