#include "host/production/refusals.hpp"

#include <fmt/format.h>

#include "host/base/errors.hpp"

namespace flutebook::production {

void Refusals::add(const std::string& file, std::int64_t line, std::string_view column, const std::string& text) {
    if (++count_ > most_listed) return;
    const auto where = line == 0 ? file : fmt::format("{}:{}", file, line);
    listed_.push_back(column.empty() ? fmt::format("{}: {}", where, text)
                                     : fmt::format("{}: {}: {}", where, column, text));
}

void Refusals::throw_if_any() const {
    if (!any()) return;
    auto lines = listed_;
    if (count_ > listed_.size())
        lines.push_back(
            fmt::format("post: too much is refused to list it: found {} faults more than the {} above; "
                        "mend these and post again",
                        count_ - listed_.size(), listed_.size()));
    throw InputError(InputError::Whose::request, lines);
}

}  // namespace flutebook::production
