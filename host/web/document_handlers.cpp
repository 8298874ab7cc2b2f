// Production documents: sent and shown dry, then posted as they were shown.
#include <fmt/format.h>

#include <memory>
#include <vector>

#include "host/month_answers/ledger_answer.hpp"
#include "host/month_pages/documents_page.hpp"
#include "host/month_pages/month_trial.hpp"
#include "host/month_reports/ledger_reports.hpp"
#include "host/services/posting/document_trial.hpp"
#include "host/services/posting/post.hpp"
#include "host/web/documents.hpp"
#include "host/web/handlers.hpp"
#include "host/web/query_values.hpp"
#include "ledger/reading/month.hpp"

namespace flutebook::web {

namespace {

using answers::PostOptions;

constexpr const char* unnamed = "document";

// What messages call it: the name of the file that was dropped.
std::string name_of(const Fields& fields) {
    std::string name = unnamed;
    QueryValues values(fields);
    values.take("name", cli::read_line(name));
    values.throw_if_any_is_wrong();
    return name.size() > 200 ? name.substr(name.size() - 200) : name;
}

SentDocument sent_document(const Call& call) {
    if (call.form.has("text")) return {name_of(call.form), call.form.at("text")};
    return {name_of(call.target.query), call.request.body};
}

PostOptions options(const Call& call, const SentDocument& sent, const DocumentFile& file, PostOptions::Keep keep) {
    PostOptions asked{{file.path()}, call.session.person, keep, Call::today()};
    asked.names[file.path()] = sent.name;
    return asked;
}

answers::PostAnswer post(const Call& call, const SentDocument& sent, PostOptions::Keep keep) {
    const DocumentFile file(sent.text);
    return services::post(call.plant(), call.desk.ledger, options(call, sent, file, keep));
}

answers::DocumentTrial trial_of(const Call& call, const SentDocument& sent) {
    const DocumentFile file(sent.text);
    ledger::Store store = has_ledger(call)
                              ? ledger::Store::open_for_writing(call.desk.ledger, ledger::IfMissing::refuse)
                              : ledger::Store::in_memory();
    return services::try_document(call.plant(), store, options(call, sent, file, PostOptions::Keep::nothing),
                                  sent.name);
}

}  // namespace

Outcome show_documents(const Call& call) {
    return page(pages::documents_page(call.frame(pages::Place::months)));
}

// A dry run reads the ledger as posting does, in the writer's turn: what it shows is what would be posted next.
Outcome try_document(const Call& call) {
    const auto sent = std::make_shared<SentDocument>(sent_document(call));
    return Act([&call, sent] {
        Response response;
        if (call.wants_json())
            response =
                json(answers::post_document(post(call, *sent, PostOptions::Keep::nothing), PostOptions::Keep::nothing));
        const std::string digest = call.desk.documents.keep(*sent);
        if (!call.wants_json())
            response = page(pages::document_trial_page(call.frame(pages::Place::months), call.plant(),
                                                       trial_of(call, *sent), digest, sent->text));
        response.headers.emplace_back("location", pages::Address("/documents").at(digest).text());
        return response;
    });
}

Outcome post_document(const Call& call) {
    const auto sent = call.desk.documents.find(call.parts.front());
    if (!sent)
        return refused(call, 404, {"document: is no longer kept here: send it again, and look at what it would post"});
    const auto document = std::make_shared<SentDocument>(*sent);
    return Act([&call, document] {
        const auto answer = post(call, *document, PostOptions::Keep::all);
        if (call.wants_json()) return json(answers::post_document(answer, PostOptions::Keep::all));
        std::vector<ledger::Month> months;
        if (answer.posted > 0) months = ledger::months_from_entry(opened_ledger(call), answer.first_entry);
        return page(
            pages::posted_document_page(call.frame(pages::Place::months), months, answer.warnings,
                                        month_reports::post_report(call.plant(), answer, PostOptions::Keep::all)));
    });
}

}  // namespace flutebook::web
