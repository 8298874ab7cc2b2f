#!/bin/sh
# Measures what the plugin road and the ledger cost and prints the ratios. Builds what it needs first, in Release.
#
#   sh tests/bench/run.sh [SHARE]     SHARE of the full size; 0.01 for a quick look
set -eu
top=$(cd "$(dirname "$0")/../.." && pwd)
build=${FLUTEBOOK_BENCH_BUILD:-$top/build-release}
share=${1:-${FLUTEBOOK_BENCH_SHARE:-1}}

cmake -S "$top" -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=Release >/dev/null
cmake --build "$build" --target engine_bench isolation_bench ledger_bench finding_bench proof_bench rounding_proof \
    style_bench list_bench process_bench serve_bench flutebook flutebook_plugins >/dev/null
"$build/bin/engine_bench" "$top/config/demo" "$build/lib/flutebook/plugins" "$share"
"$build/bin/isolation_bench" "$top/config/demo" "$build/lib/flutebook/plugins" "$build/bin/flutebook" "$share"
"$build/bin/ledger_bench" "$share"
"$build/bin/finding_bench" "$share"
"$build/bin/proof_bench" "$top/config/demo" "$share"
"$build/bin/style_bench" "$top/config/demo" "$build/lib/flutebook/plugins" "$share"
"$build/bin/list_bench" "$top/config/demo" "$build/lib/flutebook/plugins" "$share"
"$build/bin/process_bench" "$build/bin/flutebook" "$top/config/demo" "$share"
"$build/bin/serve_bench" "$build/bin/flutebook" "$top/config/demo" "$share"
"$build/bin/rounding_proof" "$(awk "BEGIN { print 1e9 * $share }")"
