#include "host/month_answers/document_trial.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"

namespace flutebook::answers {

namespace {

Json told_json(const DocumentTrial& answer, const std::vector<std::string>& of_file,
               std::vector<std::string> TriedRow::*of_row) {
    Json list = Json::array();
    for (const std::string& text : of_file) list.push_back({{"line", Json()}, {"fault", text}});
    for (const TriedRow& row : answer.rows)
        for (const std::string& text : row.*of_row) list.push_back({{"line", row.line}, {"fault", text}});
    return list;
}

}  // namespace

std::string document_trial_document(const DocumentTrial& answer) {
    Json tree;
    tree["file"] = answer.file;
    tree["refused"] = !answer.answer.has_value();
    tree["rows"] = answer.all_rows;
    tree["faults"] = told_json(answer, answer.faults, &TriedRow::faults);
    tree["doubts"] = told_json(answer, answer.warnings, &TriedRow::doubts);
    tree["would_post"] = answer.answer ? Json(answer.answer->posted) : Json();
    tree["would_skip"] = answer.answer ? Json(answer.answer->skipped) : Json();
    return document_text("document-trial", tree);
}

}  // namespace flutebook::answers
