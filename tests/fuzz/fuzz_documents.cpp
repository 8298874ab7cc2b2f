// Mutated production documents through the real reader and the posting, on a ledger in memory that took a few orders of
// the demo plant; then the month that they are posted to.
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <memory>
#include <nlohmann/json.hpp>

#include "host/base/errors.hpp"
#include "host/month_answers/month_answer.hpp"
#include "host/quoting/quote.hpp"
#include "host/saved_quotes/saved_quote.hpp"
#include "host/services/closing/month.hpp"
#include "host/services/orders/order.hpp"
#include "host/services/posting/post.hpp"
#include "ledger/reading/entries.hpp"
#include "tests/fuzz/fuzzer.hpp"

using namespace flutebook;
using fuzz::CaseEnd;
using fuzz::WrongCase;

namespace {

constexpr int cases_a_ledger = 200;

// Of every document; each row is fit by itself.
const std::vector<std::string>& good_documents() {
    static const std::vector<std::string> documents = {
        "ref,date,shift,corrugator,paper,kg\nP1,2026-10-05,early,C1,KL135,2140.5\nP2,2026-10-05,late,C1,KL135,-120\n",
        "ref,date,shift,corrugator,order,roll_width,outs,metres,order_change_metres,good_sheets,note\n"
        "W1,2026-10-05,early,C1,A-1,1850,3,420,25,780,first\n",
        "ref,date,shift,corrugator,order,metres,order_change_metres,good_sheets\nW2,2026-10-06,late,C1,A-2,900,25,"
        "300\n",
        "ref,date,shift,converter,order,fed,setup_sheets,rejected,good_boxes\nB1,2026-10-06,early,FG1,A-1,560,40,11,"
        "509\n",
        "ref,date,shift,centre,cause,kg\nS1,2026-10-06,early,C1,roll-ends,48.25\nS2,2026-10-06,night,floor,damage,12\n",
        "ref,date,shift,grade,kg\nG1,2026-10-07,early,4.01.00,455\nG2,2026-10-07,early,4.01.00,460\n",
        "ref,date,mill,grade,sent,kg,moisture,per_tonne\nT1,2026-10-08,Northweir,4.01.00,915,910,0.11,82\n",
        "ref,date,mill,grade,kg,moisture,per_tonne\nT2,2026-10-09,Northweir,4.01.00,910,0.09,82.5\n",
        "ref,date,centre,class,amount\nE1,2026-10-31,C1,energy,1450.75\nE2,2026-10-31,loose-scrap,system,320\n",
        "ref,date,account,of,kg,amount\nN1,2026-10-31,loose-scrap,,35,\nN2,2026-10-31,C1,KL135,800,\n",
        "ref;date;shift;corrugator;paper;kg\nP3;2026-10-05;early;C1;KL135;2140,5\n"};
    return documents;
}

class DocumentFuzzer {
public:
    DocumentFuzzer()
        : place_{plant::read_plant(FLUTEBOOK_SOURCE_DIR "/config/demo"), start_engine()},
          file_((std::filesystem::temp_directory_path() / ("flutebook-fuzz-" + std::to_string(::getpid()) + ".csv"))
                    .string()) {}
    ~DocumentFuzzer() {
        std::error_code ignored;
        std::filesystem::remove(file_, ignored);
    }
    DocumentFuzzer(const DocumentFuzzer&) = delete;
    DocumentFuzzer& operator=(const DocumentFuzzer&) = delete;

    [[nodiscard]] CaseEnd run_case(fuzz::Draws& draws) {
        if (cases_on_ledger_++ % cases_a_ledger == 0) open_ledger();
        const std::string text = fuzz::mutated(draws.of(good_documents()), draws);
        std::ofstream(file_, std::ios::binary | std::ios::trunc) << text;
        const std::int64_t before = last_entry();
        try {
            static_cast<void>(
                services::post(place_.plant, *store_, {{file_}, "fuzzer", answers::PostOptions::Keep::all}));
        } catch (const InputError& error) {
            check_refusal(error.lines(), before, text);
            return CaseEnd::refused;
        } catch (const LedgerError& error) {
            check_refusal(error.lines(), before, text);
            return CaseEnd::refused;
        }
        check_month(text);
        return CaseEnd::answered;
    }

private:
    static engine::Engine start_engine() {
        return engine::Engine::start(plant::read_plant(FLUTEBOOK_SOURCE_DIR "/config/demo"), FLUTEBOOK_PLUGIN_DIR);
    }

