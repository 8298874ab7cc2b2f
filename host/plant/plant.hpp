// The plant as its files describe it: papers, flutes, boards, machines, and which models to load.
//
// Plain values, made by read_plant(), never changed afterwards, safe to read from any thread.
// Entries keep the order of their file, and refer to each other by index. Units end the names; lengths are mm here,
// as in the files.
#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "host/base/date.hpp"
#include "host/base/decimal_mark.hpp"
#include "host/base/diagnostics.hpp"
#include "host/base/places.hpp"
#include "host/base/yaml/node.hpp"
#include "host/box_styles/style.hpp"
#include "host/fields/unit_words.hpp"
#include "host/plant/machine.hpp"
#include "host/plant/model_settings.hpp"
#include "host/plant/pricing.hpp"
#include "host/plant/trim_policy.hpp"
#include "host/plant/trim_record.hpp"

namespace flutebook::plant {

enum class Units { metric, us };
/// As files and answers spell it.
[[nodiscard]] const char* to_text(Units units);

/// A sheet of paper as files spell it: `a4`, `letter`. Where the plant says nothing, its units say which.
enum class PageSize { a4, letter };

/// How a mill pays for moisture above its limit.
struct Mill {
    enum class Deduction { dry_matter, point_for_point };
    std::string name;
    double moisture_limit;
    Deduction deduction;
    base::Places places;
};

struct Paper {
    enum class Use { liner, medium };
    struct Price {
        base::Date from;
        double per_tonne;
        base::Place place;
        double per_m2 = 0;  // of a bought board, as it was written
    };
    std::string code;
    Use use;
    double grammage_gsm;
    double moisture;
    std::vector<double> roll_widths_mm;  // rising
    std::vector<Price> prices;           // by date, rising
    base::Places places;

    /// The price in force on a day; nothing before the first.
    [[nodiscard]] const Price* price_on(base::Date day) const;
};

struct Flute {
    std::string code;
    double take_up;
    double height_mm;
    double single_facer_gsm;   // dry adhesive of the flute's first glue line
    double double_backer_gsm;  // and of its second
    base::Places places;
};

/// What scoring and joining add to a box's dimensions, mm; by flute, or by the flutes of a double wall ("B+C"), for all
/// styles or for those whose code begins so.
struct Allowance {
    struct Further {
        std::string name;
        double mm;
    };
    std::string flutes;
    double panel_mm, depth_mm, flap_mm, joint_mm, tab_mm, slot_mm;
    base::Places places;
    std::string style_prefix = {};      // "04": of the styles whose code begins so; empty: of all
    std::vector<Further> further = {};  // names beside the six, in the order of the file
};

struct Board {
    struct Ply {
        std::size_t paper;                 // index into Plant::papers
        std::optional<std::size_t> flute;  // index into Plant::flutes; a liner has none
        bool has_second_liner = false;     // of a medium: a liner follows it
    };
    std::string code;
    std::vector<Ply> plies;  // outside first; of a bought board one, the board itself
    std::string flutes;      // "B", "B+C": the key of its allowance
    base::Place place;
    std::optional<double> caliper_mm = {};  // as measured; nothing: it follows from flutes and liners
    std::optional<base::Place> caliper_place = {};
    std::optional<double> ect_kn_m = {};  // edge crush resistance of a strip on its edge, flutes upright, as measured
    std::optional<base::Place> ect_place = {};
    std::optional<std::size_t> supplier = {};  // index into Plant::suppliers, of a board that is bought as sheets

