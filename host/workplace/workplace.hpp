// A plant opened for work: its files read, its models loaded and connected.
#pragma once

#include <string>
#include <vector>

#include "host/base/place.hpp"
#include "host/engine/engine.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::workplace {

/// Constant after opening; safe to use from any thread.
struct Workplace {
    plant::Plant plant;
    engine::Engine engine;
    std::vector<base::Warning> warnings = {};  // what is doubtful in the plant's files
};

/// Opens the plant in `folder`, with the plugins that were installed beside the running program. A plugin's file that
/// was never tried before is first tried in a process apart: to be done before any other file is opened for writing.
/// Models that were not built with this program work in processes of their own, which end with the engine, unless the
/// plant says otherwise; and so do those for which it says so.
/// Throws InputError (plant) or ModelError: the plant's files or a plugin are not fit.
[[nodiscard]] Workplace open(const std::string& folder);

/// The same for a plant that has been read already: its models are looked for in its folder.
[[nodiscard]] Workplace open(plant::Plant plant);

/// The workplace with another plant that lists the same models, and the same ledger to ask for a share of trim: no file
/// is opened and nothing is loaded. Throws InputError (plant) for unfit settings.
[[nodiscard]] Workplace with_plant(const Workplace& workplace, plant::Plant plant);

/// `../lib/flutebook/plugins` from the running program.
[[nodiscard]] std::string installed_plugins();

}  // namespace flutebook::workplace
