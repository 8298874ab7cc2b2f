// One bad plugin tried on the small plant: what the host says of it, and whether the host goes on as if nothing had
// been.
#pragma once

#include <string>
#include <vector>

#include "host/engine/engine.hpp"
#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"
#include "ledger/values/money.hpp"

namespace flutebook::bad {

/// Costs the small plant's orders when it is made, before anything bad is loaded, and remembers what they came to.
class Trial {
public:
    /// `way` is the folder of the bad plugins, which go before the installed ones of the same name; `added` are the
    /// models that the plant lists besides its own.
    explicit Trial(const std::string& way, const std::vector<std::string>& added = {});

    /// The plant that holds the bad plugin, to be changed before the questions below.
    [[nodiscard]] plant::Plant& plant() { return plant_; }

    /// What the host complains of when the plant is opened, a line each; nothing where it opens.
    [[nodiscard]] std::string refusal() const;

    /// What the host says of the model instead of a quote for the unlucky order: 0201 boxes, 5000 among its
    /// quantities. Nothing where it is quoted.
    [[nodiscard]] std::string fault() const;

    /// With the bad plugin loaded, every other order comes to what it came to without.
    [[nodiscard]] bool others_go_on() const;

    /// The plant without the bad plugin opens, and all its orders come to what they came to before.
    [[nodiscard]] bool host_lives_on() const;

private:
    [[nodiscard]] engine::Engine open() const;

    plant::Plant good_, plant_;
    std::vector<std::string> costs_;  // by order, the unlucky one first
};

}  // namespace flutebook::bad
