// The small plant with examples of the SDK in it, and one of its orders costed and looked into.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "host/engine/engine.hpp"
#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"
#include "tests/support/row_source.hpp"
#include "tests/support/small_plant.hpp"
#include "tests/unit/sdk/sample.hpp"

namespace flutebook::sdk_test {

using Pairs = std::vector<std::pair<std::string, std::string>>;

/// The small plant, which lists these models besides its own, each with plain settings.
[[nodiscard]] plant::Plant example_plant(const std::vector<std::pair<std::string, Pairs>>& models);

/// An entry of plugins.yaml as a person writes it: listed("varnish: {price: 3}").
[[nodiscard]] plant::ModelSettings listed(const std::string& yaml);

[[nodiscard]] plant::Preference prefer(const std::string& name, const std::string& model);

/// The request with extras for a model.
[[nodiscard]] orders::Request with(orders::Request request, const std::string& model, const Pairs& extras);

/// The first candidate of a request at its first quantity, costed in full.
class Costed {
public:
    Costed(const plant::Plant& plant, const orders::Request& request);
    Costed(const Costed&) = delete;
    Costed& operator=(const Costed&) = delete;

    /// Of a row that was not refused.
    [[nodiscard]] const engine::Costing& costing() const { return costing_.value(); }
    /// By a line's name, in order of step.
    [[nodiscard]] std::vector<engine::LineAmount> lines(const std::string& line) const;
    [[nodiscard]] double fed(std::size_t step) const { return costing().fed.at(step); }
    /// What a model provides for this row.
    [[nodiscard]] double provided(const std::string& model, const std::string& name, std::size_t index) const;
    [[nodiscard]] double power_kw(std::size_t step) const;
    /// The reason; empty where it was costed.
    [[nodiscard]] std::string refused() const;

private:
    plant::Plant plant_;
    orders::Request request_;
    engine::Engine engine_;
    fixture::RowSource source_;
    std::optional<engine::Costing> costing_;
};

}  // namespace flutebook::sdk_test
