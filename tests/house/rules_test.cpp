// The files of the house look as they should; every rule with a control that breaks it.
#include "tests/house/rules.hpp"

#include <catch2/catch.hpp>

#include "tests/house/made_tree.hpp"

using namespace flutebook::house;

namespace {

std::string lines(std::size_t count) {
    std::string text;
    for (std::size_t i = 0; i < count; ++i) text += "// a line\n";
    return text;
}

}  // namespace

TEST_CASE("at the top stand the rooms and nothing else") {
    CHECK(strangers_at_the_top(our_house()) == Faults{});
}

TEST_CASE("a stranger at the top is found, and so is a room that is gone") {
    const MadeTree result{{"CMakeLists.txt", ""}, {"README.md", ""}, {"DEVELOPERS.md", ""}, {"host/a", ""},
                          {"plugins/a", ""},      {"sdk/a", ""},     {"tests/a", ""},       {"config/a", ""},
                          {".ci/run", ""},        {"notes.md", ""}};
    CHECK(strangers_at_the_top(result.read()) ==
          Faults{"notes.md: does not belong at the top", "ledger: is missing at the top"});
}

TEST_CASE("no file is longer than 400 lines") {
    CHECK(overlong_files(our_house()) == Faults{});
}

TEST_CASE("a file of 401 lines is found, one of 400 is not") {
    const MadeTree result{{"host/a.cpp", lines(400)},
                          {"host/b.cpp", lines(401)},
                          {"tests/c.py", lines(401)},
                          {"tests/golden.txt", lines(900)}};
    CHECK(overlong_files(result.read()) == Faults{"host/b.cpp: has 401 lines", "tests/c.py: has 401 lines"});
}

TEST_CASE("nothing is put off, silenced or switched off") {
    CHECK(marks_left_behind(our_house()) == Faults{});
}

TEST_CASE("work put off, a silenced check and a test that may fail are found") {
    const std::string later = std::string("TO") + "DO";
    const std::string silenced = std::string("NO") + "LINT";
    const std::string lenient = std::string("[!may") + "fail]";
    const MadeTree result{{"host/a.cpp", "int a;\n// " + later + ": b\n"},
                          {"config/b.cmake", "# " + silenced + "\n"},
                          {"tests/c.cpp", "TEST_CASE(\"c\", \"" + lenient + "\") {}\n"}};
    CHECK(marks_left_behind(result.read()) ==
          Faults{"config/b.cmake:1: " + silenced, "host/a.cpp:2: " + later, "tests/c.cpp:1: " + lenient});
}

TEST_CASE("every source is built") {
    CHECK(unbuilt_sources(our_house()) == Faults{});
}

TEST_CASE("a source that no CMakeLists.txt names is found") {
    const MadeTree result{
        {"host/CMakeLists.txt", "add_executable(flutebook main.cpp cli/b.cpp)\n# cli/main.cpp\n"},
        {"host/main.cpp", ""},
        {"host/cli/b.cpp", ""},
        {"host/cli/main.cpp", ""},
        {"plugins/CMakeLists.txt", "foreach(model run scrap)\n  f(${model}/${model}.cpp)\nendforeach()\n"},
        {"plugins/run/run.cpp", ""},
        {"plugins/scrap/scrap.cpp", ""},
        {"plugins/paper/paper.cpp", ""},
        {"tests/unit/CMakeLists.txt", "f(../support/d.cpp ${PROJECT_SOURCE_DIR}/tests/support/e.c)\n"},
        {"tests/support/d.cpp", ""},
        {"tests/support/e.c", ""},
        {"tests/unit/d.cpp", ""}};
    CHECK(unbuilt_sources(result.read()) == Faults{"host/cli/main.cpp: no CMakeLists.txt names it",
                                                   "plugins/paper/paper.cpp: no CMakeLists.txt names it",
                                                   "tests/unit/d.cpp: no CMakeLists.txt names it"});
}

TEST_CASE("a source in a folder that is no room is found, and one in a room is built") {
    const MadeTree result{{"host/CMakeLists.txt", "host_room(base PUBLIC fmt::fmt)\n"},
                          {"host/base/a.cpp", ""},
                          {"host/base/deeper/b.cpp", ""},
                          {"host/attic/c.cpp", ""},
                          {"ledger/CMakeLists.txt", "file(GLOB_RECURSE sources CONFIGURE_DEPENDS *.cpp)\n"},
                          {"ledger/values/d.cpp", ""}};
    CHECK(unbuilt_sources(result.read()) == Faults{"host/attic/c.cpp: no CMakeLists.txt names it"});
}

