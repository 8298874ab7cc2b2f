# What tests/run.sh and tests/deep.sh share: stages, each with its time and its outcome, and a last line that counts.
# Read with `.`; the reader stands at the top of the project.
set -u
umask 022
top=$(pwd)
release=$(sh config/tree.sh build-release) || exit 1
sanitize=$(sh config/tree.sh build-sanitize) || exit 1

scratch=$(mktemp -d) || exit 1
trap 'rm -rf "$scratch"' EXIT
trap 'exit 130' INT TERM

passed=0
failed=0
skipped=0
begun_all=$(date +%s)

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

# stage NAME COMMAND...: passes when the command does. Returns 1 when it fails, for stages that build on it.
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

# cases NAME TREE: every test case of a build tree counts by itself; each one that was skipped is named. A tree without
# test cases has failed.
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
    left_out=$(sed -n 's/^.*Test *#[0-9]*: \(.*[^.]\) *\.*\*\*\*Skipped.*$/\1/p' "$scratch/log")
    unrun=0
    if [ -n "$left_out" ]; then unrun=$(printf '%s\n' "$left_out" | wc -l); fi
    skipped=$((skipped + unrun))
    # What passed is of no interest where something failed.
    grep -v ' Passed  *[0-9.]* sec$\|^ *Start ' "$scratch/log" >"$scratch/brief"
    mv "$scratch/brief" "$scratch/log"
    report "$1" $(($(date +%s) - begun)) $((all - bad - unrun)) "$bad"
    if [ "$unrun" -gt 0 ]; then printf '%s\n' "$left_out" | sed 's/^/    SKIPPED /'; fi
}

# Our own sources, of whatever age: all but what was built.
sources() {
    find "$@" \( -name '*.cpp' -o -name '*.hpp' -o -name '*.h' -o -name '*.c' \) -type f | sort
}

release_build() {
    sh config/build.sh "$release" -DCMAKE_BUILD_TYPE=Release -DFLUTEBOOK_WERROR=ON
}

# The last lines. The exit code of whoever calls it last: 0 only when nothing failed.
finish() {
    printf 'took %d s\n' $(($(date +%s) - begun_all))
    if [ "$skipped" -gt 0 ]; then printf '%d skipped\n' "$skipped"; fi
    printf '%d passed, %d failed\n' "$passed" "$failed"
    [ "$failed" -eq 0 ]
}
