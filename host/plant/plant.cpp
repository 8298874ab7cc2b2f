// The plant as a whole: its files in turn, and the look-ups of what was read.
//
// A file that refers to another is read after it. An error in one file does not stop the reading of the next.
#include "host/plant/plant.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <system_error>
#include <utility>

#include "host/base/near_spellings.hpp"
#include "host/base/quoted_text.hpp"
#include "host/base/yaml/document.hpp"
#include "host/base/yaml/file.hpp"
#include "host/box_styles/styles_file.hpp"
#include "host/plant/plant_files.hpp"

namespace flutebook::plant {

namespace {

// As a person names a file: from where they stand.
std::string path_to(const std::string& folder, const std::string& name) {
    const auto trimmed = folder.substr(0, folder.find_last_not_of('/') + 1);
    if (trimmed == ".") return name;
    return trimmed + "/" + name;
}

// Where the files of a plant are, if not in its folder: as texts, or as trees.
struct KeptFiles {
    const FileTexts* texts = nullptr;
    const FileTrees* trees = nullptr;
};

// The files of a plant as documents, from its folder or from what is kept elsewhere. Fields refer into it.
class Folder {
public:
    Folder(std::string path, const KeptFiles& kept, base::Diagnostics& complaints)
        : path_(std::move(path)), texts_(kept.texts), trees_(kept.trees), complaints_(complaints) {
        if (texts_ != nullptr || trees_ != nullptr) return;
        std::error_code failure;
        if (std::filesystem::is_directory(path_, failure)) return;
        complaints_.add({path_, 0, 0}, "", "no such folder, expected the folder of a plant");
        complaints_.throw_if_any(InputError::Whose::plant);
    }

    // A field that reports no errors, if the file cannot be read.
    fields::Field file(const std::string& name, fields::Reading& reading) {
        const auto path = path_to(path_, name);
        if (trees_ != nullptr) return fields::Field(trees_->at(name), path, reading);
        auto& document = documents_.at(read_++);
        if (auto text = text_of(name, path)) {
            document = base::parse_document(*text, path, complaints_);
            taken_[name] = std::move(*text);
        }
        return document ? fields::Field(*document, path, reading) : fields::Field();
    }

    // Whether a file that may be missing is there.
    bool has(const std::string& name) const {
        if (trees_ != nullptr) return trees_->contains(name);
        if (texts_ != nullptr) return texts_->contains(name);
        std::error_code failure;
        const auto status = std::filesystem::symlink_status(path_to(path_, name), failure);
        return status.type() != std::filesystem::file_type::not_found;
    }

    // The texts of all files that were read.
    FileTexts take_texts() { return std::move(taken_); }

private:
    std::optional<std::string> text_of(const std::string& name, const std::string& path) const {
        if (texts_ == nullptr) return base::read_text_file(path, complaints_);
        const auto text = texts_->find(name);
        if (text != texts_->end()) return text->second;
        complaints_.add({path, 0, 0}, "", "not kept, expected the file");
        return std::nullopt;
    }

    std::string path_;
    const FileTexts* texts_;
    const FileTrees* trees_;
    base::Diagnostics& complaints_;
    std::array<std::optional<base::Node>, 8> documents_;
    FileTexts taken_;
    std::size_t read_ = 0;
};

template <typename T>
const T* find_by_code(const std::vector<T>& things, const std::string& code) {
    const auto found = std::find_if(things.begin(), things.end(), [&](const T& thing) { return thing.code == code; });
    return found == things.end() ? nullptr : &*found;
}

// Money may stand in the very file that names it.
std::string currency_in(const fields::Field& plant_file) {
    const base::Node* currency = plant_file.is_map() ? plant_file.node()->find("currency") : nullptr;
    return currency != nullptr && currency->kind == base::Node::Kind::text ? currency->text : "";
}

std::vector<std::string> further_names(const std::vector<Allowance>& allowances) {
    std::vector<std::string> names;
    for (const auto& allowance : allowances)
        for (const auto& further : allowance.further)
            if (std::find(names.begin(), names.end(), further.name) == names.end()) names.push_back(further.name);
    return names;
}

class PlantReader {
public:
    PlantReader(const std::string& folder, const KeptFiles& kept) : files_(folder, kept, complaints_) {}

    PlantReading read(const std::string& folder) {
        const fields::Field plant_file = file("plant.yaml");
        reading_.words.currency = currency_in(plant_file);
        plant_ = read_plant_file(fields::MapReader(plant_file));
        plant_.folder = folder;
        reading_.words = unit_words(plant_);
        read_board_making();
        read_machines();
        read_plugins();
        read_style_files();
        plant_.files = files_.take_texts();
        return {std::move(plant_), std::move(complaints_), knows_all_codes_, is_plugins_file_fit_};
    }

private:
    fields::Field file(const std::string& name) { return files_.file(name, reading_); }

