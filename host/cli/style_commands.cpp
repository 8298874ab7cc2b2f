// `style list` and `style show`: the box styles that can be asked for, and one of them at a size with its blanks, its
// figures and its drawings. `style check` stands in style_check_command.cpp. No model is loaded.
#include "host/cli/commands.hpp"
#include "host/command_line/whole_file.hpp"
#include "host/plant/plant.hpp"
#include "host/plant_answers/style_json.hpp"
#include "host/plant_reports/style_report.hpp"
#include "host/render/svg.hpp"
#include "host/render/text_report.hpp"
#include "host/services/styles/show_style.hpp"

namespace flutebook::cli {

namespace {

constexpr const char* style_footer = R"(Examples:
  flutebook style list
  flutebook style show 0201 --inside 400x300x250 --board B-140
  flutebook style check 0201)";

constexpr const char* style_list_footer =
    R"(Lists the styles of the program and of the plant's own styles.yaml: code, title, what makes it, and
where its construction comes from.

Examples:
  flutebook --plant config/demo style list
  flutebook style list --json)";

constexpr const char* style_show_footer =
    R"(Draws a style at a size: each blank with its area, lengths of cut and crease, joint, print face and
the positions of its scores. --svg draws it flat, folded and half open.

Exit code: 0 done; 1 there is no such style, board or measure, or the size leaves no blank; 2 wrong
usage; 3 the plant's files cannot be used.

Examples:
  flutebook --plant config/demo style show 0201 --inside 400x300x250 --board B-140
  flutebook style show 0301 --inside 300x200x80 --board B-140 --measure deep=40
  flutebook style show 0201 --inside 400x300x250 --board B-140 --svg 0201.svg
  flutebook style show 0110 --inside 600x400 --board B-140 --json)";

struct StyleShowCommand {
    services::StyleQuestion question;
    std::string svg_file;  // empty: none
    bool is_replacing = false, is_json = false;
};

ExitCode show_style_list(bool is_json, const RunContext& context) {
    const plant_answers::StyleListAnswer list = services::list_styles(plant::read_plant(context.plant));
    context.output.write(is_json ? plant_answers::style_list_document(list)
                                 : render::to_text(plant_reports::style_list_report(list)));
    return ExitCode::done;
}

ExitCode show_one_style(const StyleShowCommand& asked, const RunContext& context) {
    std::optional<WholeFile> svg;
    if (!asked.svg_file.empty()) svg.emplace(asked.svg_file, if_there(asked.is_replacing));
    const plant::Plant plant = plant::read_plant(context.plant);
    const plant_answers::ShownStyle style = services::show_style(plant, asked.question);
    if (svg) svg->write(render::svg_file(plant_reports::style_drawings(plant, style)));
    context.output.write(asked.is_json ? plant_answers::style_document(style)
                                       : render::to_text(plant_reports::style_report(plant, style)));
    return ExitCode::done;
}

void add_style_list(Command& style) {
    Command& command = style.add("list", "list the box styles that can be asked for", style_list_footer);
    const auto is_json = std::make_shared<bool>(false);
    command.json_flag(*is_json);
    command.run_with([is_json](const RunContext& context) { return show_style_list(*is_json, context); });
}

void add_style_show(Command& style) {
    Command& command =
        style.add("show", "show one style at a size: its blanks, figures and drawings", style_show_footer);
    const auto asked = std::make_shared<StyleShowCommand>();
    command.argument("CODE", "the style's code", read_line(asked->question.code));
    command.required_option("--inside", "LxBxH", "inside length, breadth and height in mm; LxB for a sheet",
                            read_inside_size(asked->question.inside_mm));
    command.required_option("--board", "BOARD", "the board's code", read_line(asked->question.board));
    command.repeated_option("--measure", "NAME=VALUE", "a further measure that the style asks for; may be repeated",
                            read_measure(asked->question.measures));
    command.option("--svg", "FILE", "write its drawings to this file, .svg", read_drawing_file(asked->svg_file));
    command.flag("--replace", replace_help, asked->is_replacing);
    command.json_flag(asked->is_json);
    command.run_with([asked](const RunContext& context) { return show_one_style(*asked, context); });
}

}  // namespace

// Help lists the commands in this order.
void add_style(Command& program) {
    Command& command = program.add("style", "list, show and check box styles", style_footer);
    command.require_subcommand();
    add_style_list(command);
    add_style_show(command);
    add_style_check(command);
}

}  // namespace flutebook::cli
