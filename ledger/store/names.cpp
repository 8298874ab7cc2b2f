#include "ledger/store/names.hpp"

namespace flutebook::ledger {

namespace {

constexpr std::size_t most_remembered = 30000;
constexpr const char* find_sql = "SELECT id FROM name WHERE text = ?";

}  // namespace

Names::Names(Database& database)
    : find_(database, find_sql),
      add_(database, "INSERT INTO name (id, text) VALUES ((SELECT max(id) + 1 FROM name), ?) RETURNING id") {}

std::int64_t Names::number_of(const std::string& name) {
    if (name.empty()) return 0;
    if (const auto known = known_.find(name); known != known_.end()) return known->second;
    if (known_.size() >= most_remembered) known_.clear();
    find_.bind(1, name);
    Statement* answer = &find_;
    if (!find_.step()) {
        answer = &add_;
        add_.bind(1, name);
        add_.step();
    }
    const auto number = answer->number(0);
    find_.reset();
    add_.reset();
    known_.emplace(name, number);
    return number;
}

void Names::forget() {
    known_.clear();
}

std::optional<std::int64_t> find_name(Database& database, const std::string& name) {
    Statement find(database, find_sql);
    find.bind(1, name);
    return find.step() ? std::optional(find.number(0)) : std::nullopt;
}

}  // namespace flutebook::ledger
