#include "host/contract/model.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace flutebook::contract {

Axis axis_of(VariesBy varies) {
    switch (varies) {
        case VariesBy::paper:
        case VariesBy::flute:
            return Axis::ply;
        case VariesBy::machine:
            return Axis::step;
        case VariesBy::plant:
        case VariesBy::request:
        case VariesBy::customer:
        case VariesBy::board:
        case VariesBy::style:
        case VariesBy::choice:
            break;
    }
    return Axis::order;
}

const char* to_text(Axis axis) {
    switch (axis) {
        case Axis::order:
            return "order";
        case Axis::ply:
            return "ply";
        case Axis::step:
            return "step";
    }
    return "";
}

const char* to_text(VariesBy varies) {
    switch (varies) {
        case VariesBy::plant:
            return "plant";
        case VariesBy::paper:
            return "paper";
        case VariesBy::flute:
            return "flute";
        case VariesBy::machine:
            return "machine";
        case VariesBy::request:
            return "request";
        case VariesBy::customer:
            return "customer";
        case VariesBy::board:
            return "board";
        case VariesBy::style:
            return "style";
        case VariesBy::choice:
            return "choice";
    }
    return "";
}

const char* to_text(CostClass cost_class) {
    switch (cost_class) {
        case CostClass::material:
            return "material";
        case CostClass::energy:
            return "energy";
        case CostClass::system:
            return "system";
        case CostClass::waste_management:
            return "waste-management";
        case CostClass::recovery:
            return "recovery";
    }
    return "";
}

const char* to_text(Behaviour behaviour) {
    switch (behaviour) {
        case Behaviour::per_unit:
            return "per-unit";
        case Behaviour::per_run:
            return "per-run";
        case Behaviour::period:
            return "period";
    }
    return "";
}

bool is_name_of_host(const std::string& name) {
    static constexpr std::array<std::string_view, 11> words = {"order", "inside", "blank", "box",  "sheet", "board",
                                                               "web",   "ply",    "step",  "cost", "plant"};
    const std::string_view first = std::string_view(name).substr(0, name.find('.'));
    return std::find(words.begin(), words.end(), first) != words.end();
}

std::string Model::where() const {
    std::string result = file + ": model " + id;
    if (author.empty() && contact.empty()) return result;
    const char* between = author.empty() || contact.empty() ? "" : ", ";
    return result + " (" + author + between + contact + ")";
}

std::optional<std::size_t> find_model(const std::vector<Model>& models, const std::string& id) {
    const auto found = std::find_if(models.begin(), models.end(), [&](const Model& model) { return model.id == id; });
    if (found == models.end()) return std::nullopt;
    return static_cast<std::size_t>(found - models.begin());
}

bool Model::needs_cost() const {
    return std::any_of(needs.begin(), needs.end(), [](const Name& need) { return need.name.starts_with(cost_prefix); });
}

}  // namespace flutebook::contract
