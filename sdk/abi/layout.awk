# Reads flutebook/plugin.h and writes a C program that prints where everything in it lies: a line for each field,
# `struct.field offset size type`, and for each constant, `NAME value`. Made from the header itself, so that no field
# can be forgotten; a declaration that is not understood here ends with 1.
#
#   awk -f layout.awk plugin.h > layout.c
#
# FLUTEBOOK_MINOR is left out: it is there to change.

function unfit(what) {
    print "layout.awk: " what > "/dev/stderr"
    failed = 1
    exit 1
}

function squeezed(text) {
    gsub(/[ \t]+/, " ", text)
    gsub(/ *\* */, "*", text)
    gsub(/^ | $/, "", text)
    return text
}

function field(name, type) {
    fields = fields sprintf("    field(\"%s.%s\", offsetof(%s, %s), sizeof(((%s*)0)->%s), \"%s\");\n",
                            "@", name, "@", name, "@", name, squeezed(type))
}

# "const char *name, *unit", "double low, high", "uint32_t (*evaluate)(const flutebook_block* block)"
function declaration(text,    parts, count, i, base, stars, name) {
    if (text ~ /[\[:{}]/) unfit("a declaration that is not known: " text)
    if (match(text, /\(\*[A-Za-z_0-9]+\)\(/)) {
        name = substr(text, RSTART + 2, RLENGTH - 4)
        base = substr(text, 1, RSTART) "*" squeezed(substr(text, RSTART + RLENGTH - 2))
        gsub(/\*[a-z_0-9]+/, "*", base)  # what a parameter is called is nobody's contract
        field(name, base)
        return
    }
    if (text ~ /[()]/) unfit("a declaration that is not known: " text)
    count = split(text, parts, ",")
    for (i = 1; i <= count; ++i) {
        parts[i] = squeezed(parts[i])
        if (!match(parts[i], /[A-Za-z_][A-Za-z_0-9]*$/)) unfit("a field without a name: " text)
        name = substr(parts[i], RSTART)
        stars = substr(parts[i], 1, RSTART - 1)
        if (i == 1) {
            base = stars
            if (count > 1) sub(/[* ]+$/, "", base)
            stars = substr(stars, length(base) + 1)
        }
        if (stars !~ /^[* ]*$/ || base == "") unfit("a declaration that is not known: " text)
        field(name, base stars)
    }
}

{ text = text $0 "\n" }

END {
    if (failed) exit 1
    # Comments away, constants of the preprocessor taken, its lines away as well.
    while (match(text, /\/\*([^*]|\*+[^*\/])*\*+\//)) text = substr(text, 1, RSTART - 1) " " substr(text, RSTART + RLENGTH)
    count = split(text, lines, "\n")
    text = ""
    for (i = 1; i <= count; ++i) {
        if (lines[i] ~ /^#define FLUTEBOOK_[A-Z_]+ /) {
            split(lines[i], words, " ")
            if (words[2] != "FLUTEBOOK_MINOR") constants = constants "    constant(\"" words[2] "\", " words[2] ");\n"
        } else if (lines[i] !~ /^#/) text = text " " lines[i]
    }
    # One struct or enum after the other.
    structs = 0
    rest = text
    while (match(rest, /(struct [a-z_0-9]+|enum) *\{[^}]*\}[^;]*;/)) {
        whole = substr(rest, RSTART, RLENGTH)
        rest = substr(rest, RSTART + RLENGTH)
        body = substr(whole, index(whole, "{") + 1)
        body = substr(body, 1, index(body, "}") - 1)
        if (whole ~ /^enum/) {
            count = split(body, parts, ",")
            for (i = 1; i <= count; ++i) {
                sub(/=.*/, "", parts[i])
                name = squeezed(parts[i])
                if (name != "") constants = constants "    constant(\"" name "\", " name ");\n"
            }
            continue
        }
        split(whole, words, " ")
        fields = ""
        count = split(body, parts, ";")
        for (i = 1; i <= count; ++i) if (squeezed(parts[i]) != "") declaration(squeezed(parts[i]))
        gsub(/@/, words[2], fields)
        all = all fields
        ++structs
    }
    if (structs == 0) unfit("no struct was found")
    print "#include <flutebook/plugin.h>"
    print "#include <stdio.h>"
    print "static void field(const char *name, size_t offset, size_t size, const char *type) {"
    print "    printf(\"%s %u %u %s\\n\", name, (unsigned)offset, (unsigned)size, type);"
    print "}"
    print "static void constant(const char *name, unsigned value) { printf(\"%s %u\\n\", name, value); }"
    print "int main(void) {"
    printf "%s%s", all, constants
    print "    return 0;"
    print "}"
}
