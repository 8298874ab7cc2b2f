// Mutated requests through the real reader, the engine with all shipped models, and what is written of the answer.
#include <algorithm>
#include <cmath>
#include <filesystem>
#include <iostream>

#include "host/answers/figures.hpp"
#include "host/answers/quote_json.hpp"
#include "host/base/errors.hpp"
#include "host/engine/engine.hpp"
#include "host/orders/request.hpp"
#include "host/quoting/quote.hpp"
#include "host/render/text_report.hpp"
#include "host/reports/quote_report.hpp"
#include "tests/fuzz/fuzzer.hpp"

using namespace flutebook;
using fuzz::CaseEnd;
using fuzz::WrongCase;

namespace {

const std::string request_file = "mutated.yaml";

class RequestFuzzer {
public:
    RequestFuzzer()
        : plant_(plant::read_plant(FLUTEBOOK_SOURCE_DIR "/config/demo")),
          engine_(engine::Engine::start(plant_, FLUTEBOOK_PLUGIN_DIR)) {
        std::vector<std::filesystem::path> files;
        for (const auto& entry : std::filesystem::directory_iterator(plant_.folder + "/requests"))
            files.push_back(entry.path());
        std::sort(files.begin(), files.end());
        for (const auto& file : files) texts_.push_back(fuzz::read_file(file.string()));
    }

    [[nodiscard]] CaseEnd run_case(fuzz::Draws& draws) const {
        const std::string text = fuzz::mutated(draws.of(texts_), draws);
        try {
            const orders::Request request = orders::read_request(plant_, request_file, text, std::nullopt);
            const answers::RequestAnswer answer = quoting::quote(plant_, engine_, request, {1, std::nullopt});
            if (answer.model_fault) return check_fault(*answer.model_fault, text);
            check_answer(answer, text);
            return CaseEnd::answered;
        } catch (const InputError& error) {
            if (error.whose() != InputError::Whose::request)
                throw WrongCase{"a request's error that is told as the plant's: " + error.lines().front(), text};
            if (const auto fault = fuzz::fault_of_refusal(error.lines(), {request_file})) throw WrongCase{*fault, text};
            return CaseEnd::refused;
        }
    }

private:
    // A model may find an order beyond its range, or charge what is no amount: the message names its file, or the
    // request.
    static CaseEnd check_fault(const std::string& fault, const std::string& text) {
        if (const auto wrong = fuzz::fault_of_refusal({fault}, {FLUTEBOOK_PLUGIN_DIR, request_file}))
            throw WrongCase{*wrong, text};
        return CaseEnd::refused;
    }

    void check_answer(const answers::RequestAnswer& answer, const std::string& text) const {
        for (const auto& item : answer.quantities)
            if (item.quote)
                for (const answers::Leaf& leaf : answers::figures_of(*item.quote))
                    if (leaf.number && !std::isfinite(*leaf.number))
                        throw WrongCase{"a figure that is no number: " + leaf.path, text};
        const std::string document = answers::quote_text(plant_, answer, {1, std::nullopt});
        // What the scrap brings is a line of a quantity below zero.
        const std::vector<std::string> may_be_negative = {"lines", "contribution_per_thousand",
                                                          "price_less_cash_per_thousand", "profit", "profit_share"};
        if (const auto fault = fuzz::fault_of_document(document, may_be_negative)) throw WrongCase{*fault, text};
        if (render::to_text(reports::quote_report(plant_, answer, {1, std::nullopt})).empty())
            throw WrongCase{"an answer without a page", text};
    }

    plant::Plant plant_;
    engine::Engine engine_;
    std::vector<std::string> texts_;
};

}  // namespace

int main(int count, char** words) {
    const RequestFuzzer fuzzer;
    return fuzz::run_fuzzer(count, words, [&](fuzz::Draws& draws) { return fuzzer.run_case(draws); });
}
