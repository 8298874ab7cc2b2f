#include "host/plugin_check/load_rules.hpp"

#include "host/base/errors.hpp"
#include "host/plugin_check/subject.hpp"

namespace flutebook::plugin_check {
namespace {

// What the host would say of the file, without the file's name.
Wrong said_by_host(const Subject& subject, const ModelError& error) {
    const std::string begin = subject.file().where() + ": ";
    const std::string& line = error.lines().front();
    return line.compare(0, begin.size(), begin) == 0 ? line.substr(begin.size()) : line;
}

}  // namespace

Wrong try_loading(Subject& subject) {
    try {
        static_cast<void>(subject.library());
    } catch (const ModelError& error) {
        return said_by_host(subject, error);
    }
    return std::nullopt;
}

Wrong try_loading_floating_point(Subject& subject) {
    const auto& change = subject.library().computes_apart;
    if (!change) return std::nullopt;
    return "loading it changed how the whole program computes: " + *change + "; link it without fast arithmetic";
}

Wrong try_description(Subject& subject) {
    try {
        static_cast<void>(subject.model());
    } catch (const ModelError& error) {
        return said_by_host(subject, error);
    }
    return std::nullopt;
}

}  // namespace flutebook::plugin_check
