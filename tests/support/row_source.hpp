// Every candidate of a request at every quantity, as rows for the engine; and an engine over the built plugins.
#pragma once

#include <string>
#include <vector>

#include "host/engine/engine.hpp"
#include "host/geometry/layout.hpp"
#include "host/orders/request.hpp"

namespace flutebook::fixture {

/// The folder of the plugins that this build made.
[[nodiscard]] inline std::string built_plugins() {
    return FLUTEBOOK_PLUGIN_DIR;
}

/// Owns the layout and the orders that its rows point to. `plant`, `request` and `engine` must outlive it.
class RowSource {
public:
    RowSource(const plant::Plant& plant, const engine::Engine& engine, const orders::Request& request)
        : layout_(geometry::lay_out(plant, request)) {
        for (const double quantity : request.quantities)
            orders_.push_back(engine.order(plant, request, layout_, quantity));
        for (const engine::Order& order : orders_)
            for (const geometry::Candidate& candidate : layout_.candidates) rows_.push_back({&order, &candidate});
    }
    RowSource(const RowSource&) = delete;
    RowSource& operator=(const RowSource&) = delete;

    [[nodiscard]] const geometry::Layout& layout() const { return layout_; }
    [[nodiscard]] const std::vector<engine::Row>& rows() const { return rows_; }

private:
    geometry::Layout layout_;
    std::vector<engine::Order> orders_;
    std::vector<engine::Row> rows_;
};

}  // namespace flutebook::fixture