    [[nodiscard]] bool is_bought() const { return supplier.has_value(); }
    /// How many flutes lie over each other: 1 single wall, 2 double wall.
    [[nodiscard]] int media() const;
    /// A liner on both sides: else it cannot be creased and folded.
    [[nodiscard]] bool is_closed() const;
};

/// `prefer: {name: model}`.
struct Preference {
    std::string name, model;
    base::Place place;
};

/// `isolation: {model: process}`: this model works in a process of its own. `{model: host}`: in the host's, although it
/// was not built with it.
struct IsolatedModel {
    enum class Where { process, host };
    std::string model;
    base::Place place;
    Where where = Where::process;
};

/// `sha256: {model: hex}`: the one file that may be loaded for this model.
struct PinnedFile {
    std::string model, sha256;  // 64 lower-case hexadecimal digits
    base::Place place;
};

/// Texts of files by their names: "papers.yaml".
using FileTexts = std::map<std::string, std::string>;

/// A model that a request need not think of: what it leaves out of a price is told only where the request mentions it.
struct OptionalModel {
    std::string id;
    base::Place place;
};

struct Plant {
    std::string folder;
    FileTexts files;  // all that the plant was read from, to the byte but for a byte order mark
    std::string name;
    std::string currency;      // ISO 4217
    int currency_minor_units;  // decimal places of its smallest coin
    Units units;
    std::vector<std::string> shifts;
    double balance_tolerance;
    std::optional<double> waste_target;  // share of the issued paper that it means to lose at most
    std::optional<AskedTrim> trim;       // of requests that do not say; nothing: each order pays its own roll
    std::vector<Mill> mills;
    std::vector<Paper> papers;
    std::vector<Flute> flutes;
    std::vector<Allowance> allowances;
    std::vector<Board> boards;
    box_styles::StyleList styles;
    std::vector<Corrugator> corrugators;
    std::vector<Converter> converters;
    /// Of the boards that are bought as sheets. Who delivers one is a corrugator that runs nothing here, has no web and
    /// whose one paper is the board: it takes no time, and loses what arrives unfit.
    std::vector<Corrugator> suppliers{};
    std::vector<Paper> bought_papers{};  // one for each supplier, in the same order: what a ply counts behind `papers`
    Dispatch dispatch;
    std::vector<ModelSettings> models;  // as plugins.yaml lists them
    std::vector<Preference> preferences;
    std::vector<IsolatedModel> isolated;
    std::vector<PinnedFile> pinned;
    std::vector<OptionalModel> optional_models{};               // `pricing: {optional: [...]}`
    std::vector<std::string> address{};                         // on what leaves the house; line by line
    PageSize page_size = PageSize::a4;                          // of what leaves the house
    base::DecimalMark decimal_mark = base::DecimalMark::point;  // in what people are shown
    Pricing pricing{};                                          // all else that stands there
    base::Places places;                                        // of plant.yaml
    TrimSource trim_source{};  // of requests that ask for the ledger's share; empty where no ledger is known

    [[nodiscard]] const box_styles::Style* find_style(const std::string& code) const;
    [[nodiscard]] const Board* find_board(const std::string& code) const;
    /// Of a ply's index: one that is stocked, or a bought board as the paper that it is costed as.
    [[nodiscard]] const Paper& paper(std::size_t index) const;
    /// Who delivers a board; null where it is run here.
    [[nodiscard]] const Corrugator* supplier_of(const Board& board) const;
    [[nodiscard]] const Paper* find_paper(const std::string& code) const;
    [[nodiscard]] const Corrugator* find_corrugator(const std::string& code) const;
    [[nodiscard]] const Converter* find_converter(const std::string& code) const;
    /// For the flutes of a board, outside first, and a style: of the entries whose prefix the style's code begins with,
    /// the one with the longest. Given for "B+C", they serve "C+B" too unless that has its own.
    [[nodiscard]] const Allowance* find_allowance(const std::string& of_flutes, const std::string& style_code) const;
};

/// Reads plant.yaml, papers.yaml, flutes.yaml, boards.yaml, machines.yaml, plugins.yaml and, where there is one,
/// styles.yaml of a folder. Throws InputError (plant) with every error of every file.
[[nodiscard]] Plant read_plant(const std::string& folder);

/// A plant's files as far as they can be read.
struct PlantReading {
    Plant plant;  // with stand-ins where a fault is
    base::Diagnostics faults;
    bool knows_all_codes = true;      // of papers, flutes, boards, styles and machines: else a table cannot be read
    bool is_plugins_file_fit = true;  // no fault is in plugins.yaml
};

/// For a caller that knows what else may be wrong, and tells all of it together. Throws InputError (plant) where the
/// folder is none of a plant's.
[[nodiscard]] PlantReading read_plant_with_faults(const std::string& folder);
/// The decimal mark of a plant's people, for what is shown before its files are read, or without them: a point where
/// plant.yaml is not there, cannot be read, or says nothing. No error: whoever reads the plant is told.
[[nodiscard]] base::DecimalMark shown_decimal_mark(const std::string& folder);

/// How thick a board is: as it says, else the heights of its flutes, and its liners.
[[nodiscard]] double caliper_mm(const Plant& plant, const Board& board);

/// What words of units mean in the plant's files and in its requests.
[[nodiscard]] fields::UnitWords unit_words(const Plant& plant);

/// The names of the six files that every plant has.
[[nodiscard]] const std::vector<std::string>& plant_file_names();

/// The file of box styles, which a plant may have.
inline constexpr const char* styles_file_name = "styles.yaml";

/// A style's text as a quote keeps it: read like a file of the plant after styles.yaml, and counts before it. No
/// plant's folder has this file.
inline constexpr const char* kept_style_file = "style.yaml";

/// The same from texts that are kept elsewhere: no file is touched, `folder` only names them.
[[nodiscard]] Plant read_plant(const std::string& folder, const FileTexts& texts);

/// Files of a plant as trees, by their names.
using FileTrees = std::map<std::string, base::Node>;

/// The files that a plant was read from.
[[nodiscard]] FileTrees trees_of(const Plant& plant);

/// The plant again, with values of its trees changed. It keeps the texts of the files as they are. Throws InputError
/// (plant) where a changed value cannot stand; its place is the node's.
[[nodiscard]] Plant read_plant(const Plant& plant, const FileTrees& trees);

}  // namespace flutebook::plant
