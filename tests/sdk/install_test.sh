#!/bin/sh
# The SDK apart: installed by itself into an empty prefix, it builds plugins with two compilers, with and without
# exceptions and run-time types, and in plain C, and checks them; what they charge is the same to the last bit. All of
# Flutebook, installed elsewhere, brings the pages of its models.
#
#   sh install_test.sh BUILD SOURCES GXX CLANGXX
set -u

build=$1
sources=$2
gxx=$3
clangxx=$4
scratch=$(mktemp -d) || exit 1
trap 'rm -rf "$scratch"' EXIT
failed=0
# What the program remembers of the files it tried is nobody else's.
export XDG_CACHE_HOME="$scratch/cache"

fail() {
    echo "FAILED: $1"
    failed=1
}

# said COMMAND...: runs it; what it says is shown when it fails, and then nothing goes on.
said() {
    "$@" >"$scratch/said" 2>&1 || {
        cat "$scratch/said"
        echo "FAILED: $*"
        exit 1
    }
}

said cmake --install "$build" --prefix "$scratch/sdk" --component sdk
said cmake --install "$build" --prefix "$scratch/all"

# --- nothing else of ours
(cd "$scratch/sdk" && find . -type f ! -path './share/doc/*' ! -path './share/flutebook/template/*' | sort) >"$scratch/found"
cat >"$scratch/expected" <<'FILES'
./bin/flutebook
./include/flutebook/model.hpp
./include/flutebook/plugin.h
./include/flutebook/plugin.hpp
./include/flutebook/run.hpp
./share/cmake/flutebook/flutebookConfig.cmake
./share/cmake/flutebook/flutebookConfigVersion.cmake
./share/cmake/flutebook/flutebookTargets.cmake
./share/cmake/flutebook/flutebook_add_plugin.cmake
./share/cmake/flutebook/flutebook_check_plugin.cmake
./share/cmake/flutebook/flutebook_compare_golden.cmake
./share/cmake/flutebook/flutebook_golden_order.cmake
./share/cmake/flutebook/flutebook_plugin.map
FILES
diff "$scratch/expected" "$scratch/found" || fail 'the SDK alone is not what it should be'
grep -rlF -e "$sources" -e "$build" "$scratch/sdk" && fail 'an installed file knows where it was built'

# --- builds
# project NAME LANGUAGES SOURCE: a folder with a plugin of its own.
project() {
    mkdir -p "$scratch/$1"
    cp "$sources/sdk/examples/$3" "$scratch/$1/"
    cat >"$scratch/$1/CMakeLists.txt" <<CMAKE
cmake_minimum_required(VERSION 3.25)
project($1 LANGUAGES $2)
find_package(flutebook 1 REQUIRED)
flutebook_add_plugin($1 $(basename "$3"))
CMAKE
}

# built NAME WAY OPTION...: the plugin, built in a way of its own.
built() {
    name=$1
    way=$2
    shift 2
    place=$scratch/built/$way
    said cmake -G Ninja -S "$scratch/$name" -B "$place" -DCMAKE_PREFIX_PATH="$scratch/sdk" "$@"
    said cmake --build "$place"
    # One symbol of ours, and none that binds all libraries of a process together.
    symbols=$(nm -D --defined-only "$place/$name.so" | cut -d' ' -f2-)
    [ "$symbols" = 'D flutebook_plugin' ] || fail "$way shows: $symbols"
    # Nothing of the host, nothing that an author would have to install.
    ninja -C "$place" -t deps >"$scratch/deps"
    grep -q 'flutebook/plugin.h$' "$scratch/deps" || fail "$way: what it was built from is not known"
    grep -E "boost|yaml|fmt/|$sources" "$scratch/deps" && fail "$way was built from what is not the SDK's"
    readelf -d "$place/$name.so" | grep NEEDED | grep -vE 'lib(c|m|stdc\+\+|gcc_s)\.so' && fail "$way needs a library"
}

