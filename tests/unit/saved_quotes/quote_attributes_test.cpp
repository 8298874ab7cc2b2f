// What a quote is found by, made of its answer.
#include "host/saved_quotes/quote_attributes.hpp"

#include <catch2/catch.hpp>

using namespace flutebook;

namespace {

// In micrometres; of a quote that has none, an empty list.
std::vector<std::int64_t> size_of(const orders::Request& request) {
    answers::RequestAnswer answer{};
    answer.request = request;
    std::vector<std::int64_t> size;
    for (const auto& attribute : saved_quotes::attributes_of({}, answer))
        if (attribute.name == "length" || attribute.name == "width" || attribute.name == "height")
            size.push_back(std::get<std::int64_t>(attribute.value));
    return size;
}

}  // namespace

TEST_CASE("a quote is found by its inside, of a drawing by its blank without a height") {
    orders::Request request{};
    CHECK(size_of(request).empty());
    request.outline = orders::Outline{620, 400, 0.2};
    CHECK(size_of(request) == std::vector<std::int64_t>{620'000, 400'000, 0});
    request.inside = orders::InsideSize{300, 200, 100};
    CHECK(size_of(request) == std::vector<std::int64_t>{300'000, 200'000, 100'000});
}