    fields::Field table_of_codes(fields::MapReader& file, const char* key) {
        fields::Field table = file.field(key);
        knows_all_codes_ = knows_all_codes_ && table.is_map();
        return table;
    }

    void read_board_making() {
        fields::MapReader papers(file("papers.yaml"));
        const auto paper_table = table_of_codes(papers, "papers");
        plant_.papers = read_papers(paper_table);
        papers.finish();

        fields::MapReader flutes(file("flutes.yaml"));
        const auto flute_table = table_of_codes(flutes, "flutes");
        const Codes flute_codes("flute", flute_table);
        plant_.flutes = read_flutes(flute_table);
        plant_.allowances = read_allowances(flutes.field("allowances"), flute_codes);
        flutes.finish();

        fields::MapReader boards(file("boards.yaml"));
        const Codes paper_codes("paper", paper_table);
        auto read =
            read_boards(table_of_codes(boards, "boards"), {plant_.papers, paper_codes, plant_.flutes, flute_codes});
        plant_.boards = std::move(read.boards);
        plant_.suppliers = std::move(read.suppliers);
        plant_.bought_papers = std::move(read.papers);
        boards.finish();
    }

    void read_machines() {
        fields::MapReader machines(file("machines.yaml"));
        const auto corrugators = table_of_codes(machines, "corrugators");
        const auto converters = table_of_codes(machines, "converters");
        plant_.corrugators = read_corrugators(corrugators);
        plant_.converters = read_converters(converters);
        check_machine_codes(corrugators, converters);
        check_supplier_names(plant_, complaints_);
        plant_.dispatch = read_dispatch(machines.field("dispatch"));
        machines.finish();
    }

    // A style that a quote kept counts before the plant's of the same code, and that before the library's.
    void read_style_files() {
        std::vector<box_styles::Style> styles;
        const auto allowance_names = further_names(plant_.allowances);
        const std::size_t faults_before = complaints_.count();
        for (const char* name : {styles_file_name, kept_style_file}) {
            if (!files_.has(name)) continue;
            fields::MapReader form(file(name));
            for (auto& style : box_styles::read_styles(form.field("styles"),
                                                       {box_styles::style_library().entries, allowance_names})) {
                std::erase_if(styles, [&](const box_styles::Style& other) { return other.code == style.code; });
                styles.push_back(std::move(style));
            }
            form.finish();
        }
        knows_all_codes_ = knows_all_codes_ && complaints_.count() == faults_before;
        if (!styles.empty()) plant_.styles = box_styles::StyleList(std::move(styles));
    }

    void read_plugins() {
        const std::size_t faults_before = complaints_.count();
        auto plugins = read_plugin_file(fields::MapReader(file("plugins.yaml")));
        plant_.models = std::move(plugins.models);
        plant_.preferences = std::move(plugins.preferences);
        plant_.isolated = std::move(plugins.isolated);
        plant_.pinned = std::move(plugins.pinned);
        is_plugins_file_fit_ = complaints_.count() == faults_before;
        check_optional_models();
    }

    // plant.yaml names them, plugins.yaml lists them.
    void check_optional_models() {
        std::vector<std::string> listed;
        for (const ModelSettings& model : plant_.models) listed.push_back(model.id);
        for (const OptionalModel& model : plant_.optional_models)
            if (!model.id.empty() && std::find(listed.begin(), listed.end(), model.id) == listed.end())
                complaints_.add(model.place, "pricing.optional",
                                fmt::format("unknown model: found {}{}; name models that plugins.yaml lists",
                                            base::shown(model.id), base::did_you_mean(model.id, listed)));
    }

