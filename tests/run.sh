#!/bin/sh
# What a person waits for: installs what is missing, builds once, passes every test.
#
#   sh tests/run.sh
#
# A stage that passes takes one line, a stage that fails shows all its output; the others run all the same. A test that
# could not run on this machine is named as skipped. The last line is `N passed, N failed`: every test case, and every
# stage that is not a set of test cases. Ends with 0 only when nothing failed. Build tree: build-release/. What takes
# longer (sanitizers, clang-tidy, benches) is tests/deep.sh.
cd "$(dirname -- "$0")/.." || exit 1
. tests/stages.sh

formatted() {
    sources host plugins sdk ledger tests config | tr '\n' '\0' | xargs -0 clang-format-14 --dry-run -Werror
}

# What was installed works without the sources' build tree: costs an order, and refuses one with the right answer.
installed() {
    place="$scratch/a place of its own"
    cmake --install "$release" --prefix "$place" || return 1
    cd "$scratch" || return 1
    requests=$top/config/demo/requests
    "$place/bin/flutebook" --plant "$top/config/demo" quote "$requests/R-1001-everyday-box.yaml" || return 1
    "$place/bin/flutebook" --plant "$top/config/demo" quote "$requests/R-1009-fits-nowhere.yaml"
    [ $? -eq 1 ]
}

if stage 'packages' sh config/install.sh test; then
    stage 'code is laid out as .clang-format says' formatted
    if stage 'release build' release_build; then
        cases 'tests, release' "$release"
        stage 'installed program' installed
    fi
fi
finish
