// One run of `quote`: every request is read before the first is answered.
//
// Each request is independent: one that is refused, or that a model fails on, gets no answer and stops no other. Files
// that share a request number are refused, because their answers could not be told apart. With --save each quote is
// stored in the ledger, which is created where it is missing.
#include "host/cli/quote_run.hpp"

#include <fmt/format.h>

#include <map>
#include <utility>

#include "host/answers/quote_json.hpp"
#include "host/base/errors.hpp"
#include "host/base/place.hpp"
#include "host/base/quoted_text.hpp"
#include "host/beside/answer.hpp"
#include "host/cli/offer_file.hpp"
#include "host/command_line/whole_file.hpp"
#include "host/orders/enquiry.hpp"
#include "host/orders/request.hpp"
#include "host/orders/request_text.hpp"
#include "host/quoting/approval.hpp"
#include "host/quoting/quote.hpp"
#include "host/render/html_report.hpp"
#include "host/render/text_report.hpp"
#include "host/reports/price_list.hpp"
#include "host/saved_quotes/saved_quote.hpp"
#include "host/services/clock_warning.hpp"
#include "host/workbooks/quote_workbook.hpp"
#include "ledger/reading/entries.hpp"

namespace flutebook::cli {

namespace {

using orders::Request;

// A request that was read without complaint.
struct RequestFile {
    std::string file, text;
    std::string number, place;            // and where it stands
    std::optional<base::Node> line = {};  // what a person typed: its errors stand at columns of the line
};

// One run of the command: costs the requests one after the other and keeps the highest exit code.
class QuoteRun {
public:
    QuoteRun(const workplace::Workplace& workplace, const QuoteCommand& asked, const RunContext& context)
        : workplace_(workplace),
          asked_(asked),
          context_(context),
          output_(context.output),
          check_(workplace.engine.extras_check(workplace.plant)),
          options_{asked.threads, asked.explain, asked.provided, false, asked.beside.way},
          document_(workplace.plant, workplace.warnings, options_),
          list_(workplace.plant) {
        options_.has_drawings = !asked.html_file.empty() || !asked.offer_file.empty();
        if (!asked.html_file.empty()) html_.emplace(asked.html_file, if_there(asked.is_replacing));
        if (!asked.workbook_file.empty()) workbook_.emplace(asked.workbook_file, if_there(asked.is_replacing));
        if (asked.beside.is_any()) beside_.emplace(workplace.plant, asked.beside, options_);
        if (!asked.offer_file.empty()) offer_.emplace(asked.offer_file, if_there(asked.is_replacing), workplace.plant);
    }

    ExitCode run() {
        if (!asked_.is_json) warn(workplace_.warnings);
        const std::vector<RequestFile> requests = only_number_of_its_kind(read_all());
        if (asked_.is_json) output_.write(beside_ ? beside_->begin() : document_.begin());
        try {
            answer_all(requests);
        } catch (...) {
            // What ends the run leaves a document of what was done.
            end_answer();
            throw;
        }
        end_answer();
        if (html_) html_->write(render::to_html(pages_));
        if (offer_) around_one_request([&] { offer_->write(); });
        refuse_unused_sheet();
        return worst_;
    }

private:
    void end_answer() {
        if (asked_.is_json) output_.write(beside_ ? beside_->end() : document_.end());
        show_list();
    }

    // Text is rendered only where it is printed.
    [[nodiscard]] bool prints_text() const { return !asked_.is_json && !html_; }

    // Several requests are one table, unless more is asked of each than a line.
    [[nodiscard]] bool is_list() const {
        return prints_text() && !beside_ && asked_.files.size() > 1 && !asked_.sheets.is_any() && !asked_.explain;
    }

    // The one place where a request's errors are caught: `work` is costing or reading one.
    template <typename Work>
    void around_one_request(const Work& work) {
        try {
            work();
        } catch (const InputError& error) {
            complain(error.lines());
            worst_ = worse(worst_, error.whose() == InputError::Whose::plant ? ExitCode::unfit : ExitCode::refused);
        } catch (const ModelError& error) {
            complain(error.lines());
            worst_ = worse(worst_, ExitCode::unfit);
        }
    }

