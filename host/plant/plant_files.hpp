// The readers of a plant's files, one a file. Each is given the whole file as a field (one that reports no errors if
// the file could not be read), reports everything wrong with it, and returns its values, with defaults for the wrong
// ones. The codes that one table gives are kept for the tables that refer to them.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "host/fields/map_reader.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::plant {

class Codes {
public:
    /// `kind` is what a message calls one of them: "paper".
    Codes(std::string kind, const fields::Field& table);

    /// The index of a name in the order of its file. Complains at `field`, where it was referred to, if there is no
    /// such name; but not where the table itself could not be read: it was complained of.
    [[nodiscard]] std::optional<std::size_t> find(const fields::Field& field, const std::string& name) const;
    /// The same for callers that need no index.
    void expect(const fields::Field& field, const std::string& name) const { static_cast<void>(find(field, name)); }

private:
    std::string kind_;
    std::vector<std::string> names_;
    std::unordered_map<std::string, std::size_t> index_;
    bool is_known_;
};

/// plant.yaml, into a plant that holds nothing else yet.
[[nodiscard]] Plant read_plant_file(fields::MapReader file);

/// `pricing:` of plant.yaml, of a plant whose currency is known; but for `optional`, which is the caller's.
[[nodiscard]] Pricing read_pricing(fields::MapReader& form, const Plant& plant);
/// `tolerance: {under, over}` of a plant or a request.
[[nodiscard]] Tolerance read_tolerance(const fields::Field& map);

/// papers.yaml
[[nodiscard]] std::vector<Paper> read_papers(const fields::Field& table);

/// The key of a list of dated prices that says how much, and its unit.
struct PriceKey {
    const char *name, *unit;
    fields::QuantityRange range;
};
/// Dates rise. `per_tonne` is the number as it was written.
[[nodiscard]] std::vector<Paper::Price> read_prices(const fields::Field& list, const PriceKey& key);

/// flutes.yaml
[[nodiscard]] std::vector<Flute> read_flutes(const fields::Field& table);
[[nodiscard]] std::vector<Allowance> read_allowances(const fields::Field& table, const Codes& flutes);

/// What the plies of a board refer to.
struct BoardParts {
    const std::vector<Paper>& papers;
    const Codes& paper_codes;
    const std::vector<Flute>& flutes;
    const Codes& flute_codes;
};

/// boards.yaml
struct BoardsYaml {
    std::vector<Board> boards;
    std::vector<Corrugator> suppliers;
    std::vector<Paper> papers;  // one for each supplier
};
[[nodiscard]] BoardsYaml read_boards(const fields::Field& table, const BoardParts& parts);
/// The map below `bought` of a board that is delivered as sheets, into the board: with who delivers it, and the paper
/// that it is costed as.
void read_bought(const fields::Field& map, const BoardParts& parts, Board& board, BoardsYaml& result);

/// machines.yaml
[[nodiscard]] std::vector<Corrugator> read_corrugators(const fields::Field& table);
[[nodiscard]] std::vector<Converter> read_converters(const fields::Field& table);
[[nodiscard]] Dispatch read_dispatch(const fields::Field& map);
/// Complains of machine codes that are not each one's own.
void check_machine_codes(const fields::Field& corrugators, const fields::Field& converters);
/// Complains of suppliers that are called as a machine or an account is.
void check_supplier_names(const Plant& plant, base::Diagnostics& complaints);

/// plugins.yaml
struct PluginsYaml {
    std::vector<ModelSettings> models;
    std::vector<Preference> preferences;
    std::vector<IsolatedModel> isolated;
    std::vector<PinnedFile> pinned;
};
[[nodiscard]] PluginsYaml read_plugin_file(fields::MapReader file);

}  // namespace flutebook::plant
