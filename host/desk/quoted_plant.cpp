#include "host/desk/quoted_plant.hpp"

#include <fmt/format.h>
#include <stdlib.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <optional>

#include "host/catalogue/date.hpp"
#include "host/desk/saved_quote.hpp"
#include "host/errors.hpp"

namespace flutebook::desk {

namespace {

namespace fs = std::filesystem;
using Json = nlohmann::json;

// A folder that only its owner can look into, named for the quote so that a complaint about a file in it tells whose
// it was. Gone with the object.
class PrivateFolder {
public:
    explicit PrivateFolder(const std::string& quote) {
        std::error_code failure;
        const fs::path above = fs::temp_directory_path(failure);
        std::string pattern = (above / ("flutebook-" + quote + "-XXXXXX")).string();
        if (failure || ::mkdtemp(pattern.data()) == nullptr) refuse(pattern);
        path_ = pattern;
    }
    ~PrivateFolder() {
        std::error_code ignored;
        fs::remove_all(path_, ignored);
    }
    PrivateFolder(const PrivateFolder&) = delete;
    PrivateFolder& operator=(const PrivateFolder&) = delete;

    [[nodiscard]] std::string path_to(const std::string& name) const { return (path_ / name).string(); }
    [[nodiscard]] std::string path() const { return path_.string(); }

    void write(const std::string& name, const std::string& content) const {
        std::ofstream stream(path_ / name, std::ios::binary);
        stream << content;
        if (!stream.flush()) refuse(path_to(name));
    }

private:
    [[noreturn]] static void refuse(const std::string& path) {
        throw InputError(
            InputError::Whose::plant,
            {fmt::format("{}: cannot be written; make room there, or set TMPDIR to another folder", path)});
    }

    fs::path path_;
};

std::optional<catalogue::Date> date_of(const ledger::SavedQuote& quote) {
    for (const auto& part : quote.parts)
        if (part.name == "date.txt") return catalogue::parse_date(part.content.substr(0, part.content.find('\n')));
    return std::nullopt;  // quotes have not always kept it: the file's own
}

template <typename Machine>
const Machine* find(const std::vector<Machine>& machines, const std::string& code) {
    const auto found =
        std::find_if(machines.begin(), machines.end(), [&](const Machine& machine) { return machine.code == code; });
    return found == machines.end() ? nullptr : &*found;
}

void add_machine(catalogue::Plant& plant, const catalogue::Plant& today, const std::string& code) {
    if (find(plant.corrugators, code) != nullptr || find(plant.converters, code) != nullptr) return;
    if (const auto* corrugator = find(today.corrugators, code))
        plant.corrugators.push_back(*corrugator);
    else if (const auto* converter = find(today.converters, code))
        plant.converters.push_back(*converter);
    else
        throw InputError(InputError::Whose::plant,
                         {fmt::format("{}/machines.yaml: {} is missing: it made a part of the order, and neither the "
                                      "quote's files nor today's have it; put it back",
                                      today.folder, code)});
}

[[noreturn]] void refuse_part(const ledger::SavedQuote& quote, const char* name) {
    throw LedgerError(LedgerError::Kind::unfit, fmt::format("quote {}: its part {} cannot be read; run `flutebook "
                                                            "verify`",
                                                            quote.number, name));
}

std::optional<double> cost_in(const Json& answer, double quantity) {
    for (const Json& quote : answer.at("requests").at(0).at("quotes"))
        if (quote.at("quantity") == quantity && quote.contains("cost")) return quote.at("cost").get<double>();
    return std::nullopt;
}

}  // namespace

QuotedPlant quoted_plant(const ledger::SavedQuote& quote, const catalogue::Plant& today,
                         const std::vector<std::string>& ran) {
    const PrivateFolder folder(quote.number);
    for (const char* name : plant_files) folder.write(name, part_of(quote, fmt::format("plant/{}", name)));
    folder.write("request.yaml", part_of(quote, "request.yaml"));
    QuotedPlant made{catalogue::read_plant(folder.path()), {}};
    for (const auto& code : ran) add_machine(made.plant, today, code);
    made.request = catalogue::read_request(made.plant, folder.path_to("request.yaml"), date_of(quote));
    made.plant.folder = today.folder;
    made.plant.pinned = today.pinned;
    return made;
}

std::vector<PluginChange> changes_since(const ledger::SavedQuote& quote, const engine::Graph& graph) {
    std::vector<PluginChange> changes;
    try {
        const Json then = Json::parse(part_of(quote, "plugins.json"));
        for (const engine::Model& model : graph.models) {
            PluginChange change{model.id, "", model.version, "", model.sha256};
            for (const Json& own : then) {
                if (own.at("id") != model.id) continue;
                change.version_then = own.at("version").get<std::string>();
                change.sha256_then = own.at("sha256").get<std::string>();
            }
            if (change.version_then != change.version_now || change.sha256_then != change.sha256_now)
                changes.push_back(std::move(change));
        }
    } catch (const Json::exception&) {
        refuse_part(quote, "plugins.json");
    }
    return changes;
}

Money saved_cost(const ledger::SavedQuote& quote, double quantity) {
    try {
        const auto cost = cost_in(Json::parse(part_of(quote, "answer.json")), quantity);
        const auto money = cost ? Money::rounded(*cost, 4) : std::nullopt;
        if (money) return *money;
    } catch (const Json::exception&) {
        refuse_part(quote, "answer.json");
    }
    refuse_part(quote, "answer.json");
}

}  // namespace flutebook::desk
