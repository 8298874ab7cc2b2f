#!/bin/sh
# Says where a build tree of a name may stand for whoever asks.
#
#   sh config/tree.sh NAME
#
# Beside the sources. Where that cannot be written to, or somebody else has built there already, in the asker's own
# cache: two people, or one person and root, then never trip over each other's files.
set -eu

top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
tree=$top/$1

if [ -e "$tree" ]; then
    foreign=$(find "$tree" ! -writable -print -quit 2>/dev/null || echo "$tree")
elif [ -w "$top" ]; then
    foreign=
else
    foreign=$top
fi

if [ -n "$foreign" ]; then
    tree=${XDG_CACHE_HOME:-$HOME/.cache}/flutebook/$1
fi
printf '%s\n' "$tree"
