#include "host/production/plausibility.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <functional>
#include <string_view>
#include <utility>

#include "host/base/quoted_text.hpp"
#include "host/production/accounts.hpp"
#include "host/production/scrap.hpp"

namespace flutebook::production {

namespace {

constexpr double far_from_usual = 5;
constexpr std::size_t smallest_sample = 5, largest_sample = 1000;
constexpr std::size_t most_figures = 50000, most_odd_lines = 1000;
constexpr std::chrono::days apart{31};

bool is_far(base::Date left, base::Date right) {
    const auto days = std::chrono::sys_days(left) - std::chrono::sys_days(right);
    return left.year() != right.year() && std::chrono::abs(days) > apart;
}

// Whether one letter more, less or other makes one word of the other.
bool is_one_letter_away(std::string_view left, std::string_view right) {
    if (left.size() > right.size()) std::swap(left, right);
    if (right.size() - left.size() > 1 || left == right) return false;
    const auto [at, other] = std::mismatch(left.begin(), left.end(), right.begin());
    const auto rest = std::string_view(left).substr(static_cast<std::size_t>(at - left.begin()));
    const auto rest_of_longer = right.substr(static_cast<std::size_t>(other - right.begin()) + 1);
    return left.size() == right.size() ? rest.substr(1) == rest_of_longer : rest == rest_of_longer;
}

// What a row says besides its ref and its note.
std::uint64_t figures_of(const std::string& kind, std::string_view content) {
    std::string kept = kind + '\n';
    while (!content.empty()) {
        const auto line = content.substr(0, content.find('\n'));
        content.remove_prefix(std::min(line.size() + 1, content.size()));
        if (!line.starts_with("ref=") && !line.starts_with("note=")) kept.append(line).push_back('\n');
    }
    return std::hash<std::string>()(kept);
}

}  // namespace

void Plausibility::note(const std::string& file, const DocumentRow& row) {
    auto* usual = row.kind == Kind::bale ? &bales_ : row.kind == Kind::ticket ? &tickets_ : nullptr;
    if (usual != nullptr && usual->sample_kg.size() < largest_sample)
        usual->sample_kg.push_back(row.value(DocumentColumn::kg));
    ++lines_in_file_;
    last_lines_.push_back({file, row.line, row.date});
    if (last_lines_.size() > 3) last_lines_.erase(last_lines_.begin());
    if (last_lines_.size() < 3) return;
    note_if_odd(1, 0, 2);
    if (lines_in_file_ == 3) note_if_odd(0, 1, 2);
}

void Plausibility::note_end_of_file() {
    if (last_lines_.size() == 3) note_if_odd(2, 0, 1);
    last_lines_.clear();
    lines_in_file_ = 0;
}

void Plausibility::note_if_odd(std::size_t line, std::size_t one, std::size_t other) {
    const base::Date day = last_lines_[line].date, left = last_lines_[one].date, right = last_lines_[other].date;
    if (odd_years_.size() < most_odd_lines && left.year() == right.year() && is_far(day, left) && is_far(day, right))
        odd_years_.insert({last_lines_[line].file, last_lines_[line].line});
}

RowErrors Plausibility::doubts(const std::string& file, const DocumentRow& row) {
    RowErrors doubts;
    judge_day(file, row, doubts);
    if (row.kind == Kind::weighed_scrap) judge_scrap(row, doubts);
    if (row.kind == Kind::bale || row.kind == Kind::ticket) judge_mass(row, doubts);
    judge_figures(row, doubts);
    return doubts;
}

void Plausibility::judge_day(const std::string& file, const DocumentRow& row, RowErrors& doubts) const {
    if (row.date > today_)
        doubts.push_back(
            {name_of(DocumentColumn::date), fmt::format("found {}, a day after today ({}); is it meant?",
                                                        base::to_string(row.date), base::to_string(today_))});
    if (odd_years_.count({file, row.line}) > 0)
        doubts.push_back(
            {name_of(DocumentColumn::date),
             fmt::format("found {}, another year than the rows around it; is it meant?", base::to_string(row.date))});
}

void Plausibility::judge_scrap(const DocumentRow& row, RowErrors& doubts) {
    if (!causes_) {
        causes_ = posted_.causes();
        for (const auto* cause : {"roll-ends", "damage", "returns"}) causes_->insert(cause);
        for (const auto& cause : causes_of_runs()) causes_->insert(std::string(cause));
    }
    const auto& cause = row.text(DocumentColumn::cause);
    const auto& centre = row.text(DocumentColumn::centre);
    const auto near = std::find_if(causes_->begin(), causes_->end(),
                                   [&](const std::string& known) { return is_one_letter_away(cause, known); });
    if (causes_->count(cause) == 0 && near != causes_->end())
        doubts.push_back(
            {name_of(DocumentColumn::cause), fmt::format("found {}, one letter away from {}; is it another cause?",
                                                         base::shown(cause), base::shown(*near))});
    if (cause == "roll-ends" && plant_.find_converter(centre) != nullptr)
        doubts.push_back({name_of(DocumentColumn::centre),
                          fmt::format("found roll-ends at {}, a converter, which runs no rolls; is it meant?",
                                      base::shown(centre))});
}

// Of the newest of the books and of all that are posted together; 0 where they are too few.
double Plausibility::usual_kg(Kind kind) {
    auto& usual = kind == Kind::bale ? bales_ : tickets_;
    if (usual.median_kg) return *usual.median_kg;
    auto sample = usual.sample_kg;
    for (const Grams mass : posted_.latest_masses(kind == Kind::bale ? account::loose_scrap : account::bale_yard))
        sample.push_back(mass.to_kg());
    usual.median_kg = 0;
    if (sample.size() >= smallest_sample) {
        const auto middle = sample.begin() + static_cast<std::ptrdiff_t>(sample.size() / 2);
        std::nth_element(sample.begin(), middle, sample.end());
        usual.median_kg = *middle;
    }
    return *usual.median_kg;
}

void Plausibility::judge_mass(const DocumentRow& row, RowErrors& doubts) {
    const double usual = usual_kg(row.kind);
    const auto heavy = [&](DocumentColumn column) {
        const auto kg = row.number(column);
        if (usual > 0 && kg && *kg > far_from_usual * usual)
            doubts.push_back({name_of(column), fmt::format("found {}, more than five times the usual {} kg of a {}; is "
                                                           "it meant?",
                                                           base::shown(row.text(column)), usual, name_of(row.kind))});
    };
    heavy(DocumentColumn::kg);
    if (row.kind == Kind::ticket) heavy(DocumentColumn::sent);
}

void Plausibility::judge_figures(const DocumentRow& row, RowErrors& doubts) {
    const auto add = [&](std::uint64_t figures) {
        if (figures_.size() < most_figures) figures_.insert(figures);
    };
    const auto month = row.date.year() / row.date.month();
    if (months_read_.insert(month).second)
        posted_.visit_rows(
            month, [&](const std::string& kind, const std::string& content) { add(figures_of(kind, content)); });
    const auto figures = figures_of(name_of(row.kind), row.content);
    if (figures_.count(figures) > 0)
        doubts.push_back({name_of(DocumentColumn::ref),
                          fmt::format("found {}, a new ref for figures that another row has; were they posted before?",
                                      base::shown(row.text(DocumentColumn::ref)))});
    add(figures);
}

}  // namespace flutebook::production
