#!/bin/sh
# Performs a guide in a clean folder, as its reader would.
#
#   sh guide_test.sh GUIDE.md BUILD SOURCES
set -u
clean=$(mktemp -d) || exit 1
trap 'rm -rf "$clean"' EXIT
sh "$3/tests/support/perform_page.sh" "$1" "$2" "$3" "$clean"
