#include "host/cli/post_command.hpp"

#include <filesystem>
#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"
#include "host/answers/post_json.hpp"
#include "host/cli/person.hpp"
#include "host/render/text_report.hpp"
#include "host/reports/ledger_reports.hpp"
#include "host/services/posting/post.hpp"

namespace flutebook::cli {

namespace {

using Keep = answers::PostOptions::Keep;

answers::PostAnswer post(const plant::Plant& plant, const std::string& ledger, const answers::PostOptions& asked) {
    if (!std::filesystem::exists(ledger)) {
        // A ledger is not made for documents that are refused.
        auto nowhere = ledger::Store::in_memory();
        auto tried = services::post(plant, nowhere, {asked.files, asked.who, Keep::nothing});
        if (asked.keep == Keep::nothing) return tried;
    }
    auto store = ledger::Store::open_for_writing(ledger, ledger::IfMissing::create);
    return services::post(plant, store, asked);
}

}  // namespace

ExitCode run_post(const plant::Plant& plant, const std::string& ledger, const PostCommand& asked, Output& output) {
    const auto answer = post(plant, ledger, {asked.files, person_at_work(), asked.keep});
    output.write(asked.form == OutputFormat::json
                     ? answers::document_text("post", answers::post_json(answer, asked.keep))
                     : render::to_text(reports::post_report(plant, answer, asked.keep)));
    return ExitCode::done;
}

}  // namespace flutebook::cli
