#include "host/cli/quote_command.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"
#include "host/answers/place_text.hpp"
#include "host/answers/quote_json.hpp"
#include "host/base/errors.hpp"
#include "host/base/quoted_text.hpp"
#include "host/cli/person.hpp"
#include "host/cli/progress.hpp"
#include "host/cli/whole_file.hpp"
#include "host/orders/request.hpp"
#include "host/render/html_report.hpp"
#include "host/render/text_report.hpp"
#include "host/reports/quote_report.hpp"
#include "host/services/quoting/quote.hpp"
#include "host/services/quoting/saved_quote.hpp"

namespace flutebook::cli {

namespace {

using orders::Request;

// One run of the command: the requests one after the other, and the worst that happened.
class QuoteRun {
public:
    QuoteRun(const services::Workplace& workplace, const std::string& ledger, const QuoteCommand& asked, Output& output)
        : workplace_(workplace),
          ledger_(ledger),
          asked_(asked),
          output_(output),
          desk_asked_{asked.threads, asked.explain},
          document_(answers::quote_document(workplace.plant)) {
        if (!asked.html_file.empty()) html_.emplace(asked.html_file);
    }

    ExitCode run() {
        std::vector<Request> requests = only_number_of_its_kind(read_all());
        Progress progress(requests.size(), Progress::Clock::now());
        const bool is_watched = is_terminal_error() && (!prints_text() || !is_terminal_output());
        for (std::size_t done = 0; done < requests.size() && output_.is_open(); ++done) {
            answer(requests[done]);
            const auto line = is_watched ? progress.line(done + 1, Progress::Clock::now()) : std::nullopt;
            if (line) show_progress(*line);
        }
        if (progress.was_shown()) show_progress("");
        if (asked_.form == OutputFormat::json) output_.write(answers::json_text(document_));
        if (html_) html_->write(render::to_html(pages_));
        return worst_;
    }

private:
    // Text is made only where it is printed.
    [[nodiscard]] bool prints_text() const { return asked_.form == OutputFormat::text && !html_; }

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

    std::vector<Request> read_all() {
        std::vector<Request> result;
        for (const std::string& file : asked_.files)
            around_one_request([&] { result.push_back(orders::read_request(workplace_.plant, file, asked_.date)); });
        return result;
    }

    std::vector<Request> only_number_of_its_kind(const std::vector<Request>& all) {
        std::map<std::string, std::vector<const Request*>> by_number;
        for (const Request& request : all) by_number[request.number].push_back(&request);
        for (const auto& [number, same] : by_number)
            for (std::size_t i = 1; i < same.size(); ++i) refuse_same_number(*same[0], *same[i]);
        const auto shares_number = [&](const Request& request) { return by_number[request.number].size() > 1; };
        std::vector<Request> kept;
        for (const Request& request : all)
            if (!shares_number(request)) kept.push_back(request);
        return kept;
    }

    void refuse_same_number(const Request& first, const Request& again) {
        const auto item = again.places.find("request");
        const std::string where = item == again.places.end() ? again.place.file : answers::place_text(item->second);
        complain(
            {fmt::format("{}: request: the number is given twice: {} stands in {} as well; give each enquiry its "
                         "own number, and name each file once",
                         where, base::shown(again.number), first.place.file)});
        worst_ = worse(worst_, ExitCode::refused);
    }

    void answer(const Request& request) {
        around_one_request([&] {
            const answers::RequestAnswer result =
                services::quote(workplace_.plant, workplace_.engine, request, desk_asked_);
            if (result.model_fault) {
                complain({*result.model_fault});
                worst_ = worse(worst_, ExitCode::unfit);
            } else if (!result.is_complete()) {
                worst_ = worse(worst_, ExitCode::refused);
            }
            show(result);
        });
    }

    void show(const answers::RequestAnswer& result) {
        std::string number;
        if (asked_.keep == QuoteCommand::Keep::quotes && services::can_be_saved(result)) number = save(result);
        if (asked_.form == OutputFormat::json) {
            answers::Json tree = answers::request_json(workplace_.plant, result, desk_asked_);
            if (!number.empty()) tree["saved"] = number;
            document_["requests"].push_back(std::move(tree));
        }
        if ((html_ || prints_text()) && !result.model_fault) show_page(result);
        if (asked_.form == OutputFormat::text && !number.empty()) output_.write(fmt::format("saved as {}\n\n", number));
    }

    void show_page(const answers::RequestAnswer& result) {
        render::Report page = reports::quote_report(workplace_.plant, result, desk_asked_);
        if (prints_text()) output_.write(render::to_text(page) + "\n");
        if (html_) pages_.push_back(std::move(page));
    }

    std::string save(const answers::RequestAnswer& result) {
        if (!store_) store_ = ledger::Store::open_for_writing(ledger_, ledger::IfMissing::create);
        return services::save_quote(*store_, workplace_, {result, desk_asked_}, person_at_work());
    }

    const services::Workplace& workplace_;
    const std::string& ledger_;
    std::optional<ledger::Store> store_;  // opened for the first quote that is kept
    const QuoteCommand& asked_;
    Output& output_;
    answers::QuoteOptions desk_asked_;
    answers::Json document_;
    std::optional<WholeFile> html_;
    std::vector<render::Report> pages_;  // for the file
    ExitCode worst_ = ExitCode::done;
};

}  // namespace

ExitCode run_quote(const services::Workplace& workplace, const std::string& ledger, const QuoteCommand& asked,
                   Output& output) {
    return QuoteRun(workplace, ledger, asked, output).run();
}

}  // namespace flutebook::cli