    // A list of ten thousand is held as the texts it was read from: a request as it is understood is many times as
    // large, and is made again when its turn has come.
    std::vector<RequestFile> read_all() {
        std::vector<RequestFile> result;
        for (const std::string& file : asked_.files)
            around_one_request([&] {
                if (is_enquiry(file)) return result.push_back(read_line(file));
                Request request = orders::read_request(workplace_.plant, file, asked_.date, check_);
                std::string place = base::place_text(request.places, "request", {file});
                result.push_back({file, std::move(request.text), std::move(request.number), std::move(place)});
            });
        return result;
    }

    // Says what was understood, so that a slip is seen before the price is passed on.
    RequestFile read_line(const std::string& line) {
        base::Node tree = orders::read_enquiry(workplace_.plant, line, RunContext::today());
        RequestFile result{orders::enquiry_name, orders::request_text(tree), "", "", std::move(tree)};
        Request request = read_again(result);
        if (!asked_.is_json) output_.write("Understood: " + orders::enquiry_in_words(*result.line) + "\n\n");
        result.place = base::place_text(request.places, "request", request.place);
        result.number = std::move(request.number);
        return result;
    }

    [[nodiscard]] Request read_again(const RequestFile& request) const {
        if (request.line)
            return orders::read_request(workplace_.plant, *request.line, request.file, request.text, asked_.date,
                                        check_);
        return orders::read_request(workplace_.plant, request.file, request.text, asked_.date, check_);
    }

    std::vector<RequestFile> only_number_of_its_kind(const std::vector<RequestFile>& all) {
        std::map<std::string, std::vector<const RequestFile*>> by_number;
        for (const RequestFile& request : all) by_number[request.number].push_back(&request);
        for (const auto& [number, same] : by_number)
            for (std::size_t i = 1; i < same.size(); ++i) refuse_same_number(*same[0], *same[i]);
        std::vector<RequestFile> kept;
        for (const RequestFile& request : all)
            if (by_number[request.number].size() == 1) kept.push_back(request);
        return kept;
    }

    void refuse_same_number(const RequestFile& first, const RequestFile& again) {
        complain(
            {fmt::format("{}: request: the number is given twice: found {} in {} as well; give each request its "
                         "own number, and name each file once",
                         again.place, base::shown(again.number), first.file)});
        worst_ = worse(worst_, ExitCode::refused);
    }

    void answer_all(const std::vector<RequestFile>& requests) {
        Progress progress(requests.size(), Progress::Clock::now());
        const bool is_watched = is_terminal_error() && (!prints_text() || is_list() || !is_terminal_output());
        for (std::size_t done = 0; done < requests.size() && output_.is_open(); ++done) {
            around_one_request([&] { answer(requests[done]); });
            const auto line = is_watched ? progress.line(done + 1, Progress::Clock::now()) : std::nullopt;
            if (line) show_progress(*line);
        }
        if (progress.was_shown()) show_progress("");
        if (store_) warn(services::clock_warnings(*store_));
    }

    void answer(const RequestFile& file) {
        const Request request = read_again(file);
        if (beside_) return answer_beside(request);
        answers::RequestAnswer result = quoting::quote(workplace_.plant, workplace_.engine, request, options_);
        if (result.model_fault) {
            complain({*result.model_fault});
            worst_ = worse(worst_, ExitCode::unfit);
        } else if (!result.is_complete()) {
            worst_ = worse(worst_, ExitCode::refused);
        }
        show(result, file.line ? orders::enquiry_in_words(*file.line) : "");
    }

    void answer_beside(const Request& request) {
        const beside::Answer answer = beside::answer(workplace_, request, asked_.beside, options_);
        if (!beside::is_complete(answer)) worst_ = worse(worst_, ExitCode::refused);
        output_.write(asked_.is_json
                          ? beside_->add(answer)
                          : render::to_text(beside::report(workplace_.plant, answer, asked_.beside), text_columns()) +
                                "\n");
    }

