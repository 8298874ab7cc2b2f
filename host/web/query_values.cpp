#include "host/web/query_values.hpp"

#include <fmt/format.h>

#include "host/base/errors.hpp"

namespace flutebook::web {

void QueryValues::take(const char* name, const cli::Reader& read) {
    const std::string& text = fields_.at(name);
    if (text.empty()) return;
    if (const std::string fault = read(text); !fault.empty()) faults_.push_back(fmt::format("{}: {}", name, fault));
}

void QueryValues::expect(const char* name, const cli::Reader& read) {
    if (fields_.at(name).empty())
        faults_.push_back(fmt::format("{}: is missing: found nothing; fill it in", name));
    else
        take(name, read);
}

void QueryValues::throw_if_any_is_wrong() const {
    if (!faults_.empty()) throw InputError(InputError::Whose::request, faults_);
}

void read_part(const char* name, const std::string& text, const cli::Reader& read) {
    if (const std::string fault = read(text); !fault.empty())
        throw InputError(InputError::Whose::request, {fmt::format("{}: {}", name, fault)});
}

}  // namespace flutebook::web
