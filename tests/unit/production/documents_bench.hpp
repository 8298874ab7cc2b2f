// What a test of documents stands on: a text as a file, an order whose masses can be worked out by hand, a book that
// knows what the test says.
#pragma once

#include <filesystem>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "host/plant/plant.hpp"
#include "host/production/book.hpp"
#include "host/production/row.hpp"
#include "host/production/row_validation.hpp"

namespace flutebook::fixture {

/// A file with this text, gone when it goes out of scope.
class TextFile {
public:
    explicit TextFile(const std::string& text);
    ~TextFile();
    TextFile(const TextFile&) = delete;
    TextFile& operator=(const TextFile&) = delete;

    void rewrite(const std::string& text) const;
    [[nodiscard]] const std::string& path() const { return path_; }

private:
    std::string path_;
};

/// Orders by their numbers, and what the test says of other rows.
class KnownBook : public production::Book {
public:
    std::map<std::string, orders::OrderRecord> orders;
    std::map<std::string, double> issue_prices;  // by paper
    bool is_new = false;                         // every account is

    const orders::OrderRecord* find_order(const std::string& number) override;
    std::optional<double> last_issue_price(const std::string& corrugator, const std::string& paper,
                                           base::Date day) override;
    bool is_unopened(const std::string& account, const std::string& material, base::Date day) override;
};

/// 1000 boxes of 1 m2 net on sheets of 2 m x 0.6 m, made on C1 off a roll of 1850 mm, 3 outs, then FG1. The board is
/// 500 g/m2: KL140 140, SC127 225 with its take-up, TL125 125, adhesive 10. C1 may lose 2 % of the web, 1 % of the
/// paper and 25 m a change; FG1 40 sheets and 1 %.
[[nodiscard]] orders::OrderRecord box_order(const std::string& number);
/// The same board, cut six up on sheets of 1.5 m x 0.8 m by DC1 behind the printer PR1, then folded by FG1. A box is
/// 0.15 m2 net.
[[nodiscard]] orders::OrderRecord long_order(const std::string& number);
/// The same board, slit by SL1 into eight plain blanks of 0.15 m2 a sheet, nothing between them, then stitched by ST1
/// and packed at the table HP1; HP2 is another.
[[nodiscard]] orders::OrderRecord hand_order(const std::string& number);
/// The same sheets as the box order's, sold as sheets.
[[nodiscard]] orders::OrderRecord sheet_order(const std::string& number);

/// The small plant with two shifts, and two mills: Northweir pays dry matter from 10 %, Saltmarsh by points from 12 %.
[[nodiscard]] plant::Plant paper_plant();

/// The rows of a document: its header row, and each line of `rows`.
[[nodiscard]] std::vector<production::ReadLine> read_lines(const std::string& text);

/// What a row is worth. Its fields hold no quotes or commas.
[[nodiscard]] production::RowResult worth_of(const std::string& header, const std::string& row, production::Book& book);
/// The same where it can be posted; fails the test where it cannot.
[[nodiscard]] ledger::Draft draft_of(const std::string& header, const std::string& row, production::Book& book);
/// `column: text` of each objection; empty where there is none.
[[nodiscard]] std::vector<std::string> objections_to(const std::string& header, const std::string& row,
                                                     production::Book& book);

/// Grams that moved, by the accounts and the cause, whatever the material.
[[nodiscard]] std::int64_t moved(const ledger::Draft& draft, const std::string& from, const std::string& to,
                                 const std::string& cause = "");
/// The same of one material.
[[nodiscard]] std::int64_t moved_of(const ledger::Draft& draft, const std::string& material, const std::string& from,
                                    const std::string& to, const std::string& cause = "");
/// Grams that were expected of a cause; 0 where nothing was.
[[nodiscard]] std::int64_t expected(const ledger::Draft& draft, const std::string& cause);

inline const std::string paper_header = "ref,date,shift,corrugator,paper,kg";
inline const std::string corrugator_header =
    "ref,date,shift,corrugator,order,roll_width,outs,metres,order_change_metres,good_sheets";
inline const std::string shared_web_header = corrugator_header + ",web";
inline const std::string own_layout_header = "ref,date,shift,corrugator,order,metres,order_change_metres,good_sheets";
inline const std::string converter_header = "ref,date,shift,converter,order,fed,setup_sheets,rejected,good_boxes";
inline const std::string scrap_header = "ref,date,shift,centre,cause,kg";
inline const std::string bale_header = "ref,date,shift,grade,kg";
inline const std::string ticket_header = "ref,date,mill,grade,sent,kg,moisture,per_tonne";
inline const std::string cost_header = "ref,date,centre,class,amount";
inline const std::string count_header = "ref,date,account,of,kg,amount";

}  // namespace flutebook::fixture
