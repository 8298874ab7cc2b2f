// `style check`: folds styles in space at several sizes, and prints for each that it folds, or what collides, where and
// by how much.
#include <fmt/format.h>

#include "host/cli/commands.hpp"
#include "host/plant/plant.hpp"
#include "host/plant_answers/style_json.hpp"
#include "host/plant_reports/style_check_report.hpp"
#include "host/render/text_report.hpp"
#include "host/services/styles/check_styles.hpp"

namespace flutebook::cli {

namespace {

constexpr std::int64_t most_boxes = 10'000;

constexpr const char* style_check_footer =
    R"(Draws a style, or every style, at several sizes on every flute that has allowances, folds each blank
step by step in three dimensions, and compares the box with the inside dimensions that were asked
for. Prints `folds`, or each fault: which cells, in which step, by how much.

Exit code: 0 every style folds; 1 one does not, or there is no such style; 2 wrong usage; 3 the
plant's files cannot be used.

Examples:
  flutebook --plant config/demo style check
  flutebook style check 0201
  flutebook style check 0201 --boxes 40 --seed 7 --json)";

struct StyleCheckCommand {
    std::string code;
    std::int64_t boxes = 0, seed = 1;
    bool is_json = false;
};

ExitCode check_some_styles(const StyleCheckCommand& asked, const RunContext& context) {
    const plant::Plant plant = plant::read_plant(context.plant);
    plant_answers::StyleCheckOptions options;
    options.code = asked.code;
    options.random_boxes = static_cast<std::size_t>(asked.boxes);
    options.seed = static_cast<std::uint64_t>(asked.seed);
    const plant_answers::StyleCheck check = services::check_styles(plant, options);
    context.output.write(asked.is_json ? plant_answers::style_check_document(check)
                                       : render::to_text(plant_reports::style_check_report(plant, check)));
    return check.holds() ? ExitCode::done : ExitCode::refused;
}

}  // namespace

void add_style_check(Command& style) {
    Command& command =
        style.add("check", "fold styles in three dimensions and show what does not fit", style_check_footer);
    const auto asked = std::make_shared<StyleCheckCommand>();
    command.argument("CODE", "the style's code (default: every style)", read_line(asked->code),
                     Command::Presence::optional);
    command.option("--boxes", "N", "number of random boxes on each flute as well (default: 0)",
                   read_whole_number({"number of boxes", 0, most_boxes}, asked->boxes));
    command.option("--seed", "N", "seed of the random boxes (default: 1)", read_whole_number({"seed", 0}, asked->seed));
    command.json_flag(asked->is_json);
    command.run_with([asked](const RunContext& context) { return check_some_styles(*asked, context); });
}

}  // namespace flutebook::cli
