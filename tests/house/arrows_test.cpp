// Includes point one way, and each large library is touched in one file; every rule with a control that breaks it.
#include "tests/house/arrows.hpp"

#include <catch2/catch.hpp>

#include "tests/house/made_tree.hpp"

using namespace flutebook::house;

TEST_CASE("the tree of the house is really read") {
    CHECK(our_house().files.size() > 50);
    CHECK(our_house().find("sdk/include/flutebook/plugin.h"));
    CHECK(our_house().find("tests/house/arrows_test.cpp"));
}

TEST_CASE("a tree outside git is walked, but for what was built") {
    const MadeTree result{{"host/a.cpp", "one\ntwo\n"}, {"build/b.cpp", ""}, {"build-x/c.cpp", ""}, {"p.so", ""}};
    const Tree tree = result.read();
    REQUIRE(tree.files.size() == 1);
    CHECK(tree.files[0].path == "host/a.cpp");
    CHECK(tree.files[0].lines == std::vector<std::string>{"one", "two"});
}

TEST_CASE("every include runs along the arrows of the house") {
    CHECK(wrong_arrows(our_house()) == Faults{});
}

TEST_CASE("an include that runs back is found, in every room") {
    const MadeTree result{{"host/answers/a.hpp", "#include \"host/cli/a.hpp\"\n"},
                          {"host/base/a.hpp", "#include \"host/plant/a.hpp\"\n"},
                          {"host/cli/a.hpp", ""},
                          {"host/engine/a.hpp", "#include \"host/month/a.hpp\"\n"},
                          {"host/geometry/a.hpp", "\n#include \"host/engine/a.hpp\"\n"},
                          {"host/main.cpp", "#include \"host/engine/a.hpp\"\n"},
                          {"host/month/a.hpp", "#  include \"host/services/a.hpp\"\n"},
                          {"host/plant/a.hpp", "#include \"../geometry/a.hpp\"\n"},
                          {"host/services/a.hpp", "#include \"host/cli/a.hpp\"\n"},
                          {"ledger/a.hpp", "#include <flutebook/run.hpp>\n"},
                          {"plugins/b/b.hpp", "#include \"ledger/a.hpp\"\n"},
                          {"sdk/include/flutebook/run.hpp", "#include \"host/base/a.hpp\"\n"}};
    CHECK(wrong_arrows(result.read()) == Faults{"host/answers/a.hpp:1: host/answers may not see host/cli/a.hpp",
                                                "host/base/a.hpp:1: host/base may not see host/plant/a.hpp",
                                                "host/engine/a.hpp:1: host/engine may not see host/month/a.hpp",
                                                "host/geometry/a.hpp:2: host/geometry may not see host/engine/a.hpp",
                                                "host/main.cpp:1: host/main.cpp may not see host/engine/a.hpp",
                                                "host/month/a.hpp:1: host/month may not see host/services/a.hpp",
                                                "host/plant/a.hpp:1: host/plant may not see host/geometry/a.hpp",
                                                "host/services/a.hpp:1: host/services may not see host/cli/a.hpp",
                                                "ledger/a.hpp:1: ledger may not see sdk/include/flutebook/run.hpp",
                                                "plugins/b/b.hpp:1: plugins may not see ledger/a.hpp",
                                                "sdk/include/flutebook/run.hpp:1: sdk may not see host/base/a.hpp"});
}

TEST_CASE("an include along the arrows is no fault") {
    const MadeTree result{{"host/cli/a.hpp", "#include \"host/services/a.hpp\"\n#include <CLI/CLI.hpp>\n"},
                          {"host/services/a.hpp", "#include \"host/engine/a.hpp\"\n#include <flutebook/run.hpp>\n"},
                          {"host/engine/a.hpp", "#include \"ledger/a.hpp\"\n"},
                          {"ledger/a.hpp", "#include <cstdint>\n"},
                          {"plugins/a/a.cpp", "#include \"a.hpp\"\n#include <flutebook/plugin.hpp>\n"},
                          {"plugins/a/a.hpp", ""},
                          {"tests/a.cpp", "#include \"host/engine/a.hpp\"\n"}};
    CHECK(wrong_arrows(result.read()) == Faults{});
}

TEST_CASE("a model that looks at another model, or at a library, is found") {
    const MadeTree result{
        {"plugins/a/a.cpp", "#include \"plugins/b/b.hpp\"\n#include <fmt/core.h>\n#include <cmath>\n"},
        {"plugins/b/b.hpp", "#include <sqlite3.h>\n"}};
    CHECK(wrong_arrows(result.read()) ==
          Faults{"plugins/a/a.cpp:1: plugins may not see plugins/b/b.hpp",
                 "plugins/a/a.cpp:2: plugins may use nothing but the standard library, not fmt/core.h",
                 "plugins/b/b.hpp:1: plugins may use nothing but the standard library, not sqlite3.h"});
}

TEST_CASE("an include of a file that is not there is found") {
    const MadeTree result{{"host/engine/a.cpp", "#include \"host/engine/gone.hpp\"\n"}};
    CHECK(wrong_arrows(result.read()) ==
          Faults{"host/engine/a.cpp:1: no file of the tree is called host/engine/gone.hpp"});
}

TEST_CASE("each large library is touched in one file only") {
    CHECK(libraries_out_of_place(our_house()) == Faults{});
}

TEST_CASE("a second file that touches a library is found") {
    const MadeTree result{{"host/base/yaml/yaml.cpp", "#include <yaml-cpp/yaml.h>\n"},
                          {"host/engine/graph.hpp", "#include <udunits2.h>\n"},
                          {"host/plant/plant.cpp", "#include <yaml-cpp/node/node.h>\n"},
                          {"host/services/a.cpp", "#include <boost/dll/shared_library.hpp>\n"},
                          {"ledger/month.cpp", "#include <SQLiteCpp/Database.h>\n"}};
    CHECK(libraries_out_of_place(result.read()) ==
          Faults{"host/engine/graph.hpp:1: udunits is kept in host/fields/units.cpp",
                 "host/plant/plant.cpp:1: yaml-cpp is kept in host/base/yaml/yaml.cpp",
                 "host/services/a.cpp:1: Boost.DLL is kept in host/contract/library.cpp",
                 "ledger/month.cpp:1: SQLiteCpp is kept in ledger/store/database.cpp"});
}