    void show(answers::RequestAnswer& result, const std::string& understood) {
        std::string number;
        if (asked_.is_saved && saved_quotes::can_be_saved(result) && is_approved(result)) number = save(result);
        if (asked_.is_json) output_.write(document_.add(result, number, understood));
        if (offer_) offer_->add(result, number);
        if (workbook_ && offers::can_be_offered(result)) write_workbook(result);
        if ((html_ || prints_text()) && !result.model_fault) show_page(result);
        if (number.empty() || asked_.is_json) return;
        if (is_list())
            saved_.push_back(fmt::format("{} saved as {}\n", result.request.number, number));
        else
            output_.write(fmt::format("saved as {}\n\n", number));
    }

    void show_page(const answers::RequestAnswer& result) {
        if (const auto& quantity = asked_.sheets.quantity())
            for (const auto& item : result.quantities)
                is_sheet_found_ = is_sheet_found_ || item.quantity() == *quantity;
        if (is_list()) return list_.add(result);
        if (prints_text())
            output_.write(render::to_text(reports::quote_report(workplace_.plant, result, options_, asked_.sheets),
                                          text_columns()) +
                          "\n");
        if (html_) pages_.push_back(reports::quote_report(workplace_.plant, result, options_));
    }

    void write_workbook(const answers::RequestAnswer& result) {
        const render::FormulaBook book =
            workbooks::quote_workbook(workplace_.plant, workplace_.engine, result, options_);
        const int year = static_cast<int>(result.request.date.year());
        workbook_->write_with(
            [&](const std::string& unfinished) { return render::write_formula_book(unfinished, book, year); });
    }

    void show_list() {
        if (!list_.is_empty()) output_.write(render::to_text(list_.report(), text_columns()) + "\n");
        for (const std::string& line : saved_) output_.write(line);
    }

    void refuse_unused_sheet() {
        if (!asked_.sheets.quantity() || is_sheet_found_ || !prints_text()) return;
        complain(
            {fmt::format("--sheet: no request asks for this quantity: found {:.0f}; name a quantity of the "
                         "request, or leave it out for all",
                         *asked_.sheets.quantity())});
        worst_ = worse(worst_, ExitCode::refused);
    }

    // Keeps who approved with what is saved; a quote that somebody must approve of first is shown and not saved.
    bool is_approved(answers::RequestAnswer& result) {
        quoting::ApprovalVerdict verdict = quoting::approve(workplace_.plant, result, asked_.approver);
        result.approval = std::move(verdict.approval);
        if (verdict.refusals.empty()) return true;
        result.approval.reset();
        complain(verdict.refusals);
        worst_ = worse(worst_, ExitCode::refused);
        return false;
    }

    std::string save(const answers::RequestAnswer& result) {
        if (!store_) store_ = ledger::Store::open_for_writing(context_.ledger, ledger::IfMissing::create);
        const auto number = saved_quotes::save_quote(*store_, workplace_, {result, options_}, context_.person());
        output_.acknowledge(fmt::format("request {} saved as {}; head {}", base::shown(result.request.number), number,
                                        ledger::head(*store_)->hash));
        return number;
    }

    const workplace::Workplace& workplace_;
    const QuoteCommand& asked_;
    const RunContext& context_;
    std::optional<ledger::Store> store_;  // opened for the first quote that is stored
    Output& output_;
    orders::ExtrasCheck check_;
    answers::QuoteOptions options_;
    answers::QuoteStream document_;               // for --json
    std::optional<beside::AnswerStream> beside_;  // for --json, where something else than a plain quote answers
    std::optional<WholeFile> html_;
    std::vector<render::Report> pages_;  // of the HTML file
    std::optional<OfferFile> offer_;
    std::optional<WholeFile> workbook_;
    reports::PriceList list_;         // of several requests as text
    std::vector<std::string> saved_;  // the lines of the list's saved quotes
    bool is_sheet_found_ = false;     // of the quantity that a sheet was asked for
    ExitCode worst_ = ExitCode::done;
};

}  // namespace

ExitCode run_quotes(const workplace::Workplace& workplace, const QuoteCommand& asked, const RunContext& context) {
    return QuoteRun(workplace, asked, context).run();
}

}  // namespace flutebook::cli
