#include "config/demo/history/quotes.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <nlohmann/json.hpp>
#include <stdexcept>

#include "host/orders/request.hpp"
#include "host/plant/machine_list.hpp"

namespace flutebook::demo {

namespace {

using Json = nlohmann::json;

Json read_json(const std::string& file) {
    std::ifstream stream(file);
    if (!stream) throw std::runtime_error(file + ": cannot be read");
    return Json::parse(stream);
}

template <typename Machine>
const Machine* find(const std::vector<Machine>& machines, const std::string& code) {
    const auto found =
        std::find_if(machines.begin(), machines.end(), [&](const Machine& machine) { return machine.code == code; });
    if (found == machines.end()) throw std::runtime_error("no such machine: " + code);
    return &*found;
}

// The board of each request of the plant, by the request's number.
std::map<std::string, std::size_t> read_boards(const plant::Plant& plant) {
    std::map<std::string, std::size_t> boards;
    for (const auto& file : std::filesystem::directory_iterator(plant.folder + "/requests")) {
        const auto request = orders::read_request(plant, file.path().string());
        boards[request.number] = request.board;
    }
    return boards;
}

void read_papers(Make& make, const plant::Plant& plant, const plant::Board& board) {
    make.rolls_m = {};
    for (const auto& ply : board.plies) {
        const auto& paper = plant.papers[ply.paper];
        const double gsm = paper.grammage_gsm * (ply.flute ? plant.flutes[*ply.flute].take_up : 1);
        const auto known = std::find_if(make.papers.begin(), make.papers.end(),
                                        [&](const Make::Ply& roll) { return roll.paper == paper.code; });
        if (known != make.papers.end())
            known->gsm += gsm;
        else
            make.papers.push_back({paper.code, gsm});
    }
    for (const double width : plant.papers[board.plies.front().paper].roll_widths_mm) {
        const bool is_common = std::all_of(board.plies.begin(), board.plies.end(), [&](const auto& ply) {
            const auto& widths = plant.papers[ply.paper].roll_widths_mm;
            return std::find(widths.begin(), widths.end(), width) != widths.end();
        });
        if (is_common) make.rolls_m.push_back(width / 1000);
    }
}

Make read_make(const plant::Plant& plant, const PlannedOrder& order, const plant::Board& board, const Json& request) {
    const auto& quotes = request.at("quotes");
    const auto quote = std::find_if(quotes.begin(), quotes.end(),
                                    [&](const Json& json) { return json.at("quantity") == order.quantity; });
    if (quote == quotes.end()) throw std::runtime_error(order.request + " was not quoted at the quantity of its order");
    Make make{};
    make.quote = request.at("saved");
    make.number = order.number;
    make.start = order.start;
    make.corrugator = find(plant.corrugators, quote->at("corrugator"));
    for (const auto& code : quote->at("route")) make.route.push_back(find(plant.converters, code));
    const auto cutter = std::find_if(make.route.begin(), make.route.end(),
                                     [](const auto* machine) { return box_styles::parts_sheets(machine->kind); });
    make.parting =
        cutter == make.route.end() ? make.route.size() : static_cast<std::size_t>(cutter - make.route.begin()) + 1;
    make.roll_m = quote->at("roll_width_mm").get<double>() / 1000;
    make.outs = quote->at("outs");
    make.chop_m = quote->at("chop_mm").get<double>() / 1000;
    make.slit_m = quote->at("slit_mm").get<double>() / 1000;
    make.ups = quote->at("ups");
    make.box_m2 = quote->at("blank").at("area_m2");
    make.gsm = quote->at("board_grammage");
    make.sheets = quote->at("good").at(0);
    read_papers(make, plant, board);
    return make;
}

}  // namespace

std::vector<Make> read_makes(const plant::Plant& plant, const std::vector<PlannedOrder>& orders,
                             const std::vector<std::string>& files) {
    std::vector<std::map<std::string, Json>> rounds;
    for (const auto& file : files) {
        rounds.emplace_back();
        const auto answer = read_json(file);
        for (const auto& request : answer.at("requests")) rounds.back()[request.at("request")] = request;
    }
    const auto boards = read_boards(plant);
    std::vector<Make> makes;
    for (const auto& order : orders) {
        const auto& round = rounds.at(static_cast<std::size_t>(order.quotes));
        const auto request = round.find(order.request);
        if (request == round.end()) throw std::runtime_error(order.request + " was not quoted");
        makes.push_back(read_make(plant, order, plant.boards[boards.at(order.request)], request->second));
    }
    return makes;
}

}  // namespace flutebook::demo
