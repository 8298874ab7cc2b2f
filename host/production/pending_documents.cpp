#include "host/production/pending_documents.hpp"

#include "host/production/accounts.hpp"

namespace flutebook::production {

void Foresight::keep_earlier(Days& days, const std::string& account, base::Date day) {
    const auto [known, is_new] = days.try_emplace(account, day);
    if (!is_new && day < known->second) known->second = day;
}

std::optional<base::Date> Foresight::day_of(const Days& days, const std::string& account) {
    const auto known = days.find(account);
    return known == days.end() ? std::nullopt : std::optional(known->second);
}

void Foresight::note(const Row& row, Book& book) {
    const auto moves = [&](const std::string& account) { keep_earlier(first_movements_, account, row.date); };
    switch (row.kind) {
        case Kind::paper:
            moves(row.text(Column::corrugator));
            if (row.value(Column::kg) > 0)
                issues_[{row.text(Column::corrugator), row.text(Column::paper)}].insert(row.date);
            break;
        case Kind::corrugator_run: {
            moves(row.text(Column::corrugator));
            moves(account::loose_scrap);
            const auto* order = book.find_order(row.text(Column::order));
            if (order != nullptr && !order->route.empty()) moves(account::floor);
            break;
        }
        case Kind::converter_run:
            moves(account::floor);
            moves(row.text(Column::converter));
            moves(account::loose_scrap);
            break;
        case Kind::weighed_scrap:
            moves(row.text(Column::centre));
            moves(account::loose_scrap);
            break;
        case Kind::bale:
            moves(account::loose_scrap);
            moves(account::bale_yard);
            break;
        case Kind::ticket:
            moves(account::bale_yard);
            break;
        case Kind::centre_cost:
            moves(row.text(Column::centre));
            break;
        case Kind::count:
            keep_earlier(first_counts_, row.text(Column::account), row.date);
            break;
    }
}

std::optional<base::Date> Foresight::last_issue(const std::string& corrugator, const std::string& paper,
                                                base::Date day) const {
    const auto known = issues_.find({corrugator, paper});
    if (known == issues_.end()) return std::nullopt;
    const auto after = known->second.upper_bound(day);
    return after == known->second.begin() ? std::nullopt : std::optional(*std::prev(after));
}

std::optional<base::Date> Foresight::first_movement(const std::string& account) const {
    return day_of(first_movements_, account);
}

std::optional<base::Date> Foresight::first_count(const std::string& account) const {
    return day_of(first_counts_, account);
}

}  // namespace flutebook::production
