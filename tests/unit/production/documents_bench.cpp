#include "tests/unit/production/documents_bench.hpp"

#include <unistd.h>

#include <catch2/catch.hpp>
#include <fstream>

#include "host/production/entry_from_row.hpp"
#include "tests/support/small_plant.hpp"

namespace flutebook::fixture {

using orders::OrderRecord;

namespace {

// In memory where the machine has such a place: thousands are written and read once.
std::filesystem::path place_for_texts() {
    const std::filesystem::path in_memory = "/dev/shm";
    return std::filesystem::is_directory(in_memory) && access(in_memory.c_str(), W_OK) == 0
               ? in_memory
               : std::filesystem::temp_directory_path();
}

}  // namespace

TextFile::TextFile(const std::string& text) {
    std::string form = (place_for_texts() / "flutebook-document-XXXXXX").string();
    const int result = mkstemp(form.data());
    REQUIRE(result >= 0);
    close(result);
    path_ = form;
    rewrite(text);
}

void TextFile::rewrite(const std::string& text) const {
    std::ofstream(path_, std::ios::binary) << text;
}

TextFile::~TextFile() {
    std::filesystem::remove(path_);
}

const OrderRecord* KnownBook::find_order(const std::string& number) {
    const auto known = orders.find(number);
    return known == orders.end() ? nullptr : &known->second;
}

std::optional<double> KnownBook::last_issue_price(const std::string&, const std::string& paper, base::Date) {
    const auto known = issue_prices.find(paper);
    return known == issue_prices.end() ? std::nullopt : std::optional(known->second);
}

bool KnownBook::is_unopened(const std::string&, const std::string&, base::Date) {
    return is_new;
}

namespace {

// What all three orders share: the board, the machines and what they may lose.
OrderRecord on_plain_board(const std::string& number) {
    using Kind = plant::Converter::Kind;
    OrderRecord order{};
    order.number = number;
    order.quote = "Q000001";
    order.quantity = 1000;
    order.board = "B-140";
    order.plies = {{"KL140", 140, 1, 0}, {"SC127", 125, 1.8, 10}, {"TL125", 125, 1, 0}};
    order.grammage_gsm = 500;
    order.adhesive_gsm = 10;
    order.adhesive_rate = 0.6;
    order.corrugator = "C1";
    order.roll_width_mm = 1850;
    order.ups = 1;
    order.corrugators = {{"C1", 0.02, 0.01, 25}, {"C2", 0.04, 0.02, 10}};
    order.converters = {{"PR1", Kind::printer, 0.02, 50},
                        {"DC1", Kind::die_cutter, 0.05, 60},
                        {"FG1", Kind::folder_gluer, 0.01, 40},
                        {"FG2", Kind::folder_gluer, 0.10, 20}};
    return order;
}

OrderRecord on_plain_sheets(const std::string& number) {
    auto order = on_plain_board(number);
    order.outs = 3;
    order.slit_mm = 600;
    order.chop_mm = 2000;
    order.sheet_area_m2 = 1.2;
    order.box_area_m2 = 1;
    return order;
}

}  // namespace

OrderRecord box_order(const std::string& number) {
    auto order = on_plain_sheets(number);
    order.route = {"FG1"};
    order.parting = 1;
    return order;
}

OrderRecord sheet_order(const std::string& number) {
    auto order = on_plain_sheets(number);
    order.box_area_m2 = order.sheet_area_m2;
    order.parting = 0;
    return order;
}

OrderRecord long_order(const std::string& number) {
    auto order = on_plain_board(number);
    order.outs = 2;
    order.slit_mm = 800;
    order.chop_mm = 1500;
    order.sheet_area_m2 = 1.2;
    order.ups = 6;
    order.box_area_m2 = 0.15;
    order.route = {"PR1", "DC1", "FG1"};
    order.parting = 2;
    return order;
}

OrderRecord hand_order(const std::string& number) {
    auto order = on_plain_board(number);
    using Kind = plant::Converter::Kind;
    order.outs = 2;
    order.slit_mm = 800;
    order.chop_mm = 1500;
    order.sheet_area_m2 = 1.2;
    order.ups = 8;
    order.box_area_m2 = 0.15;
    order.converters.push_back({"SL1", Kind::slitter, 0.02, 4});
    order.converters.push_back({"ST1", Kind::stitcher, 0.05, 2});
    order.converters.push_back({"HP1", Kind::hand, 0.01, 0});
    order.converters.push_back({"HP2", Kind::hand, 0.10, 0});
    order.route = {"SL1", "ST1", "HP1"};
    order.parting = 1;
    return order;
}

plant::Plant paper_plant() {
    auto plant = small_plant();
    for (const auto& [code, kind] :
         {std::pair("SL1", plant::Converter::Kind::slitter), std::pair("ST1", plant::Converter::Kind::stitcher),
          std::pair("HP1", plant::Converter::Kind::hand), std::pair("HP2", plant::Converter::Kind::hand)}) {
        plant::Converter machine = plant.converters[converter_index(plant, "FG1")];
        machine.code = code;
        machine.kind = kind;
        plant.converters.push_back(machine);
    }
    using Deduction = plant::Mill::Deduction;
    plant.shifts = {"early", "late"};
    plant.mills = {{"Northweir", 0.10, Deduction::dry_matter, {}}, {"Saltmarsh", 0.12, Deduction::point_for_point, {}}};
    return plant;
}

std::vector<production::ReadLine> read_lines(const std::string& text) {
    const TextFile file(text);
    auto opened = production::Document::open(file.path());
    if (const auto* none = std::get_if<production::Document::UnreadableDocument>(&opened)) FAIL(none->why);
    std::vector<production::ReadLine> lines;
    auto& document = std::get<production::Document>(opened);
    while (auto line = document.next()) lines.push_back(std::move(*line));
    return lines;
}

namespace {

std::vector<std::string_view> split(std::string_view line) {
    std::vector<std::string_view> fields;
    for (std::size_t comma = line.find(','); comma != std::string_view::npos; comma = line.find(',')) {
        fields.push_back(line.substr(0, comma));
        line.remove_prefix(comma + 1);
    }
    fields.push_back(line);
    return fields;
}

}  // namespace

production::RowResult worth_of(const std::string& header, const std::string& row, production::Book& book) {
    const auto names = split(header);
    const auto form = production::find_form(names);
    if (const auto* why = std::get_if<std::string>(&form)) FAIL(*why);
    production::RowReader rows(*std::get<const production::DocumentFormat*>(form), names.size(), ',');
    const auto read = rows.read({2, split(row), std::nullopt});
    if (const auto* objections = std::get_if<production::RowErrors>(&read)) return *objections;
    static const auto plant = paper_plant();
    return production::entry_from_row(std::get<production::DocumentRow>(read), plant, book);
}

ledger::Draft draft_of(const std::string& header, const std::string& row, production::Book& book) {
    auto entry_from_row = worth_of(header, row, book);
    if (const auto* objections = std::get_if<production::RowErrors>(&entry_from_row))
        FAIL(objections->front().column + ": " + objections->front().text);
    return std::get<ledger::Draft>(entry_from_row);
}

std::vector<std::string> objections_to(const std::string& header, const std::string& row, production::Book& book) {
    const auto entry_from_row = worth_of(header, row, book);
    std::vector<std::string> texts;
    if (const auto* objections = std::get_if<production::RowErrors>(&entry_from_row))
        for (const auto& objection : *objections) texts.push_back(objection.column + ": " + objection.text);
    return texts;
}

std::int64_t moved(const ledger::Draft& draft, const std::string& from, const std::string& to,
                   const std::string& cause) {
    std::int64_t sum = 0;
    for (const auto& movement : draft.movements)
        if (movement.from == from && movement.to == to && movement.cause == cause) sum += movement.mass.count();
    return sum;
}

std::int64_t moved_of(const ledger::Draft& draft, const std::string& material, const std::string& from,
                      const std::string& to, const std::string& cause) {
    std::int64_t sum = 0;
    for (const auto& movement : draft.movements)
        if (movement.material == material && movement.from == from && movement.to == to && movement.cause == cause)
            sum += movement.mass.count();
    return sum;
}

std::int64_t expected(const ledger::Draft& draft, const std::string& cause) {
    std::int64_t sum = 0;
    for (const auto& allowed : draft.expected)
        if (allowed.cause == cause) sum += allowed.mass.count();
    return sum;
}

}  // namespace flutebook::fixture
