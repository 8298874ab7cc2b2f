#include "host/plant/maker_text.hpp"

namespace flutebook::plant {

std::string bought_from(const std::string& supplier) {
    return "bought from " + supplier;
}

std::string maker_text(const Corrugator& maker) {
    return maker.is_supplier ? bought_from(maker.code) : maker.code;
}

std::string route_text(std::string maker, const std::vector<std::string>& route) {
    for (const std::string& machine : route) maker += " > " + machine;
    return maker;
}

}  // namespace flutebook::plant
