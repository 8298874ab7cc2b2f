// Before the program works with a plugin for the first time: where the file may stand, whether it is the one that was
// meant, and what becomes of one that would take the program down with it.
#include <sys/stat.h>

#include <catch2/catch.hpp>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;
namespace fs = std::filesystem;

namespace {

std::string built(const std::string& plugin) {
    return std::string(FLUTEBOOK_CHECK_PLUGINS) + "/" + plugin + ".so";
}

// A plant that lists one plugin more, and has its file.
class PlantWith {
public:
    explicit PlantWith(const std::string& plugin) : file_(fs::path(plant_.folder()) / "plugins" / (plugin + ".so")) {
        fs::create_directories(file_.parent_path());
        fs::copy_file(built(plugin), file_);
        plant_.replace("plugins.yaml", "plugins:\n", "plugins:\n  - " + plugin + ": {}\n");
    }
    [[nodiscard]] const fs::path& file() const { return file_; }
    [[nodiscard]] PlantCopy& plant() { return plant_; }
    [[nodiscard]] Ended quote() const { return ask_at(plant_.folder(), {"quote", demo_request("R-1001"), "--sheet"}); }
    // Of the file, as the program itself reckons it.
    [[nodiscard]] std::string sha256() const {
        const Ended ended = ask({"plugin", "check", file_.string(), "--json", "--orders", "1"});
        return nlohmann::json::parse(ended.output)["sha256"];
    }

private:
    PlantCopy plant_;
    fs::path file_;
};

void check_refused(const PlantWith& plant, const std::string& why) {
    const Ended ended = plant.quote();
    CHECK(ended.exit_code == 3);
    CHECK(ended.signal == 0);
    CHECK(ended.output.empty());
    CHECK_THAT(ended.errors, Contains(why));
    CHECK(lines_of(ended.errors).size() == 1);
}

}  // namespace

TEST_CASE("a plugin in the plant's own folder is used") {
    const PlantWith plant("good");
    const Ended ended = plant.quote();
    CHECK(ended.errors.empty());
    CHECK(ended.exit_code == 0);
    CHECK_THAT(ended.output, Contains("Boxes counted"));
}

TEST_CASE("a plugin that would end the program, or never come back, is refused by name and the program ends in order") {
    check_refused(PlantWith("crashes"), "crashes.so: model crashes: refused by its trial: it ");
    check_refused(PlantWith("hangs"), "hangs.so: model hangs: refused by its trial: it did not come back within");
}

TEST_CASE("whatever a plugin writes into its report, quote, check and describe end in order and name it") {
    for (const char* const plugin : {"says_it_has_passed", "reports_nonsense", "floods_the_report"}) {
        INFO(plugin);
        PlantWith plant(plugin);
        const std::string file = plant.file().string();
        check_refused(
            plant, std::string(plugin) + ".so: model " + plugin + ": refused by its trial: it wrote into the report");
        const Ended checked = ask({"plugin", "check", file, "--orders", "10"});
        CHECK(checked.exit_code == 1);
        CHECK_THAT(checked.output, Contains("wrote into the report of its trial"));
        const Ended described = ask({"plugin", "describe", file});
        CHECK(described.signal == 0);
        CHECK((described.exit_code == 0 || described.exit_code == 3));
        if (described.exit_code == 3) CHECK_THAT(described.errors, Contains(std::string(plugin) + ".so"));
    }
}

TEST_CASE("a file that is not the pinned one is refused at the pin, and the pinned one is used") {
    PlantWith plant("good");
    const std::string meant = plant.sha256();
    const std::string other(64, '0');
    plant.plant().replace("plugins.yaml", "plugins:\n", "sha256: {good: " + other + "}\nplugins:\n");
    check_refused(plant, "is another file: found " + meant + ", expected 000");
    CHECK_THAT(plant.quote().errors, Contains("plugins.yaml:") && Contains("sha256.good"));
    plant.plant().replace("plugins.yaml", other, meant);
    CHECK(plant.quote().exit_code == 0);
}

TEST_CASE("a plugin's file that anybody may write to is refused") {
    const PlantWith plant("good");
    REQUIRE(::chmod(plant.file().c_str(), 0666) == 0);
    check_refused(plant, "anybody may write to it: found mode 0666");
}

TEST_CASE("a plugin in a folder that anybody may write to is refused") {
    const PlantWith plant("good");
    REQUIRE(::chmod(plant.file().parent_path().c_str(), 0777) == 0);
    check_refused(plant, "anybody may write to its folder: found ");
}

TEST_CASE("a plugin's name that leads out of its folder is refused") {
    const PlantWith plant("good");
    fs::remove(plant.file());
    fs::create_symlink(built("good"), plant.file());
    check_refused(plant, "leads out of its folder: found " + fs::canonical(built("good")).string());
}
