// Rows that can be posted and are probably a slip: a day after today, another year than the rows around it, a cause one
// letter away from a known one, roll ends at a converter, a bale or a load five times as heavy as usual, the same
// figures under a new ref.
//
// Each is told with its row and posted all the same, unless the caller refuses what is doubtful.
#pragma once

#include <chrono>
#include <cstdint>
#include <functional>
#include <optional>
#include <set>
#include <string>
#include <unordered_set>
#include <utility>
#include <vector>

#include "host/plant/plant.hpp"
#include "host/production/row.hpp"
#include "ledger/values/mass.hpp"

namespace flutebook::production {

/// What the books tell of rows that were posted before.
class PostedRows {
public:
    PostedRows() = default;
    PostedRows(const PostedRows&) = delete;
    PostedRows& operator=(const PostedRows&) = delete;
    virtual ~PostedRows() = default;

    /// The causes by which anything was lost in the last months.
    [[nodiscard]] virtual std::set<std::string> causes() const = 0;
    /// The newest masses that left the account, some dozens at most.
    [[nodiscard]] virtual std::vector<Grams> latest_masses(const std::string& from) const = 0;
    /// Calls `visit` with the kind and content of each row of the month that stands.
    virtual void visit_rows(std::chrono::year_month month,
                            const std::function<void(const std::string&, const std::string&)>& visit) const = 0;
};

/// The rows of one posting. They are shown to it twice, file by file in the same order: noted, then judged. Memory is
/// bounded. One thread at a time.
class Plausibility {
public:
    /// `today` is by the machine's clock. All must outlive it.
    Plausibility(base::Date today, const plant::Plant& plant, const PostedRows& posted)
        : today_(today), plant_(plant), posted_(posted) {}

    void note(const std::string& file, const DocumentRow& row);
    void note_end_of_file();

    /// What is doubtful about a row that can be posted.
    [[nodiscard]] RowErrors doubts(const std::string& file, const DocumentRow& row);

private:
    struct DatedLine {
        std::string file;
        std::int64_t line;
        base::Date date;
    };
    struct UsualMass {
        std::vector<double> sample_kg;
        std::optional<double> median_kg;  // once it was asked for
    };

    // One of the last three lines, whose two neighbours agree on another year.
    void note_if_odd(std::size_t line, std::size_t one, std::size_t other);
    void judge_day(const std::string& file, const DocumentRow& row, RowErrors& doubts) const;
    void judge_scrap(const DocumentRow& row, RowErrors& doubts);
    void judge_mass(const DocumentRow& row, RowErrors& doubts);
    void judge_figures(const DocumentRow& row, RowErrors& doubts);
    [[nodiscard]] double usual_kg(Kind kind);

    base::Date today_;
    const plant::Plant& plant_;
    const PostedRows& posted_;
    std::vector<DatedLine> last_lines_;  // at most three of a file
    std::size_t lines_in_file_ = 0;
    std::set<std::pair<std::string, std::int64_t>> odd_years_;  // file and line
    std::optional<std::set<std::string>> causes_;
    UsualMass bales_, tickets_;
    std::set<std::chrono::year_month> months_read_;
    std::unordered_set<std::uint64_t> figures_;
};

}  // namespace flutebook::production
