#!/bin/sh
# Runs every fuzzer with a seed, and ends with 1 where any case went wrong. Builds what it needs first, in Release.
#
#   sh tests/fuzz/run.sh [SHARE] [SEED]     SHARE of the full number of cases; 0.01 for a quick look
set -eu
top=$(cd "$(dirname "$0")/../.." && pwd)
build=${FLUTEBOOK_FUZZ_BUILD:-$top/build-release}
share=${1:-${FLUTEBOOK_FUZZ_SHARE:-1}}
seed=${2:-1}

# A fuzzer and its full number of cases.
fuzzers='fuzz_plants 20000
fuzz_requests 50000
fuzz_sums 200000
fuzz_styles 20000
fuzz_documents 100000
fuzz_reports 200000
fuzz_records 20000
fuzz_http 100000'

cmake -S "$top" -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=Release >/dev/null
printf '%s\n' "$fuzzers" | sed "s/ .*//" | xargs cmake --build "$build" --target flutebook flutebook_plugins >/dev/null
printf '%s\n' "$fuzzers" | while read -r name cases; do
    "$build/bin/$name" --seed "$seed" --cases "$(awk "BEGIN { print int($cases * $share) }")"
done
