#include "host/orders/order_record_json.hpp"

#include <nlohmann/json.hpp>
#include <tuple>

#include "host/plant/machine_list.hpp"

namespace flutebook::orders {

namespace {

using Json = nlohmann::ordered_json;
using Kind = plant::Converter::Kind;

// A later key is written only where it says something, so that records keep their bytes.
enum class Presence { always, where_told };

// A key of the JSON and the member that it stands for.
template <typename Record, typename Value>
struct RecordField {
    const char* key;
    Value Record::*member;
    Presence presence = Presence::always;
};
template <typename Record, typename Value>
RecordField(const char*, Value Record::*) -> RecordField<Record, Value>;
template <typename Record, typename Value>
RecordField(const char*, Value Record::*, Presence) -> RecordField<Record, Value>;

// The keys of each record in their order, for the writer and the reader.
constexpr auto fields_of(const PlyRecord&) {
    return std::tuple{RecordField{"paper", &PlyRecord::paper}, RecordField{"grammage", &PlyRecord::grammage_gsm},
                      RecordField{"take_up", &PlyRecord::take_up}, RecordField{"adhesive", &PlyRecord::adhesive_gsm}};
}

constexpr auto fields_of(const CorrugatorAllowance&) {
    using Machine = CorrugatorAllowance;
    return std::tuple{RecordField{"code", &Machine::code}, RecordField{"run_waste", &Machine::run_waste},
                      RecordField{"roll_loss", &Machine::roll_loss},
                      RecordField{"order_change_m", &Machine::order_change_m}};
}

constexpr auto fields_of(const ConverterAllowance&) {
    using Machine = ConverterAllowance;
    return std::tuple{RecordField{"code", &Machine::code}, RecordField{"kind", &Machine::kind},
                      RecordField{"run_waste", &Machine::run_waste},
                      RecordField{"setup_sheets", &Machine::setup_sheets}};
}

constexpr auto fields_of(const OrderRecord&) {
    using Order = OrderRecord;
    return std::tuple{RecordField{"number", &Order::number},
                      RecordField{"quote", &Order::quote},
                      RecordField{"quantity", &Order::quantity},
                      RecordField{"customer", &Order::customer},
                      RecordField{"board", &Order::board},
                      RecordField{"style", &Order::style},
                      RecordField{"plies", &Order::plies},
                      RecordField{"grammage", &Order::grammage_gsm},
                      RecordField{"adhesive", &Order::adhesive_gsm},
                      RecordField{"adhesive_rate", &Order::adhesive_rate},
                      RecordField{"corrugator", &Order::corrugator},
                      RecordField{"roll_width_mm", &Order::roll_width_mm},
                      RecordField{"outs", &Order::outs},
                      RecordField{"slit_mm", &Order::slit_mm},
                      RecordField{"chop_mm", &Order::chop_mm},
                      RecordField{"sheet_area_m2", &Order::sheet_area_m2},
                      RecordField{"ups", &Order::ups},
                      RecordField{"box_area_m2", &Order::box_area_m2},
                      RecordField{"route", &Order::route},
                      RecordField{"parting", &Order::parting},
                      RecordField{"corrugators", &Order::corrugators},
                      RecordField{"converters", &Order::converters},
                      RecordField{"lost_otherwise_by", &Order::lost_otherwise_by, Presence::where_told},
                      RecordField{"piece", &Order::piece, Presence::where_told},
                      RecordField{"sets", &Order::sets, Presence::where_told},
                      RecordField{"web_share", &Order::web_share, Presence::where_told},
                      RecordField{"changes", &Order::changes, Presence::where_told},
                      RecordField{"bought_from", &Order::bought_from, Presence::where_told}};
}

template <typename Record>
concept HasFields = requires(const Record& record) {
    fields_of(record);
};

template <HasFields Item>
Json to_tree(const std::vector<Item>& items);
template <HasFields Item>
void read_tree(const Json& tree, std::vector<Item>& items);

template <typename Value>
Json to_tree(const Value& value) {
    return value;
}

Json to_tree(Kind kind) {
    return box_styles::spelled(kind);
}

template <HasFields Record>
Json to_tree(const Record& record) {
    Json tree;
    const auto write = [&](const auto& field) {
        Json value = to_tree(record.*field.member);
        if (field.presence == Presence::always || (value != "" && value != 0)) tree[field.key] = std::move(value);
    };
    std::apply([&](const auto&... field) { (write(field), ...); }, fields_of(record));
    return tree;
}

template <HasFields Item>
Json to_tree(const std::vector<Item>& items) {
    Json tree = Json::array();
    for (const Item& item : items) tree.push_back(to_tree(item));
    return tree;
}

template <typename Value>
void read_tree(const Json& tree, Value& value) {
    tree.get_to(value);
}

void read_tree(const Json& tree, Kind& kind) {
    const auto found = box_styles::converter_kind(tree.get<std::string>());
    if (!found) throw Json::other_error::create(599, "unknown kind of converter", &tree);
    kind = *found;
}

template <HasFields Record>
void read_tree(const Json& tree, Record& record) {
    const auto read = [&](const auto& field) {
        if (field.presence == Presence::always || tree.contains(field.key))
            read_tree(tree.at(field.key), record.*field.member);
    };
    std::apply([&](const auto&... field) { (read(field), ...); }, fields_of(record));
}

template <HasFields Item>
void read_tree(const Json& tree, std::vector<Item>& items) {
    for (const Json& item : tree) read_tree(item, items.emplace_back());
}

}  // namespace

std::string to_json(const OrderRecord& order) {
    return to_tree(order).dump();
}

std::optional<OrderRecord> order_record_of(const std::string& json) {
    const auto tree = Json::parse(json, nullptr, false);
    if (!tree.is_object()) return std::nullopt;
    try {
        OrderRecord order{};
        read_tree(tree, order);
        return order;
    } catch (const Json::exception&) {
        return std::nullopt;
    }
}

}  // namespace flutebook::orders
