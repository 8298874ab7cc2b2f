// Rows to measure with: the demo plant's requests, at as many quantities as it takes.
#pragma once

#include <cstddef>
#include <memory>
#include <string>
#include <vector>

#include "host/engine/engine.hpp"
#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"
#include "tests/bench/plain_cost.hpp"

namespace flutebook::bench {

/// The demo plant with its models. Owns all that rows point to.
class Workload {
public:
    /// Reads the plant in `folder`, its requests, and loads the models from `plugins`.
    Workload(const std::string& folder, const std::string& plugins);

    /// The same with some models isolated.
    Workload(const std::string& folder, const std::string& plugins, const std::vector<std::string>& isolated,
             contract::IsolatedLoader& elsewhere);

    [[nodiscard]] const engine::Engine& engine() const { return engine_; }

    /// `count` rows of all shapes mixed as the requests have them: every candidate, at quantities that go on rising.
    [[nodiscard]] std::vector<engine::Row> rows(std::size_t count);

    [[nodiscard]] Prices prices() const;
    [[nodiscard]] Extras extras_of(const engine::Order& order) const;

private:
    Workload(plant::Plant plant, const std::string& plugins, contract::IsolatedLoader* elsewhere);

    [[nodiscard]] double plant_setting(const std::string& name) const;
    [[nodiscard]] double request_setting(const engine::Order& order, const std::string& name) const;

    plant::Plant plant_;
    engine::Engine engine_;
    std::vector<orders::Request> requests_;
    std::vector<std::unique_ptr<geometry::Layout>> layouts_;
    std::vector<std::unique_ptr<engine::Order>> orders_;
};

}  // namespace flutebook::bench
