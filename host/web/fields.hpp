// What stands in an address or in a form: segments of a path, and fields with their values, decoded.
//
// Whatever is not well formed is refused: a wrong percent code, a NUL or another control character, bytes that are no
// UTF-8. Lines may stand in a field of a form, and nowhere else.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace flutebook::web {

class Fields {
public:
    using Field = std::pair<std::string, std::string>;

    Fields() = default;
    explicit Fields(std::vector<Field> fields) : fields_(std::move(fields)) {}

    /// The first of that name; empty where there is none.
    [[nodiscard]] const std::string& at(std::string_view name) const;
    [[nodiscard]] bool has(std::string_view name) const;
    [[nodiscard]] const std::vector<Field>& all() const { return fields_; }

private:
    std::vector<Field> fields_;
};

/// Whether lines may stand in a value.
enum class Lines { refuse, take };

/// `a=1&b=2`, as a form or a query has it; nothing where it is not well formed, or has more than 200 fields.
[[nodiscard]] std::optional<Fields> read_fields(std::string_view text, Lines lines);

/// A request's target, taken apart.
struct Target {
    std::vector<std::string> segments;  // of "/quotes/Q1": quotes, Q1; of "/" none
    Fields query;
};

/// Nothing where it is not well formed. Dots are no segments of ours, and neither is nothing.
[[nodiscard]] std::optional<Target> read_target(std::string_view target);

}  // namespace flutebook::web
