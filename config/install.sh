#!/bin/sh
# Installs what Flutebook is built with, on Debian 12, through apt and nothing else.
#
#   sh config/install.sh [build | test]
#
# `build` is what the program needs; `test` is that and what its tests need. What is installed already is left alone,
# and the package lists are fetched only when something is missing. The one rule: this file is the only list of
# packages, each with its reason.
set -eu
umask 022

build_packages='
cmake               configures the build
ninja-build         runs it
g++                 compiles it
libboost-dev        Boost.DLL loads plugins, Boost.Beast serves pages; Boost.Math checks take-ups in the tests
libyaml-cpp-dev     reads the files of a plant
libmuparser-dev     works out the sums of a box style
libfmt-dev          writes numbers and tables
libcmark-dev        reads the guides that the server shows
libudunits2-dev     converts units
libutf8proc-dev     tells well-formed UTF-8 from other bytes, and how wide a character is shown
libseccomp-dev      limits the system calls of a plugin that is not trusted yet
libsqlite3-dev      keeps the ledger
libsqlitecpp-dev    speaks to it
zlib1g-dev          compresses what saved quotes are kept with
libssl-dev          hashes every entry and every plugin file by SHA-256
libsodium-dev       keeps passwords of the pages by Argon2id
libcli11-dev        reads the command line
nlohmann-json3-dev  writes JSON
libxlsxwriter-dev   writes spreadsheets
libzip-dev          unpacks a list that is a spreadsheet
libexpat1-dev       reads its parts
'
test_packages='
catch2              runs the tests
sqlite3             asks the ledger as an auditor would, and tries to change it
python3             reckons prices outside the program
python3-yaml        reads its files of a plant
librapidcheck-dev   makes plants and orders for the tests of what always holds
clang-format-14     checks the layout of the code
clang-tidy-14       checks its habits, and that a second compiler takes it
clang-14            builds plugins as a second compiler does
lld                 links the programs of the tests sooner
abigail-tools       compares the plugin contract with what was released
nginx-light         stands before the server of pages, with TLS, as its sample file says
systemd             proves the sample unit of the server of pages
openssl             makes a certificate for it
curl                asks it
chromium            opens the pages as people do
nodejs              drives it
npm                 fetches the two packages that do it, which Debian does not have
fonts-liberation    the letters that the pages ask for
fonts-dejavu-core   the widest that a bare system has
pngquant            makes the pictures of the README small
graphviz            draws who feeds whom
libreoffice-calc-nogui  recalculates the workbook of a quote
'

# The packages of a list: its first column.
names_of() {
    printf '%s\n' "$1" | while read -r name _; do
        if [ -n "$name" ]; then printf '%s ' "$name"; fi
    done
}

# A command that another package brings counts as well: nodejs of other packagers has npm in it.
is_installed() {
    [ "$(dpkg-query -W -f '${db:Status-Status}' "$1" 2>/dev/null)" = installed ] || command -v "$1" >/dev/null 2>&1
}

case ${1:-build} in
build) wanted=$(names_of "$build_packages") ;;
test) wanted=$(names_of "$build_packages$test_packages") ;;
*)
    echo "install.sh: no such group of packages: $1; choose build or test" >&2
    exit 2
    ;;
esac

missing=
for name in $wanted; do
    is_installed "$name" || missing="$missing $name"
done
[ -n "$missing" ] || exit 0

if [ "$(id -u)" -eq 0 ]; then
    as_root=
elif command -v sudo >/dev/null 2>&1; then
    as_root=sudo
else
    echo "install.sh: cannot install packages: neither root nor sudo; have somebody install$missing" >&2
    exit 1
fi

apt() {
    # env, because sudo drops what stands before it; the lock is waited for, because a fresh machine updates itself.
    $as_root env DEBIAN_FRONTEND=noninteractive apt-get -q -y -o DPkg::Lock::Timeout=300 "$@"
}

echo "installing$missing"
apt update
# shellcheck disable=SC2086  # a list of words
apt install --no-install-recommends $missing
