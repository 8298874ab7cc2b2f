#include "host/reports/post_text.hpp"

#include <fmt/format.h>

#include "host/render/number_text.hpp"
#include "host/render/table.hpp"
#include "host/render/text.hpp"

namespace flutebook::reports {

namespace {

std::string count_text(std::int64_t count) {
    return render::number_text(static_cast<double>(count), 0);
}

std::string rows_text(std::int64_t count) {
    return count_text(count) + (count == 1 ? " row" : " rows");
}

std::string headline(const services::PostAnswer& answer, services::PostOptions::Keep keep) {
    std::string text = keep == services::PostOptions::Keep::all ? "Posted " : "Would post ";
    text += rows_text(answer.posted);
    if (answer.posted == 1) text += fmt::format(", entry {}", answer.first_entry);
    if (answer.posted > 1)
        text += fmt::format(", entries {} to {}", answer.first_entry, answer.first_entry + answer.posted - 1);
    if (answer.skipped > 0) text += fmt::format("; {} posted before", rows_text(answer.skipped));
    return text + "\n";
}

std::string files_text(const services::PostAnswer& answer) {
    render::Table table({render::Align::flexible, render::Align::left, render::Align::right, render::Align::right}, 2);
    table.add({"file", "document", "posted", "before"});
    for (const auto& file : answer.files)
        table.add({file.file, name_of(file.kind), count_text(file.posted), count_text(file.skipped)});
    return table.text();
}

std::string flows_text(const services::PostAnswer& answer, const std::string& currency) {
    if (answer.flows.empty()) return "";
    render::Table table(
        {render::Align::left, render::Align::left, render::Align::flexible, render::Align::right, render::Align::right},
        2);
    table.add({"from", "to", "cause", "kg", currency});
    for (const auto& flow : answer.flows)
        table.add({flow.from, flow.to, flow.cause,
                   flow.mass == Grams() ? "" : render::number_text(flow.mass.to_kg(), 3),
                   flow.money == Money() ? "" : render::money_text(flow.money)});
    return "\nWhat they moved\n" + table.text();
}

}  // namespace

std::string post_text(const plant::Plant& plant, const services::PostAnswer& answer, services::PostOptions::Keep keep) {
    std::string text = headline(answer, keep) + files_text(answer) + flows_text(answer, plant.currency);
    if (keep == services::PostOptions::Keep::nothing) return text + "\nA dry run: nothing was kept.\n";
    return text + "\nhead  " + answer.head + "\n";
}

}  // namespace flutebook::reports
