#include "host/geometry/refused.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "host/geometry/sheet.hpp"
#include "host/geometry/web.hpp"
#include "host/plant/machine_list.hpp"

namespace flutebook::geometry {

namespace {

using fields::Span;
using orders::Request;
using plant::Converter;
using plant::Corrugator;
using plant::Plant;
using plant::Units;

// A length that a limit is on, and whose limit it is: "chop" ... "of C1".
struct LimitSpan {
    std::string measure;
    Span span_mm;
    std::string owner;
};

// What is left of a route, and of a route on a corrugator, after the limits so far.
struct OpenLimit {
    const Route* route;
    SheetRule rule;
    Boxes along, across;

    [[nodiscard]] bool none() const { return along.none() || across.none(); }
};

// Boxes in a row, in words: which way the row runs, and the most a sheet may hold.
struct LimitLine {
    const char* direction;
    BoxRow row;
    double most;
};

LimitLine along(const OpenLimit& open) {
    return {"along the chop", open.rule.along, open.rule.allowed().last};
}
LimitLine across(const OpenLimit& open) {
    return {"across the web", open.rule.across, open.rule.allowed().last};
}

bool has_machine(const Plant& plant, const box_styles::Stage& stage) {
    return std::any_of(plant.converters.begin(), plant.converters.end(), [&](const Converter& machine) {
        return std::find(stage.begin(), stage.end(), machine.kind) != stage.end();
    });
}

// Only a style that some kind of machine makes can be without a route.
std::string lacks_machine(const Plant& plant, const std::vector<box_styles::Stage>& stages) {
    for (std::size_t i = 0; i < stages.size(); ++i) {
        if (has_machine(plant, stages[i])) continue;
        if (stages.size() == 1)
            return fmt::format("the plant has no {}, which makes it", box_styles::in_words(stages[i]));
        return fmt::format("the plant has no {} for stage {} of {}", box_styles::in_words(stages[i]), i + 1,
                           box_styles::in_words(stages));
    }
    return fmt::format("the plant has too few machines for its stages, each made by another: {}",
                       box_styles::in_words(stages));
}

std::string joined(const std::vector<std::string>& parts, const char* between) {
    return fmt::format("{}", fmt::join(parts, between));
}

// "5 or more along the chop"; nothing where it goes for every number of boxes.
std::string counted(const Boxes& stopped, const LimitLine& line) {
    if (stopped.first <= 1 && stopped.last >= line.most) return "";
    if (stopped.first == stopped.last) return fmt::format("{} {}", stopped.first, line.direction);
    if (stopped.last >= line.most) return fmt::format("{} or more {}", stopped.first, line.direction);
    return fmt::format("{} to {} {}", stopped.first, stopped.last, line.direction);
}

class Listing {
public:
    Listing(const Plant& plant, const Request& request, const RouteNeeds& needs)
        : plant_(plant), request_(request), needs_(needs) {}

    std::vector<Refused> listed(const blanks::Blank& blank, const std::vector<Route>& routes);

private:
    bool nothing_to_try(const std::vector<Route>& routes);
    bool lacks_colours(const Route& route);
    [[nodiscard]] std::string who_has_colours(const Route& route) const;
    bool cuts_flaps_even(const Route& route);
    bool refuses_blank(const Route& route, const blanks::Blank& blank);
    OpenLimit open_on_machines(const Route& route, const blanks::Blank& blank);
    OpenLimit open_on_corrugator(OpenLimit open, const Corrugator& corrugator);
    void on_rolls(const std::vector<OpenLimit>& routes, const Corrugator& corrugator);
    void on_roll(const OpenLimit& open, const Corrugator& corrugator, double roll_width_mm);

    Boxes narrow(Boxes boxes, const LimitLine& line, const LimitSpan& limit, const std::vector<std::string>& before,
                 const Route& route);
    void add(std::vector<std::string> before, const std::string& boxes, const Route& route, std::string limit);

    [[nodiscard]] std::string length(double mm) const { return length_text(mm, plant_.units); }
    [[nodiscard]] std::string beyond(double value_mm, const LimitSpan& limit) const;
    [[nodiscard]] std::string beyond(double boxes, const LimitLine& line, const LimitSpan& limit) const;