TEST_CASE("main stays under 40 lines") {
    CHECK(overgrown_main(our_house()) == Faults{});
}

TEST_CASE("a main of 40 lines is found") {
    CHECK(overgrown_main(MadeTree{{"host/main.cpp", lines(39)}}.read()) == Faults{});
    CHECK(overgrown_main(MadeTree{{"host/main.cpp", lines(40)}}.read()) == Faults{"host/main.cpp: has 40 lines"});
}

TEST_CASE("the ledger keeps money in whole numbers") {
    CHECK(money_in_fractions(our_house()) == Faults{});
}

TEST_CASE("a fraction of money in the ledger is found") {
    const MadeTree result(
        {{"ledger/entry.hpp", "struct Entry {\n    double moisture;\n    double paid_amount = 0;\n};\n"},
         {"ledger/values/money.hpp", "double cost;\n"},
         {"host/services/quote.hpp", "double cost;\n"}});
    CHECK(money_in_fractions(result.read()) == Faults{"ledger/entry.hpp:3: double paid_amount"});
}

TEST_CASE("the page for people ends with cautions") {
    CHECK(missing_cautions(our_house()) == Faults{});
}

TEST_CASE("a page without cautions, or with none under their heading, is found") {
    CHECK(missing_cautions(MadeTree{{"README.md", "# A\n\ncautions\n"}}.read()) ==
          Faults{"README.md: no heading names the cautions"});
    CHECK(missing_cautions(MadeTree{{"README.md", "## Cautions\n\n## B\n"}}.read()) ==
          Faults{"README.md: nothing stands under the cautions"});
    CHECK(missing_cautions(MadeTree{{"README.md", "## Cautions\n\n- Beware.\n"}}.read()) == Faults{});
}

TEST_CASE("each bad plugin is tried by a test that names it") {
    CHECK(untried_bad_plugins(our_house()) == Faults{});
}

TEST_CASE("a bad plugin that no test names is found") {
    const MadeTree result{{"tests/bad_plugins/throws/throws.cpp", "// \"throws\"\n"},
                          {"tests/bad_plugins/sleeps/sleeps.cpp", ""},
                          {"tests/bad_plugins/refused_test.cpp", "TEST_CASE(\"a\") { load(\"sleeps\"); }\n"}};
    CHECK(untried_bad_plugins(result.read()) == Faults{"tests/bad_plugins/throws: no test names it"});
}

TEST_CASE("every file begins by saying what it is for") {
    CHECK(files_without_a_word(our_house()) == Faults{});
}

TEST_CASE("a file that begins without a word is found, unless its own header has the word") {
    const MadeTree result{{"host/a.hpp", "#pragma once\n"},
                          {"host/b.hpp", "// B.\n#pragma once\n"},
                          {"host/b.cpp", "#include \"host/b.hpp\"\n"},
                          {"host/c.cpp", "int c;\n"},
                          {"sdk/d.h", "/* D. */\n"},
                          {"config/e.sh", "#!/bin/sh\nset -eu\n"},
                          {"config/f.sh", "#!/bin/sh\n# F.\n"},
                          {"config/g.yaml", "plant: G\n"},
                          {"tests/h.cpp", ""}};
    const std::string silent = ": does not begin by saying what it is for";
    CHECK(files_without_a_word(result.read()) == Faults{"config/e.sh" + silent, "config/g.yaml" + silent,
                                                        "host/a.hpp" + silent, "host/c.cpp" + silent,
                                                        "tests/h.cpp" + silent});
}

TEST_CASE("no file knows the machine that it was written on") {
    CHECK(paths_of_one_machine(our_house()) == Faults{});
}

TEST_CASE("a path of one machine is found, a folder of the same name is not") {
    const std::string place = std::string("/ho") + "me/";
    const MadeTree result{{"config/a.txt", "see " + place + "someone/notes\ncp \"" + place + "x\" y\n"},
                          {"config/b.sh", "# B.\ncp $clean" + place + "x ${clean}" + place + "y\n"}};
    CHECK(paths_of_one_machine(result.read()) == Faults{"config/a.txt:1: " + place, "config/a.txt:2: " + place});
}
