#include "host/production/pending_documents.hpp"

#include "host/production/accounts.hpp"

namespace flutebook::production {

void PendingDocuments::keep_earlier(Days& days, const std::string& account, base::Date day) {
    const auto [known, is_new] = days.try_emplace(account, day);
    if (!is_new && day < known->second) known->second = day;
}

std::optional<base::Date> PendingDocuments::day_of(const Days& days, const std::string& account) {
    const auto known = days.find(account);
    return known == days.end() ? std::nullopt : std::optional(known->second);
}

void PendingDocuments::note(const DocumentRow& row, Book& book) {
    const auto moves = [&](const std::string& account) { keep_earlier(first_movements_, account, row.date); };
    switch (row.kind) {
        case Kind::paper:
            moves(row.text(DocumentColumn::corrugator));
            if (row.value(DocumentColumn::kg) > 0)
                issues_[{row.text(DocumentColumn::corrugator), row.text(DocumentColumn::paper)}].insert(row.date);
            break;
        case Kind::corrugator_run: {
            moves(row.text(DocumentColumn::corrugator));
            moves(account::loose_scrap);
            const auto* order = book.find_order(row.text(DocumentColumn::order));
            if (order != nullptr && !order->route.empty()) moves(account::floor);
            break;
        }
        case Kind::converter_run:
            moves(account::floor);
            moves(row.text(DocumentColumn::converter));
            moves(account::loose_scrap);
            break;
        case Kind::weighed_scrap:
            moves(row.text(DocumentColumn::centre));
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
            moves(row.text(DocumentColumn::centre));
            break;
        case Kind::count:
            keep_earlier(first_counts_, row.text(DocumentColumn::account), row.date);
            break;
    }
}

std::optional<base::Date> PendingDocuments::last_issue(const std::string& corrugator, const std::string& paper,
                                                       base::Date day) const {
    const auto known = issues_.find({corrugator, paper});
    if (known == issues_.end()) return std::nullopt;
    const auto after = known->second.upper_bound(day);
    return after == known->second.begin() ? std::nullopt : std::optional(*std::prev(after));
}

std::optional<base::Date> PendingDocuments::first_movement(const std::string& account) const {
    return day_of(first_movements_, account);
}

std::optional<base::Date> PendingDocuments::first_count(const std::string& account) const {
    return day_of(first_counts_, account);
}

}  // namespace flutebook::production
