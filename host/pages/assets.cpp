// The style sheet begins with what drawings need, which stands with their renderer, since a drawing in a file has the
// same look.
#include "host/pages/assets.hpp"

#include <algorithm>
#include <stdexcept>

#include "host/pages/installed_assets.hpp"
#include "host/render/svg_style.hpp"
#include "ledger/values/sha256.hpp"

namespace flutebook::pages {

namespace {

constexpr std::size_t shown_digits = 12;  // of a hash, in a name

std::string content_type(const std::string& ending) {
    if (ending == ".css") return "text/css; charset=utf-8";
    if (ending == ".js") return "text/javascript; charset=utf-8";
    return "image/svg+xml";
}

Asset made_asset(const std::string& name, std::string text) {
    const std::size_t dot = name.rfind('.');
    const std::string ending = name.substr(dot);
    if (name == "flutebook.css")
        text = std::string(render::colours()) + render::drawing_style() + render::loss_style() + text;
    const std::string hash = ledger::to_hex(ledger::sha256(text)).substr(0, shown_digits);
    return {name, name.substr(0, dot) + "-" + hash + ending, content_type(ending), std::move(text)};
}

std::vector<Asset> made_assets() {
    std::vector<Asset> result;
    for (auto& [name, text] : installed_assets()) result.push_back(made_asset(name, std::move(text)));
    return result;
}

}  // namespace

const std::vector<Asset>& assets() {
    static const std::vector<Asset> all = made_assets();
    return all;
}

const Asset& asset(const std::string& name) {
    const auto found =
        std::find_if(assets().begin(), assets().end(), [&](const Asset& item) { return item.name == name; });
    if (found == assets().end()) throw std::logic_error("no asset is called " + name);
    return *found;
}

}  // namespace flutebook::pages
