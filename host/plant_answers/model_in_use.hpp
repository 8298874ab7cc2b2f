// One model as a plant uses it: its inputs and their sources, and the value of each setting on a day with its place.
//
// Its document: an entry of `plugin describe --json`, and besides "sha256", "trust" (installed, tried), "isolated",
//   of each need "from": S as `plugin graph --json` has it, of each provide "to": [id...], of each setting
//   "replaced_by": S or null, "since": DATE or null (from when these values count, where they have dates), "later":
//   [DATE...] (from when others will), "values": [{"key" (null: of all that are not named), "from" (a number of the
//   need that it is stepped over; null: of any), "value", "choice" (null of a plain number), "file", "line" (both null
//   of a default)}...]
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/base/date.hpp"
#include "host/base/place.hpp"
#include "host/contract/setting_values.hpp"
#include "host/engine/graph/graph.hpp"
#include "host/plant/plant.hpp"
#include "host/plant_answers/plugin_answer.hpp"

namespace flutebook::plant_answers {

struct ValueInForce {
    std::string key;             // a code or a name; empty: of all that are not named
    std::optional<double> from;  // of the need that it is stepped over
    double value;                // of a choice: its index
    base::Place place;           // the file by its name in the plant's folder; line 0: the default
};

struct SettingInForce {
    std::optional<Feed> replaced_by;  // whose number counts in its place
    std::optional<base::Date> since;  // where values have dates
    std::vector<base::Date> later;
    std::vector<ValueInForce> values;  // none of what the request gives, or nobody gives
};

struct ModelInUse {
    /// How the file came to be trusted: it was tried when this program was built, or before it was loaded.
    enum class Trust { installed, tried };
    contract::Model model;
    Trust trust = Trust::tried;
    std::vector<Feed> feeds;                       // by need
    std::vector<std::vector<std::string>> takers;  // by provide: ids of models, "host"
    std::vector<SettingInForce> settings;          // by setting
};

/// The whole of one model of the graph.
[[nodiscard]] ModelInUse model_in_use(const plant::Plant& plant, const engine::Graph& graph,
                                      const contract::Settings& settings, std::size_t model, base::Date day);

}  // namespace flutebook::plant_answers
