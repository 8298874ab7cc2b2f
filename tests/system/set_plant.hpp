// A copy of the demo plant with a style of three pieces, as people would add one: a die-cut tray, a die-cut lid and two
// pads that the corrugator alone makes. And what production of it would report.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "tests/system/face.hpp"

namespace flutebook::fixture {

class SetPlant : public PlantCopy {
public:
    using Json = nlohmann::ordered_json;

    SetPlant();

    [[nodiscard]] Ended ask(const std::vector<std::string>& words) const { return ask_at(folder(), words); }
    /// The document that the program answers with; the test fails where the exit code is not 0.
    [[nodiscard]] Json document(const std::vector<std::string>& words) const;

    /// Writes a request for sets of this inside size; its path.
    std::string write_request(const std::string& number, const std::string& quantities,
                              const std::string& inside = "{length: 600, width: 400, height: 150}");
    /// Lists the SDK's example of a late model: an order costs at least so much.
    void charge_least(const std::string& least);

    /// Posts what one piece's order, quoted as `quote`, is allowed to use, or with so many more rejects at its
    /// converter. Refs begin with the order's number.
    void produce(const std::string& order, const Json& quote, double more_rejects = 0);

    static constexpr double pads_to_a_set = 2;
};

}  // namespace flutebook::fixture
