// The settings that a file gives for a model, as they were written: in plugins.yaml, in a request's `extras`, and later
// in a row of a list or a line that a person types. What a value means, the model's declaration says; see
// contract/settings.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "host/base/date.hpp"
#include "host/base/place.hpp"
#include "host/fields/quantity.hpp"

namespace flutebook::fields {
class Field;
}  // namespace flutebook::fields

namespace flutebook::plant {

/// The key beside a model's settings that names the model whose file serves: `- lacquer: {model: varnish}`.
inline constexpr const char* served_model_key = "model";

struct GivenCell;

/// In the order of the file, each key once.
using GivenTable = std::vector<GivenCell>;

/// One value, or a table whose values are texts, or tables of texts.
using GivenValue = std::variant<fields::GivenText, GivenTable>;

/// One entry of a table: the value for one paper, flute, machine, customer, ..., or from one number on.
struct GivenCell {
    std::string key;
    base::Place key_place;
    GivenValue value;
};

/// The value from a day on.
struct GivenFrom {
    base::Date from;
    base::Place place;  // of the day
    GivenValue value;
    base::Place value_place;
};

/// By date, rising; none only where the value could not be read, which was complained of.
using GivenDates = std::vector<GivenFrom>;

struct GivenSetting {
    std::string name;
    base::Place name_place;
    std::variant<fields::GivenText, GivenTable, GivenDates> value;
    base::Place place;  // of the value
};

/// One model's settings, in the order in which they were given; each name once.
struct ModelSettings {
    std::string id;
    base::Place place;
    std::vector<GivenSetting> settings;
    /// The model that serves under this id, where it is another one's: `- lacquer: {model: varnish}`.
    std::optional<std::string> model{};

    /// The model whose file is loaded.
    [[nodiscard]] const std::string& served_by() const { return model ? *model : id; }
    /// Null where it was not given. Lives as long as the settings are not changed.
    [[nodiscard]] const GivenSetting* find(const std::string& name) const;
};

/// Of an entry of plugins.yaml. Complains of what is no value of a setting, which then has no dates.
[[nodiscard]] ModelSettings read_listed_model(const fields::Field& model);

/// Of an entry of a request's `extras`, whose settings are texts or tables of texts, without dates. Likewise.
[[nodiscard]] ModelSettings read_model_extras(const fields::Field& model);

}  // namespace flutebook::plant
