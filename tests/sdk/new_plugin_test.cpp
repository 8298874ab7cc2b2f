// `plugin new`: a folder that is whole, in the author's own name, or no folder at all. That it builds and passes its
// own test is shown by the SDK's page.
#include <unistd.h>

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "tests/support/child.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;

namespace {

namespace fs = std::filesystem;

// A folder to work in, gone when it goes out of scope.
class Workroom {
public:
    Workroom() : folder_((fs::temp_directory_path() / "flutebook-new-XXXXXX").string()) {
        REQUIRE(::mkdtemp(folder_.data()) != nullptr);
    }
    ~Workroom() {
        std::error_code ignored;
        fs::remove_all(folder_, ignored);
    }
    Workroom(const Workroom&) = delete;
    Workroom& operator=(const Workroom&) = delete;

    [[nodiscard]] fs::path path() const { return folder_; }
    [[nodiscard]] Ended start(const std::vector<std::string>& words,
                              const std::string& program = FLUTEBOOK_PROGRAM) const {
        Child child{{program, "plugin", "new"}, folder_};
        child.words.insert(child.words.end(), words.begin(), words.end());
        return run(child);
    }
    [[nodiscard]] bool is_empty() const { return fs::is_empty(folder_); }

private:
    std::string folder_;
};

std::string text_of(const fs::path& file) {
    std::ostringstream text;
    text << std::ifstream(file).rdbuf();
    return text.str();
}

}  // namespace

TEST_CASE("a new plugin bears its author's name in every file, and the template's in none") {
    const Workroom room;
    const Ended ended = room.start({"small-orders_2"});
    CHECK(ended.errors == "");
    CHECK(ended.exit_code == 0);
    CHECK_THAT(ended.output, Contains("cmake -S small-orders_2 -B small-orders_2/build"));
    std::size_t files = 0;
    for (const auto& entry : fs::recursive_directory_iterator(room.path())) {
        CHECK(entry.path().string().find("new_model") == std::string::npos);
        if (!entry.is_regular_file()) continue;
        ++files;
        CHECK(text_of(entry.path()).find("new_model") == std::string::npos);
        CHECK(text_of(entry.path()).find("NewModel") == std::string::npos);
    }
    CHECK(files == 11);
    const std::string source = text_of(room.path() / "small-orders_2" / "small-orders_2.cpp");
    CHECK_THAT(source, Contains("struct SmallOrders2Model : Model") &&
                           Contains("FLUTEBOOK_MODEL(SmallOrders2Model, \"small-orders_2\""));
}

TEST_CASE("the JSON answer lists what was written") {
    const Workroom room;
    const auto told = nlohmann::json::parse(room.start({"varnish", "--json"}).output);
    CHECK(told["folder"] == "varnish");
    CHECK(told["files"].size() == 11);
    for (const std::string file : told["files"]) CHECK(fs::is_regular_file(room.path() / "varnish" / file));
    CHECK(fs::is_directory(told["prefix"].get<std::string>() + "/share/cmake/flutebook"));
}

TEST_CASE("a name that no model may have starts nothing") {
    const Workroom room;
    const std::string too_long(41, 'a');
    for (const std::string& name : {std::string("Varnish"), std::string("var nish"), std::string("../varnish"),
                                    std::string("2coats"), std::string(""), std::string("a/b"), too_long}) {
        const Ended ended = room.start({name});
        CHECK(ended.exit_code == 1);
        CHECK(ended.output.empty());
        CHECK_THAT(ended.errors, Contains("not a model's name"));
        CHECK(lines_of(ended.errors).size() == 1);
    }
    CHECK_THAT(room.start({"test"}).errors, Contains("the build tool reserves this word"));
    CHECK_THAT(room.start({"energy"}).errors, Contains("a model of this name is installed"));
    CHECK(room.is_empty());
}

TEST_CASE("a file or folder that exists already is left unchanged") {
    const Workroom room;
    std::ofstream(room.path() / "varnish") << "mine";
    CHECK(room.start({"varnish"}).exit_code == 1);
    CHECK(text_of(room.path() / "varnish") == "mine");
    fs::create_directory(room.path() / "wax");
    const Ended ended = room.start({"wax"});
    CHECK(ended.exit_code == 1);
    CHECK_THAT(ended.errors, Contains("plugin new wax: a file or folder of this name exists already"));
    CHECK(fs::is_empty(room.path() / "wax"));
}

TEST_CASE("if files cannot be written or read, nothing is started, and the message says why") {
    const Ended nowhere = run({{FLUTEBOOK_PROGRAM, "plugin", "new", "varnish"}, "/proc"});
    CHECK(nowhere.exit_code == 1);
    CHECK_THAT(nowhere.errors, Contains("plugin new varnish: no folder can be created here"));

    // The program without its SDK.
    const Workroom room, elsewhere;
    fs::create_directory(elsewhere.path() / "bin");
    fs::copy_file(FLUTEBOOK_PROGRAM, elsewhere.path() / "bin" / "flutebook");
    const Ended alone = room.start({"varnish"}, (elsewhere.path() / "bin" / "flutebook").string());
    CHECK(alone.exit_code == 1);
    CHECK_THAT(alone.errors, Contains("the template is missing"));
    CHECK(room.is_empty());
}