    const Plant& plant_;
    const Request& request_;
    const RouteNeeds& needs_;
    std::vector<Refused> refused_;
};

void Listing::add(std::vector<std::string> before, const std::string& boxes, const Route& route, std::string limit) {
    if (!boxes.empty()) before.push_back(boxes);
    before.push_back(name_of(route));
    refused_.push_back({joined(before, ", "), std::move(limit)});
}

// "5200 mm", "above the 4500 mm of C1".
std::string Listing::beyond(double value_mm, const LimitSpan& limit) const {
    const bool above = value_mm > limit.span_mm.high;
    const double bound_mm = above ? limit.span_mm.high : limit.span_mm.low;
    return fmt::format("{} the {} {}", above ? "above" : "below", length(bound_mm), limit.owner);
}

std::string Listing::beyond(double boxes, const LimitLine& line, const LimitSpan& limit) const {
    const double value_mm = line.row.length_mm(boxes);
    if (line.most == 1) return fmt::format("{} {} is {}", limit.measure, length(value_mm), beyond(value_mm, limit));
    return fmt::format("{} {} {} a {} of {}, {}", boxes, line.direction, boxes == 1 ? "makes" : "make", limit.measure,
                       length(value_mm), beyond(value_mm, limit));
}

// Told with the number of boxes that comes nearest to the limit.
Boxes Listing::narrow(Boxes boxes, const LimitLine& line, const LimitSpan& limit,
                      const std::vector<std::string>& before, const Route& route) {
    if (boxes.none()) return boxes;
    const Boxes left = narrowed(boxes, line.row, limit.span_mm);
    const Boxes too_few = {boxes.first, std::min(left.first - 1, boxes.last)};
    const Boxes too_many = {std::max(left.last + 1, boxes.first), boxes.last};
    if (!too_few.none()) add(before, counted(too_few, line), route, beyond(too_few.last, line, limit));
    if (!too_many.none()) add(before, counted(too_many, line), route, beyond(too_many.first, line, limit));
    return left;
}

bool Listing::nothing_to_try(const std::vector<Route>& routes) {
    const plant::Board& board = plant_.boards[request_.board];
    if (makers_of(plant_, board).empty()) {
        refused_.push_back({"every way", "the plant has no corrugator"});
    } else if (routes.empty()) {
        refused_.push_back({"style " + request_.style, lacks_machine(plant_, needs_.stages)});
    } else if (!board.is_bought() && common_roll_widths(plant_, board).empty()) {
        std::vector<std::string> papers;
        for (const plant::Board::Ply& ply : board.plies) {
            const std::string& code = plant_.paper(ply.paper).code;
            if (std::find(papers.begin(), papers.end(), code) == papers.end()) papers.push_back(code);
        }
        refused_.push_back(
            {"board " + board.code, "its papers are stocked in no common roll width: " + joined(papers, ", ")});
    }
    return !refused_.empty();
}

bool Listing::lacks_colours(const Route& route) {
    if (request_.colours <= 0 || route.colours_step != 0) return false;
    std::vector<std::string> had;
    const auto tell = [&](const Converter& machine) {
        had.push_back(fmt::format("{} has {}", machine.code, machine.colours));
    };
    for (const Converter* converter : route.converters) tell(*converter);
    if (!request_.route_of(needs_.piece))
        for (const Converter& machine : plant_.converters)
            if (machine.kind == Converter::Kind::printer) tell(machine);
    add({}, "", route,
        fmt::format("{} asked for: {}{}",
                    request_.colours == 1 ? "1 colour is" : fmt::format("{} colours are", request_.colours),
                    had.empty() ? "the corrugator prints none" : joined(had, ", "),
                    request_.route ? who_has_colours(route) : ""));
    return true;
}

// The printers of the plant that could stand in the route, and the machines that could stand for one of it.
std::string Listing::who_has_colours(const Route& route) const {
    const auto is_of_use = [&](const Converter& machine) {
        return machine.kind == Converter::Kind::printer ||
               std::any_of(route.converters.begin(), route.converters.end(),
                           [&](const Converter* taken) { return taken->kind == machine.kind; });
    };
    std::vector<std::string> having;
    for (const Converter& machine : plant_.converters)
        if (machine.colours >= request_.colours && is_of_use(machine))
            having.push_back(fmt::format("{} has {}", machine.code, machine.colours));
    if (having.empty()) return "; no machine of the plant that could stand in it has so many";
    return fmt::format("; in the plant {}: {}, or leave the route out", joined(having, ", "),
                       having.size() == 1 ? "put it into the route" : "put one of them into the route");
}

bool Listing::cuts_flaps_even(const Route& route) {
    if (route.even_flaps == nullptr) return false;
    add({}, "", route,
        fmt::format("the flaps of a row have unequal depths, and {} cuts them to one; a die cutter must stand ahead of "
                    "it, or a folder-gluer that has `cuts_flaps: true` in its place",
                    route.even_flaps->code));
    return true;
}

// The machines after the parting step, each on its own: a blank has one length and one width.
bool Listing::refuses_blank(const Route& route, const blanks::Blank& blank) {
    const std::size_t before = refused_.size();
    for (std::size_t step = route.parting + 1; step <= route.last_step(); ++step) {
        const Converter& converter = *route.converters[step - 1];
        const std::string owner = "of " + converter.code;
        narrow({1, 1}, {"", {blank.length_mm, 0, 0}, 1}, {"blank length", converter.length_mm, owner}, {}, route);
        narrow({1, 1}, {"", {blank.width_mm, 0, 0}, 1}, {"blank width", converter.width_mm, owner}, {}, route);
    }
    return refused_.size() != before;
}

OpenLimit Listing::open_on_machines(const Route& route, const blanks::Blank& blank) {
    const SheetRule rule = sheet_rule(blank, route);
    OpenLimit open = {&route, rule, rule.allowed(), rule.allowed()};
    const Converter* one_up = one_up_before_parting(route);
    if (one_up != nullptr && route.parting_machine()->ups_max > 1)
        add({}, "2 or more on a sheet", route,
            fmt::format("{} stands ahead of {} and makes one box a sheet", one_up->code,
                        route.parting_machine()->code));
    for (std::size_t step = 1; step <= route.parting; ++step) {
        const Converter& converter = *route.converters[step - 1];
        const std::string owner = "of " + converter.code;
        open.along = narrow(open.along, along(open), {"sheet length", converter.length_mm, owner}, {}, route);
        open.across = narrow(open.across, across(open), {"sheet width", converter.width_mm, owner}, {}, route);
    }
    return open;
}

OpenLimit Listing::open_on_corrugator(OpenLimit open, const Corrugator& corrugator) {
    const std::string owner = "of " + corrugator.code;
    const std::vector<std::string> before = {corrugator.code};
    open.along = narrow(open.along, along(open), {"chop", corrugator.chop_mm, owner}, before, *open.route);
    open.across = narrow(open.across, across(open), {"slit width", corrugator.slit_mm, owner}, before, *open.route);
    return open;
}

void Listing::on_roll(const OpenLimit& open, const Corrugator& corrugator, double roll_width_mm) {
    const LimitLine line = across(open);
    Boxes stopped = {open.across.last + 1, open.across.last};
    while (stopped.first > open.across.first &&
           cut_web(corrugator, roll_width_mm, line.row.length_mm(stopped.first - 1)).outs < 1)
        --stopped.first;
    if (stopped.none()) return;
    const LimitSpan limit = {"slit width",
                             {0, roll_width_mm - corrugator.trim_min_mm},
                             fmt::format("that {} leaves inside its trim", corrugator.code)};
    add({corrugator.code, "roll " + length(roll_width_mm)}, counted(stopped, line), *open.route,
        beyond(stopped.first, line, limit));
}

void Listing::on_rolls(const std::vector<OpenLimit>& routes, const Corrugator& corrugator) {
    if (routes.empty()) return;
    for (const double roll_width_mm : common_roll_widths(plant_, plant_.boards[request_.board])) {
        if (is_within(roll_width_mm, corrugator.roll_width_mm)) {
            for (const OpenLimit& open : routes) on_roll(open, corrugator, roll_width_mm);
            continue;
        }
        const LimitSpan limit = {"roll width", corrugator.roll_width_mm, "of " + corrugator.code};
        refused_.push_back({fmt::format("{}, roll {}", corrugator.code, length(roll_width_mm)),
                            fmt::format("roll width {} is {}", length(roll_width_mm), beyond(roll_width_mm, limit))});
    }
}

std::vector<Refused> Listing::listed(const blanks::Blank& blank, const std::vector<Route>& routes) {
    if (nothing_to_try(routes)) return std::move(refused_);
    std::vector<OpenLimit> open_routes;
    for (const Route& route : routes) {
        if (lacks_colours(route) || cuts_flaps_even(route) || refuses_blank(route, blank)) continue;
        const OpenLimit open = open_on_machines(route, blank);
        if (!open.none()) open_routes.push_back(open);
    }
    for (const Corrugator* corrugator : makers_of(plant_, plant_.boards[request_.board])) {
        std::vector<OpenLimit> left;
        for (const OpenLimit& open : open_routes) {
            const OpenLimit on_this = open_on_corrugator(open, *corrugator);
            if (!on_this.none()) left.push_back(on_this);
        }
        on_rolls(left, *corrugator);
    }
    return std::move(refused_);
}

}  // namespace

std::vector<Refused> why_nothing_fits(const Plant& plant, const Request& request, const RouteNeeds& needs,
                                      const blanks::Blank& blank, const std::vector<Route>& routes) {
    return Listing(plant, request, needs).listed(blank, routes);
}

}  // namespace flutebook::geometry
