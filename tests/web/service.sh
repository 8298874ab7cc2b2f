#!/bin/sh
# The sample unit of systemd: it is well formed, leaves the server little to harm, and starts it with words that it takes.
# Exits with 77 where this machine has no systemd-analyze.
#
#   service.sh PROGRAM SOURCES
set -eu
program=$1 unit=$2/config/serve/flutebook.service
if ! command -v systemd-analyze >/dev/null; then
    echo 'service: skipped: this machine has no systemd-analyze'
    exit 77
fi
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
sed "s#/usr/local/bin/flutebook#$program#" "$unit" >"$place/flutebook.service"
told=$(systemd-analyze verify "$place/flutebook.service" 2>&1) || { echo "$told"; exit 1; }
if printf '%s\n' "$told" | grep -F "$place"; then exit 1; fi
# In tenths: 10 is open to all, and a service that is left as it is has 96.
systemd-analyze security --offline=true --threshold=25 --no-pager "$place/flutebook.service" >"$place/told" ||
    { cat "$place/told"; exit 1; }
tail -n 1 "$place/told"

cp -r "$2/config/demo" "$place/plant"
words=$(sed -n "s#^ExecStart=/usr/local/bin/flutebook ##p" "$unit" | sed "s#/srv/plant#$place/plant#")
# shellcheck disable=SC2086  # words are words
"$program" $words --try
