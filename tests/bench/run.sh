#!/bin/sh
# Measures what the plugin road, the ledger and the pages cost and prints the ratios. Builds what it needs first, in Release.
#
#   sh tests/bench/run.sh [SHARE]     SHARE of the full size; 0.01 for a quick look
set -eu
# held PROGRAM...: shows what it prints, and fails where a figure is beyond the limit in its line: "0.71   at least 0.5",
# "96 MB   under 150".
held() {
    said=$("$@") || { printf '%s\n' "$said"; return 1; }
    printf '%s\n' "$said"
    printf '%s\n' "$said" | awk '
        function figure(at) { return $at ~ /^[0-9.]+$/ ? $at : $(at - 1) }
        { for (i = 2; i < NF; ++i) {
              if ($i == "at" && $(i + 1) == "least" && $(i - 1) ~ /[0-9]/ && figure(i - 1) + 0 < $(i + 2) + 0) beyond = 1
              if ($i == "at" && $(i + 1) == "most" && $(i - 1) ~ /[0-9]/ && figure(i - 1) + 0 > $(i + 2) + 0) beyond = 1
              if ($i == "under" && figure(i - 1) + 0 >= $(i + 1) + 0) beyond = 1
          }
          if (beyond) { print "beyond its limit: " $0; exit 1 } }'
}
top=$(cd "$(dirname "$0")/../.." && pwd)
build=${FLUTEBOOK_BENCH_BUILD:-$top/build-release}
share=${1:-${FLUTEBOOK_BENCH_SHARE:-1}}

cmake -S "$top" -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=Release >/dev/null
cmake --build "$build" --target engine_bench isolation_bench ledger_bench finding_bench proof_bench rounding_proof \
    style_bench list_bench process_bench serve_bench month_bench flutebook flutebook_plugins >/dev/null
"$build/bin/engine_bench" "$top/config/demo" "$build/lib/flutebook/plugins" "$share"
"$build/bin/isolation_bench" "$top/config/demo" "$build/lib/flutebook/plugins" "$build/bin/flutebook" "$share"
"$build/bin/ledger_bench" "$share"
"$build/bin/finding_bench" "$share"
"$build/bin/proof_bench" "$top/config/demo" "$share"
"$build/bin/style_bench" "$top/config/demo" "$build/lib/flutebook/plugins" "$share"
"$build/bin/list_bench" "$top/config/demo" "$build/lib/flutebook/plugins" "$share"
"$build/bin/process_bench" "$build/bin/flutebook" "$top/config/demo" "$share"
held "$build/bin/serve_bench" "$build/bin/flutebook" "$top/config/demo" "$share"
held "$build/bin/month_bench" "$build/bin/flutebook" "$top/config/demo" "$share"
# Whoever types waits for a browser too: held at full size alone, and left out where there is none.
case $share in 1 | 1.0) export FLUTEBOOK_BENCH=1 ;; esac
FLUTEBOOK_PROGRAM="$build/bin/flutebook" sh "$top/tests/browser/run.sh" typing.test.mjs || [ $? = 77 ]
"$build/bin/rounding_proof" "$(awk "BEGIN { print 1e9 * $share }")"
