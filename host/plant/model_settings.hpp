// The settings that a file gives for a model, as they were written: in plugins.yaml, in a request's `extras`, and later
// in a row of a list or a line that a person types. What a value means, the model's declaration says; see
// contract/settings.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "host/base/place.hpp"

namespace flutebook::plant {

class Field;

/// A number with or without a unit, or a word.
struct GivenText {
    std::string text;     // without control characters
    bool quoted = false;  // a quoted text is never a bare number
    base::Place place;
};

/// One entry of a table: the value for one paper, flute or machine.
struct GivenCell {
    std::string key;
    base::Place key_place;
    GivenText value;
};

using GivenTable = std::vector<GivenCell>;

struct GivenSetting {
    std::string name;
    base::Place name_place;
    std::variant<GivenText, GivenTable> value;
    base::Place place;  // of the value
};

/// One model's settings, in the order in which they were given; each name once.
struct ModelSettings {
    std::string id;
    base::Place place;
    std::vector<GivenSetting> settings;

    /// Null where it was not given. Lives as long as the settings are not changed.
    [[nodiscard]] const GivenSetting* find(const std::string& name) const;
};

/// The settings under a model's id. Complains of what is neither a text nor a table of texts, and leaves it out.
[[nodiscard]] ModelSettings read_model_settings(const Field& model);

}  // namespace flutebook::plant
