// A label of the cost sheet stands once in the sources that make reports: a second one would drift from it.
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

#include "host/engine/engine.hpp"
#include "host/quoting/quote.hpp"
#include "host/reports/quote_report.hpp"
#include "tests/support/generated_plants.hpp"

using namespace flutebook;

namespace {

using render::ReportTable;

std::string sources_of_reports() {
    std::ostringstream text;
    for (const auto& file : std::filesystem::directory_iterator(FLUTEBOOK_SOURCE_DIR "/host/reports"))
        text << std::ifstream(file.path()).rdbuf() << '\n';
    return text.str();
}

void add_labels(const ReportTable& table, std::set<std::string>& labels) {
    for (const auto& column : table.columns) labels.insert({column.title, column.unit});
    for (const auto& row : table.rows) labels.insert(render::whole_text(row.cells[0]));
}

// Titles of sections, heads of columns with their units and bases, first cells of rows, labels of facts.
std::set<std::string> labels_of(const render::Report& report) {
    std::set<std::string> labels;
    for (const auto& fact : report.heading->facts) labels.insert(fact.label);
    for (const auto& section : report.sections) {
        labels.insert(section.title);
        for (const auto& block : section.blocks) {
            if (const auto* table = std::get_if<ReportTable>(&block)) add_labels(*table, labels);
            if (const auto* facts = std::get_if<render::Facts>(&block))
                for (const auto& fact : *facts) labels.insert(fact.label);
        }
    }
    return labels;
}

std::size_t times_in(const std::string& text, const std::string& part) {
    std::size_t count = 0;
    for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + part.size())) ++count;
    return count;
}

}  // namespace

TEST_CASE("each label of a cost sheet that says more than one word stands once in the sources of reports") {
    const fixture::Generated order = fixture::generated_order(1);
    const engine::Engine engine = engine::Engine::start(order.plant, FLUTEBOOK_PLUGIN_DIR);
    const answers::RequestAnswer answer = quoting::quote(order.plant, engine, order.request, {});
    const std::set<std::string> labels = labels_of(reports::quote_report(order.plant, answer, {}));
    const std::string sources = sources_of_reports();
    std::size_t found = 0;
    for (const std::string& label : labels) {
        if (label.find(' ') == std::string::npos) continue;  // "fed" and "lost" are words, and stand in many tables
        const std::size_t times = times_in(sources, "\"" + label + "\"");
        CAPTURE(label);
        CHECK(times <= 1);
        found += times;
    }
    CHECK(found > 8);
}
