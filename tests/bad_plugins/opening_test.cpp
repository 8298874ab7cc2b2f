// Files that the host cannot take for a plugin: it says which and why, closes nothing, and goes on.
#include <cfloat>
#include <filesystem>

#include "tests/bad_plugins/says.hpp"
#include "tests/bad_plugins/trial.hpp"

using flutebook::bad::says;
using flutebook::bad::Says;
using flutebook::bad::Trial;

TEST_CASE("a file that is no library is refused") {
    const Trial trial("not_a_library", {"not_a_library"});
    CHECK_THAT(trial.refusal(),
               says("not_a_library", "not_a_library", {"cannot be loaded as a plugin", "invalid ELF header"}));
    CHECK(trial.host_lives_on());
}

TEST_CASE("a library that exports no model is refused") {
    const Trial trial("no_symbol", {"no_symbol"});
    CHECK_THAT(trial.refusal(), says("no_symbol", "no_symbol", {"exports no symbol flutebook_plugin"}));
    CHECK(trial.host_lives_on());
}

TEST_CASE("a library that calls a missing function is refused when it is loaded, not in the middle of a quote") {
    const Trial trial("undefined_symbol", {"undefined_symbol"});
    CHECK_THAT(trial.refusal(),
               says("undefined_symbol", "undefined_symbol", {"cannot be loaded", "undefined symbol: left_at_home"}));
    CHECK(trial.host_lives_on());
}

TEST_CASE("a model without a file is refused, and the message says where the file was looked for") {
    const Trial trial("not_there", {"not_there"});
    CHECK_THAT(trial.refusal(), Says({"plugins.yaml:2:5: model not_there: no such plugin: found neither ",
                                      " nor " FLUTEBOOK_PLUGIN_DIR "/not_there.so"}));
    CHECK(trial.host_lives_on());
}

TEST_CASE("a folder that is called like a plugin is refused") {
    const std::filesystem::path folder = FLUTEBOOK_BAD_PLUGINS "/folder/plugins/folder.so";
    std::filesystem::create_directories(folder);
    const Trial trial("folder", {"folder"});
    CHECK_THAT(trial.refusal(), says("folder", "folder", {"no such plugin file"}));
    CHECK(trial.host_lives_on());
}

TEST_CASE("a library whose copy was broken off is refused, wherever it was") {
    namespace fs = std::filesystem;
    const fs::path whole = FLUTEBOOK_PLUGIN_DIR "/run.so";
    const fs::path copy = FLUTEBOOK_BAD_PLUGINS "/cut_short/plugins/cut_short.so";
    fs::create_directories(copy.parent_path());
    const Trial trial("cut_short", {"cut_short"});
    // Half a header, a header alone, then pages of code and data.
    for (const std::uintmax_t length :
         {std::uintmax_t{0}, std::uintmax_t{32}, std::uintmax_t{64}, std::uintmax_t{4096}, std::uintmax_t{8192}}) {
        fs::copy_file(whole, copy, fs::copy_options::overwrite_existing);
        fs::resize_file(copy, length);
        CHECK_THAT(trial.refusal(),
                   says("cut_short", "cut_short", {length < 4096 ? "cannot be loaded" : "the file is cut short"}));
    }
    CHECK(trial.host_lives_on());
}

TEST_CASE("a library that flushes small numbers when it is loaded is refused, and the host keeps its small numbers") {
    const Trial trial("flushes_when_loaded", {"flushes_when_loaded"});
    CHECK_THAT(trial.refusal(), says("flushes_when_loaded", "flushes_when_loaded",
                                     {"loading it changed how the whole program computes", "very small numbers"}));
    const volatile double least = DBL_MIN;
    CHECK(least / 2 > 0);
    CHECK(trial.host_lives_on());
}

TEST_CASE("the complaints about all files come at once") {
    Trial trial("no_symbol", {"not_there", "no_symbol"});
    const std::string refusal = trial.refusal();
    CHECK(refusal.find("model not_there: no such plugin: ") < refusal.find('\n'));
    CHECK(refusal.find("model no_symbol: exports no symbol") > refusal.find('\n'));
    CHECK(trial.host_lives_on());
}

TEST_CASE("a plugin of the plant's own goes before the installed one of the same name") {
    const Trial trial("leaves_nan");
    CHECK_THAT(trial.fault(), says("leaves_nan", "run", {}));
}
