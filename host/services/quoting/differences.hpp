// What differs between two trees of names and values: a plant's files then and today, an answer then and today.
//
// A tree is laid out as its leaves, each under a path of names, and paths are compared: what stands in another order,
// or on another line, differs in nothing. Pure values; any thread.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
#include <vector>

#include "host/plant/yaml/node.hpp"

namespace flutebook::services {

/// A value, or a list of plain values, and where it stood.
struct Leaf {
    std::string path;              // "papers.KL135.price[2026-01-01].per_tonne"
    std::string text;              // as it was written; a list as "[1850, 2050]"
    std::optional<double> number;  // of what is a number
    base::Place place;             // of a leaf from JSON: none
};

/// The leaves of a file, in its order. A list's entry is named by its only key (a model), by the day it counts from (a
/// price), else by its number from 1.
[[nodiscard]] std::vector<Leaf> leaves_of(const plant::Node& root);

/// The leaves of a JSON value, in its order. An entry of a list is named by its number from 1.
[[nodiscard]] std::vector<Leaf> leaves_of(const nlohmann::ordered_json& root);

/// `was` alone: taken out; `now` alone: added.
struct Difference {
    std::string path;
    std::optional<Leaf> was, now;

    /// now - was, to a billionth, where both are numbers.
    [[nodiscard]] std::optional<double> by() const;
};

/// In the order of `now`; what was taken out follows, in its own order. Values are compared as they were written.
[[nodiscard]] std::vector<Difference> differences(const std::vector<Leaf>& was, const std::vector<Leaf>& now);

}  // namespace flutebook::services
