#!/bin/sh
# Performs a page of the documentation in a clean folder, as a reader would, from its first command to its last.
#
#   sh perform_page.sh PAGE.md BUILD SOURCES FOLDER
#
# Blocks of the page, in their order: `sh` is typed; `cpp FILE`, `yaml FILE` and `csv FILE` are put into FILE; each line
# of a `text` must stand in what the last typed block said. The page is read in the top folder of the sources, so BUILD
# stands there as `build`, and beside it what the page takes from SOURCES. FOLDER is empty; afterwards FOLDER/author is
# the reader's home, and FOLDER/last.said is what the last typed block said. Ends with 1 where the page does not lead
# where it says.
set -u

page=$1
build=$2
sources=$3
clean=$4
mkdir "$clean/top" "$clean/author" "$clean/blocks" || exit 1
ln -s "$build" "$clean/top/build"
cp -r "$sources/config" "$clean/top/config"

# The page as one script, so that what it exports and where it goes holds to its end.
awk -v blocks="$clean/blocks" '
    /^```./ && kind == "" {
        kind = substr($1, 4); file = $2; ++count
        block = sprintf("%s/%02d", blocks, count)
        printf "" > block
        if (kind == "sh") print "{"
        next
    }
    /^```$/ && kind != "" {
        close(block)
        if (kind == "sh") { said = block ".said"; print "} >" said " 2>&1" }
        else if (kind == "text") {
            if (said == "") print "exit 3"
            print "while read -r line; do grep -qF -- \"$line\" " said " || lacking \"$line\" " said "; done <" block
        } else if (file != "") print "cp " block " " file
        kind = ""
        next
    }
    kind != "" { print > block }
    kind == "sh" { print }
' "$page" >"$clean/page.sh"
if [ "$(grep -c '^{$' "$clean/page.sh")" -lt 3 ]; then
    echo 'FAILED: the page has lost its commands'
    exit 1
fi

{
    echo 'set -eu'
    # shellcheck disable=SC2016  # for the other script
    echo 'lacking() { echo "the page promises what was not said: $1"; cat "$2"; exit 1; }'
    cat "$clean/page.sh"
} >"$clean/all.sh"

# What the last of the typed blocks said; blocks are numbered with two digits.
last_said() {
    for said in "$clean/blocks/"*.said; do last=$said; done
    cat "$last"
}

if ! (cd "$clean/top" && env -i HOME="$clean/author" PATH=/usr/local/bin:/usr/bin:/bin LC_ALL=C sh "$clean/all.sh"); then
    echo "FAILED: $page does not lead where it says; what was said last:"
    last_said
    exit 1
fi
last_said >"$clean/last.said"
