#!/bin/sh
# Everything that must hold, in one run: installs what is missing, builds twice, tests both, checks the code.
#
#   sh tests/run.sh
#
# A stage that passes takes one line, a stage that fails shows all its output; the others run all the same. The last
# line is `N passed, N failed`: every test case, and every stage that is not a heap of test cases. Ends with 0 only
# when nothing failed. Build trees: build-release/ and build-sanitize/.
set -u
umask 022

top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd) || exit 1
cd "$top" || exit 1
release=$(sh config/tree.sh build-release) || exit 1
sanitize=$(sh config/tree.sh build-sanitize) || exit 1

scratch=$(mktemp -d) || exit 1
trap 'rm -rf "$scratch"' EXIT
trap 'exit 130' INT TERM

passed=0
failed=0

# report NAME SECONDS PASSED FAILED: one line, and on failure the stage's output.
report() {
    passed=$((passed + $3))
    failed=$((failed + $4))
    if [ "$4" -eq 0 ]; then
        printf '%-44s %5d s  passed %s\n' "$1" "$2" "$3"
    else
        printf '%-44s %5d s  FAILED %s\n' "$1" "$2" "$4"
        sed 's/^/    /' "$scratch/log"
    fi
}

# stage NAME COMMAND...: passes when the command does. Its own answer says which, for stages that build on it.
stage() {
    name=$1
    shift
    begun=$(date +%s)
    if ("$@") >"$scratch/log" 2>&1; then
        report "$name" $(($(date +%s) - begun)) 1 0
    else
        report "$name" $(($(date +%s) - begun)) 0 1
        return 1
    fi
}

# cases NAME TREE: every test case of a build tree counts by itself. A tree that has none has failed.
cases() {
    begun=$(date +%s)
    ctest --test-dir "$2" --parallel 2 --output-on-failure --no-tests=error >"$scratch/log" 2>&1
    summary=$(sed -n 's/^.*% tests passed, \([0-9]*\) tests failed out of \([0-9]*\)$/\1 \2/p' "$scratch/log")
    if [ -z "$summary" ]; then
        report "$1" $(($(date +%s) - begun)) 0 1
        return
    fi
    bad=${summary% *}
    all=${summary#* }
    # What passed is of no interest where something failed.
    grep -v ' Passed  *[0-9.]* sec$\|^ *Start ' "$scratch/log" >"$scratch/brief"
    mv "$scratch/brief" "$scratch/log"
    report "$1" $(($(date +%s) - begun)) $((all - bad)) "$bad"
}

# Our own sources, of whatever age: all but what was built.
sources() {
    find "$@" \( -name '*.cpp' -o -name '*.hpp' -o -name '*.h' -o -name '*.c' \) -type f | sort
}

formatted() {
    sources host plugins sdk ledger tests | tr '\n' '\0' | xargs -0 clang-format-14 --dry-run -Werror
}

# clang reads what g++ was told, without the options that only g++ has.
tidy() {
    mkdir -p "$scratch/tidy"
    sed -e 's/ -fno-gnu-unique//g; s/ -Wduplicated-[a-z]*//g; s/ -Wlogical-op//g; s/ -Werror\b//g' \
        "$release/compile_commands.json" >"$scratch/tidy/compile_commands.json" || return 1
    sources host plugins ledger | grep '\.cpp$' | tr '\n' '\0' |
        xargs -0 -n 1 -P 2 clang-tidy-14 -p "$scratch/tidy" --quiet >"$scratch/tidy/found" 2>&1
    answer=$?
    # How many warnings it found in other people's headers is of no interest.
    grep -v '^[0-9]* warnings* generated' "$scratch/tidy/found"
    return "$answer"
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

begun_all=$(date +%s)
if ! stage 'packages' sh config/install.sh test; then
    printf '%d passed, %d failed\n' "$passed" "$failed"
    exit 1
fi

stage 'code is laid out as .clang-format says' formatted
if stage 'release build' sh config/build.sh "$release" -DCMAKE_BUILD_TYPE=Release -DFLUTEBOOK_WERROR=ON; then
    cases 'tests, release' "$release"
    stage 'installed program' installed
    if [ -e tests/bench/run.sh ]; then
        stage 'benches, at a hundredth' env FLUTEBOOK_BENCH_BUILD="$release" FLUTEBOOK_BENCH_SHARE=0.01 \
            sh tests/bench/run.sh
    fi
fi
if [ -e "$release/compile_commands.json" ]; then
    stage 'clang-tidy' tidy
fi

# Lightly optimised: half as long to build as -O2, and without NDEBUG, so that every assertion is alive. Generated
# cases at a tenth: both sanitizers together slow a test down by about that much.
if stage 'sanitizer build' sh config/build.sh "$sanitize" -DCMAKE_BUILD_TYPE=Debug \
    '-DCMAKE_CXX_FLAGS_DEBUG=-O1 -g1 -D_GLIBCXX_ASSERTIONS' -DFLUTEBOOK_WERROR=ON -DFLUTEBOOK_SANITIZE=ON; then
    export FLUTEBOOK_PROPERTY_SHARE=0.1 RC_PARAMS='max_success=10'
    export ASAN_OPTIONS='detect_stack_use_after_return=1:strict_string_checks=1:check_initialization_order=1'
    export UBSAN_OPTIONS='print_stacktrace=1:halt_on_error=1'
    cases 'tests, under the sanitizers' "$sanitize"
fi

printf 'took %d s\n' $(($(date +%s) - begun_all))
printf '%d passed, %d failed\n' "$passed" "$failed"
[ "$failed" -eq 0 ]