strict='-Wall -Wextra -Wpedantic -Werror'
project varnish CXX varnish/varnish.cpp
built varnish gxx -DCMAKE_CXX_COMPILER="$gxx" -DCMAKE_CXX_FLAGS="$strict"
built varnish clangxx -DCMAKE_CXX_COMPILER="$clangxx" -DCMAKE_CXX_FLAGS="$strict"
built varnish gxx-plain -DCMAKE_CXX_COMPILER="$gxx" -DCMAKE_CXX_FLAGS="$strict -fno-rtti -fno-exceptions"
built varnish clangxx-plain -DCMAKE_CXX_COMPILER="$clangxx" -DCMAKE_CXX_FLAGS="$strict -fno-rtti -fno-exceptions"
project inspection C inspection/inspection.c
built inspection c99 -DCMAKE_C_FLAGS="-std=c99 $strict"

sed 's/flutebook 1 /flutebook 2 /' "$scratch/varnish/CMakeLists.txt" >"$scratch/later.txt"
mkdir "$scratch/later" && cp "$scratch/later.txt" "$scratch/later/CMakeLists.txt"
cmake -G Ninja -S "$scratch/later" -B "$scratch/built/later" -DCMAKE_PREFIX_PATH="$scratch/sdk" >"$scratch/said" 2>&1 &&
    fail 'another major version was found'

# --- in a quote
cp -r "$sources/config/demo" "$scratch/plant"
mkdir -p "$scratch/plant/plugins"
cp "$scratch/built/c99/inspection.so" "$scratch/plant/plugins/"
cat >>"$scratch/plant/plugins.yaml" <<'YAML'
  - varnish: {laydown: {FG1: 6, DC1: 4}, price: 3.40}
  - inspection: {hourly: 31}
YAML
order=$scratch/plant/requests/R-1001-everyday-box.yaml
cat >>"$order" <<'YAML'
  varnish: {coats: 2}
  inspection: {every: 100}
YAML
for way in gxx clangxx gxx-plain clangxx-plain; do
    cp "$scratch/built/$way/varnish.so" "$scratch/plant/plugins/"
    "$scratch/all/bin/flutebook" --plant "$scratch/plant" quote "$order" --json >"$scratch/$way.json" ||
        fail "no quote with the plugin built as $way"
    cmp "$scratch/gxx.json" "$scratch/$way.json" || fail "$way does not give the bits of gxx"
done
grep -q '"line": "varnish"' "$scratch/gxx.json" || fail 'no varnish in the quote'
grep -q '"line": "inspection"' "$scratch/gxx.json" || fail 'no inspection in the quote'

# --- the check, by the SDK's own program, of every one of them and of the models
for file in "$scratch/built/"*/*.so "$scratch/all/lib/flutebook/plugins/"*.so; do
    "$scratch/sdk/bin/flutebook" plugin check "$file" --orders 100 >"$scratch/said" || {
        cat "$scratch/said"
        fail "does not keep every rule: $file"
    }
done
(cd "$scratch" && said "$scratch/sdk/bin/flutebook" plugin new wax) || fail 'the SDK alone starts no plugin'
said cmake -G Ninja -S "$scratch/wax" -B "$scratch/built/wax" -DCMAKE_PREFIX_PATH="$scratch/sdk"
said cmake --build "$scratch/built/wax"
said ctest --test-dir "$scratch/built/wax"
grep -q '100% tests passed, 0 tests failed out of 1' "$scratch/said" || fail 'the SDK alone does not check a new plugin'

# --- the pages of the models
for file in "$scratch/all/lib/flutebook/plugins/"*.so; do
    page=$scratch/all/share/doc/flutebook/plugins/$(basename "$file" .so).md
    "$scratch/all/bin/flutebook" plugin describe --markdown "$file" | cmp - "$page" || fail "no page, or another: $page"
done
[ -e "$scratch/all/share/doc/flutebook/plugins/run.md" ] || fail 'no page about run'

[ $failed -eq 0 ] && echo 'built five ways, quoted to the same bits'
exit $failed
