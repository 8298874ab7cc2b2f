#!/bin/sh
# What takes longer than a person waits: benches, fuzzers, clang-tidy, and every test again under the sanitizers.
#
#   sh tests/deep.sh
#
# Prints what tests/run.sh prints, and ends as it does. Build trees: build-release/ and build-sanitize/.
cd "$(dirname -- "$0")/.." || exit 1
. tests/stages.sh

# clang reads what g++ was told, without the options that only g++ has, and without its precompiled headers.
tidy() {
    mkdir -p "$scratch/tidy"
    sed -e 's/ -fno-gnu-unique//g; s/ -Wduplicated-[a-z]*//g; s/ -Wlogical-op//g; s/ -Werror\b//g' \
        -e 's/ -include [^ ]*cmake_pch\.hxx//g; s/ -Winvalid-pch//g' \
        "$release/compile_commands.json" >"$scratch/tidy/compile_commands.json" || return 1
    # The sources as they are compiled: several of a room together. What CMake made from a template is left out.
    sed -n 's/^ *"file": "\(.*\)",*$/\1/p' "$scratch/tidy/compile_commands.json" | sort -u |
        grep '^[^ ]*/\(host\|plugins\|ledger\)/[^ ]*\.\(cpp\|cxx\)$' | grep -v '/tests/\|/cmake_pch\.\|/ledger/schema\.cpp\|/host/library_files\.cpp\|/host/installed_words\.cpp\|/host/installed_assets\.cpp\|/host/installed_guides\.cpp' >"$scratch/tidy/sources"
    [ -s "$scratch/tidy/sources" ] || return 1
    tr '\n' '\0' <"$scratch/tidy/sources" |
        xargs -0 -n 1 -P 2 clang-tidy-14 -p "$scratch/tidy" --quiet >"$scratch/tidy/found" 2>&1
    answer=$?
    # How many warnings it found in other people's headers is of no interest.
    grep -v '^[0-9]* warnings* generated' "$scratch/tidy/found"
    return "$answer"
}

# Lightly optimised, by -Og: half as long to build as -O1, and tests run an eighth longer. Without NDEBUG, so that every
# assertion is alive.
sanitizer_build() {
    sh config/build.sh "$sanitize" -DCMAKE_BUILD_TYPE=Debug \
        '-DCMAKE_CXX_FLAGS_DEBUG=-Og -g1 -D_GLIBCXX_ASSERTIONS' -DFLUTEBOOK_WERROR=ON -DFLUTEBOOK_SANITIZE=ON
}

sanitizers() {
    export ASAN_OPTIONS='detect_stack_use_after_return=1:strict_string_checks=1:check_initialization_order=1'
    export UBSAN_OPTIONS='print_stacktrace=1:halt_on_error=1'
}

# What a plant writes itself goes through a parser of others and much geometry: watched, at a hundredth. What browsers
# send comes from anybody.
sanitized_fuzzers() {
    sanitizers
    "$sanitize/bin/fuzz_sums" --cases 2000 && "$sanitize/bin/fuzz_styles" --cases 200 &&
        "$sanitize/bin/fuzz_http" --cases 10000
}

# Generated cases at a tenth: both sanitizers together slow a test down by about that much.
sanitized_cases() {
    export FLUTEBOOK_PROPERTY_SHARE=0.1 RC_PARAMS='max_success=10'
    sanitizers
    cases 'tests, under the sanitizers' "$sanitize"
}

if stage 'packages' sh config/install.sh test; then
    if stage 'release build' release_build; then
        stage 'benches, at a hundredth' env FLUTEBOOK_BENCH_BUILD="$release" FLUTEBOOK_BENCH_SHARE=0.01 \
            sh tests/bench/run.sh
        stage 'fuzzers, at a hundredth' env FLUTEBOOK_FUZZ_BUILD="$release" FLUTEBOOK_FUZZ_SHARE=0.01 \
            sh tests/fuzz/run.sh
        stage 'clang-tidy' tidy
    fi
    if stage 'sanitizer build' sanitizer_build; then
        stage 'fuzzers of styles and pages, under the sanitizers' sanitized_fuzzers
        sanitized_cases
    fi
fi
finish