    void open_ledger() {
        store_ = std::make_unique<ledger::Store>(ledger::Store::in_memory());
        take("R-1001-everyday-box.yaml", "A-1");
        take("R-1007-print-cut-glue.yaml", "A-2");
    }

    void take(const std::string& request, const std::string& order) {
        const answers::QuoteOptions asked{1, std::nullopt};
        const auto answer =
            quoting::quote(place_.plant, place_.engine,
                           orders::read_request(place_.plant, place_.plant.folder + "/requests/" + request), asked);
        const std::string number = saved_quotes::save_quote(*store_, place_, {answer, asked}, "fuzzer");
        static_cast<void>(
            services::take_order(*store_, {number, answer.quantities.front().quote->quantity, order, "fuzzer"}));
    }

    [[nodiscard]] std::int64_t last_entry() const {
        const auto head = ledger::head(*store_);
        return head ? head->entry : 0;
    }

    // A refused document leaves nothing.
    void check_refusal(const std::vector<std::string>& lines, std::int64_t before, const std::string& text) const {
        if (const auto fault = fuzz::fault_of_refusal(lines, {file_, store_->file(), "post: too many faults to list"}))
            throw WrongCase{*fault, text};
        if (last_entry() != before) throw WrongCase{"a document that was refused left entries", text};
    }

    // Masses in and out of every account are kept to the gram, whatever was posted.
    void check_month(const std::string& text) const {
        using namespace std::chrono_literals;
        const services::MonthOptions asked{2026y / std::chrono::October, std::nullopt,
                                           services::MonthOptions::Trend::none, 2026y / std::chrono::November / 1};
        const auto answer = services::month(place_.plant, *store_, asked);
        const auto document = answers::month_document(answer);
        // Corrections, counts and returns may bring any mass and any amount below zero; none may be no number.
        // A document writes null for what is no number; some figures there may be none of.
        if (const auto key = null_key(nlohmann::json::parse(document), ""); !key.empty())
            throw WrongCase{"a month with a figure that is no number: " + key, text};
        if (const auto fault = fuzz::fault_of_document(document, every_key())) throw WrongCase{*fault, text};
    }

    // The first key whose value is null and may not be; empty where there is none.
    static std::string null_key(const nlohmann::json& value, const std::string& key) {
        static const std::vector<std::string> may_be_null = {"recycling_rate", "reverses", "scrap_value_per_kg"};
        if (value.is_null())
            return std::find(may_be_null.begin(), may_be_null.end(), key) == may_be_null.end() ? key : "";
        // The share of trim of no runs is no number.
        if (!value.is_structured() || (value.is_object() && value.value("runs", 1) == 0)) return "";
        for (const auto& member : value.items())
            if (auto found = null_key(member.value(), value.is_object() ? member.key() : key); !found.empty())
                return found;
        return "";
    }

    static const std::vector<std::string>& every_key() {
        static const std::vector<std::string> keys = {
            "issued_kg",      "adhesive_kg",    "product_kg",   "loss_kg",           "expected_kg",
            "unexplained_kg", "centre_kg",      "floor_kg",     "loose_scrap_kg",    "bale_yard_kg",
            "sent_kg",        "paid_kg",        "revenue",      "waste_cost",        "product_cost",
            "floor_cost",     "recycling_rate", "excess_value", "scrap_value_per_kg"};
        return keys;
    }

    workplace::Workplace place_;
    std::string file_;
    std::unique_ptr<ledger::Store> store_;
    int cases_on_ledger_ = 0;
};

}  // namespace

int main(int count, char** words) {
    DocumentFuzzer fuzzer;
    return fuzz::run_fuzzer(count, words, [&](fuzz::Draws& draws) { return fuzzer.run_case(draws); });
}