    base::Diagnostics complaints_;
    fields::Reading reading_{complaints_, {}};
    Folder files_;
    Plant plant_{};
    bool knows_all_codes_ = true, is_plugins_file_fit_ = true;
};

}  // namespace

const Paper::Price* Paper::price_on(base::Date day) const {
    const Price* in_force = nullptr;
    for (const auto& price : prices)
        if (price.from <= day) in_force = &price;
    return in_force;
}

const Board* Plant::find_board(const std::string& code) const {
    return find_by_code(boards, code);
}

const Paper& Plant::paper(std::size_t index) const {
    return index < papers.size() ? papers[index] : bought_papers.at(index - papers.size());
}

const Corrugator* Plant::supplier_of(const Board& board) const {
    return board.supplier ? &suppliers[*board.supplier] : nullptr;
}

const box_styles::Style* Plant::find_style(const std::string& code) const {
    return styles.find(code);
}

fields::UnitWords unit_words(const Plant& plant) {
    using Ton = fields::UnitWords::Ton;
    return {plant.currency, plant.units == Units::us ? Ton::short_ton : Ton::ambiguous};
}

const char* to_text(Units units) {
    return units == Units::us ? "us" : "metric";
}

const Paper* Plant::find_paper(const std::string& code) const {
    return find_by_code(papers, code);
}

const Corrugator* Plant::find_corrugator(const std::string& code) const {
    return find_by_code(corrugators, code);
}

const Converter* Plant::find_converter(const std::string& code) const {
    return find_by_code(converters, code);
}

const Allowance* Plant::find_allowance(const std::string& of_flutes, const std::string& style_code) const {
    const auto longest = [&](const std::string& flutes_key) {
        const Allowance* result = nullptr;
        for (const auto& allowance : allowances) {
            if (allowance.flutes != flutes_key || !style_code.starts_with(allowance.style_prefix)) continue;
            if (result == nullptr || allowance.style_prefix.size() > result->style_prefix.size()) result = &allowance;
        }
        return result;
    };
    if (const auto* item = longest(of_flutes)) return item;
    const auto plus = of_flutes.find('+');
    return plus == std::string::npos
               ? nullptr
               : longest(fmt::format("{}+{}", of_flutes.substr(plus + 1), of_flutes.substr(0, plus)));
}

namespace {

// Where none of a plant's files is, six lines would say the same.
void expect_plant_in(const std::string& folder) {
    const auto is_there = [&](const std::string& name) {
        std::error_code nothing;
        return std::filesystem::exists(std::filesystem::path(folder) / name, nothing);
    };
    const auto& names = plant_file_names();
    std::error_code unknown;
    if (!std::filesystem::exists(folder, unknown) || std::any_of(names.begin(), names.end(), is_there)) return;
    throw InputError(InputError::Whose::plant,
                     {fmt::format("{}: no plant: found none of {}; name the folder of a plant's files: --plant DIR",
                                  folder, fmt::join(names, ", "))});
}

Plant without_faults(PlantReading reading) {
    reading.faults.throw_if_any(InputError::Whose::plant);
    return std::move(reading.plant);
}

}  // namespace

PlantReading read_plant_with_faults(const std::string& folder) {
    expect_plant_in(folder);
    return PlantReader(folder, {}).read(folder);
}

Plant read_plant(const std::string& folder) {
    return without_faults(read_plant_with_faults(folder));
}

Plant read_plant(const std::string& folder, const FileTexts& texts) {
    return without_faults(PlantReader(folder, {&texts, nullptr}).read(folder));
}

FileTrees trees_of(const Plant& plant) {
    base::Diagnostics complaints;
    FileTrees result;
    for (const auto& [name, text] : plant.files)
        if (auto tree = base::parse_document(text, path_to(plant.folder, name), complaints))
            result.emplace(name, std::move(*tree));
    complaints.throw_if_any(InputError::Whose::plant);
    return result;
}

Plant read_plant(const Plant& plant, const FileTrees& trees) {
    Plant result = without_faults(PlantReader(plant.folder, {nullptr, &trees}).read(plant.folder));
    result.files = plant.files;
    return result;
}

int Board::media() const {
    const auto count =
        is_bought() ? 1 + std::count(flutes.begin(), flutes.end(), '+')
                    : std::count_if(plies.begin(), plies.end(), [](const Ply& ply) { return ply.flute.has_value(); });
    return static_cast<int>(count);
}

bool Board::is_closed() const {
    return is_bought() || std::count_if(plies.begin(), plies.end(), [](const Ply& ply) { return !ply.flute; }) > 1;
}

// From memory: containerboard of 700 g/m2 would be a millimetre thick. A medium's own thickness is in its flute's
// height.
double caliper_mm(const Plant& plant, const Board& board) {
    constexpr double gsm_per_mm = 700;
    if (board.caliper_mm) return *board.caliper_mm;
    double result = 0;
    for (const Board::Ply& ply : board.plies)
        result += ply.flute ? plant.flutes[*ply.flute].height_mm : plant.paper(ply.paper).grammage_gsm / gsm_per_mm;
    return result;
}

const std::vector<std::string>& plant_file_names() {
    static const std::vector<std::string> names = {"plant.yaml",  "papers.yaml",   "flutes.yaml",
                                                   "boards.yaml", "machines.yaml", "plugins.yaml"};
    return names;
}

}  // namespace flutebook::plant
