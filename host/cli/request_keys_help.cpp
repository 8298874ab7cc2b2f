#include "host/cli/request_keys_help.hpp"

#include <fmt/format.h>

#include "host/orders/request_keys.hpp"
#include "host/render/text.hpp"

namespace flutebook::cli {

std::string request_keys_help() {
    constexpr std::size_t columns = 80;
    std::string result =
        "\n\nA request is a YAML file with these keys, those with * in each; lengths in mm,\n"
        "or with their unit (15 1/4 in):\n";
    for (const orders::RequestKey& key : orders::request_keys()) {
        const char* mark = key.given == orders::RequestKey::Given::always ? "*" : "";
        result += render::hanging(fmt::format("  {:<13}", std::string(key.key) + mark),
                                  fmt::format("{}{}", key.says, *key.unit == 0 ? "" : fmt::format(" ({})", key.unit)),
                                  columns);
        result += fmt::format("{:15}{}: {}\n", "", key.key, key.example);
    }
    result.pop_back();
    return result;
}

}  // namespace flutebook::cli
