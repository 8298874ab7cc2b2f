// The readers of a plant's files, one a file. Each is given the whole file as a field (silent where the file could not
// be read), complains of all that is wrong with it, and returns what it holds, with stand-ins where it complained.
#pragma once

#include <vector>

#include "host/plant/codes.hpp"
#include "host/plant/plant.hpp"
#include "host/plant/yaml/map_reader.hpp"

namespace flutebook::plant {

/// plant.yaml, into a plant that holds nothing else yet.
[[nodiscard]] Plant read_plant_file(MapReader file);

/// papers.yaml
[[nodiscard]] std::vector<Paper> read_papers(const Field& table);

/// flutes.yaml
[[nodiscard]] std::vector<Flute> read_flutes(const Field& table);
[[nodiscard]] std::vector<Allowance> read_allowances(const Field& table, const Codes& flutes);

/// What the plies of a board refer to.
struct BoardParts {
    const std::vector<Paper>& papers;
    const Codes& paper_codes;
    const std::vector<Flute>& flutes;
    const Codes& flute_codes;
};

/// boards.yaml
[[nodiscard]] std::vector<Board> read_boards(const Field& table, const BoardParts& parts);

/// machines.yaml
[[nodiscard]] std::vector<Corrugator> read_corrugators(const Field& table);
[[nodiscard]] std::vector<Converter> read_converters(const Field& table);
[[nodiscard]] Dispatch read_dispatch(const Field& map);
/// Complains of machine codes that are not each one's own.
void check_machine_codes(const Field& corrugators, const Field& converters);

/// plugins.yaml
struct PluginsYaml {
    std::vector<ModelSettings> models;
    std::vector<Preference> preferences;
    std::vector<IsolatedModel> isolated;
    std::vector<PinnedFile> pinned;
};
[[nodiscard]] PluginsYaml read_plugin_file(MapReader file);

}  // namespace flutebook::plant
