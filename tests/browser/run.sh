#!/bin/sh
# What people do with the pages, done in a browser: FLUTEBOOK_PROGRAM is the program that serves them. Exits with 77 where
# this machine has no browser, no node, or no way to the two packages that the tests need.
#
#   sh tests/browser/run.sh [FILE...]     all where none is named
umask 022
cd "$(dirname "$0")" || exit 1
for tool in node npm "${CHROMIUM:-chromium}"; do
    if ! command -v "$tool" >/dev/null; then
        echo "browser tests: skipped: this machine has no $tool"
        exit 77
    fi
done
# Once, whoever comes first: others that run at the same time wait for it.
exec 9<run.sh
flock 9
if [ ! -d node_modules/playwright-core ] || [ ! -d node_modules/axe-core ]; then
    if ! npm ci --ignore-scripts --no-audit --no-fund; then
        echo "browser tests: skipped: the packages of package-lock.json cannot be had here"
        exit 77
    fi
fi
exec 9<&-
[ $# -gt 0 ] || set -- .
exec node --test --test-timeout=300000 "$@"
