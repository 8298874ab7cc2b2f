// Many requests at once: their answer is written request by request, so that no memory holds all of it.
#include <sys/resource.h>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Json = nlohmann::ordered_json;

// The sanitizers keep memory of their own.
#if !defined(FLUTEBOOK_SANITIZED)

namespace {

// The most that any child of this process has used so far, in MB.
long peak_of_children_mb() {
    rusage used{};
    ::getrusage(RUSAGE_CHILDREN, &used);
    return used.ru_maxrss / 1024;
}

}  // namespace

TEST_CASE("an answer of a thousand requests in JSON takes the memory of a hundred") {
    PlantCopy plant;
    std::vector<std::string> words = {"quote", "--json"};
    const auto add_requests = [&](std::size_t count) {
        for (std::size_t i = 0; i < count; ++i) {
            const std::string number = "R-" + std::to_string(words.size());
            words.push_back(plant.write(number + ".yaml", plain_request(number, "500, 1000, 5000, 10000")));
        }
    };
    add_requests(100);
    REQUIRE(ask_at(plant.folder(), words).exit_code == 0);
    const long few_mb = peak_of_children_mb();
    add_requests(900);
    const Ended many = ask_at(plant.folder(), words);
    CHECK(many.exit_code == 0);
    CHECK(peak_of_children_mb() - few_mb < 25);  // one answer in memory takes 150 kB and more
    CHECK(Json::parse(many.output)["requests"].size() == 1000);
}
#endif
