// What a complaint must tell a person: which file, which model, and what is wrong with it.
#pragma once

#include <catch2/catch.hpp>

#include <algorithm>
#include <sstream>
#include <string>
#include <vector>

namespace flutebook::bad {

/// Matches one line that holds every part and does not end in a full stop.
class Says : public Catch::MatcherBase<std::string> {
public:
    explicit Says(std::vector<std::string> parts) : parts_(std::move(parts)) {}

    bool match(const std::string& said) const override {
        const bool is_one_sentence = !said.empty() && said.find('\n') == std::string::npos && said.back() != '.';
        return is_one_sentence && std::all_of(parts_.begin(), parts_.end(), [&](const std::string& part) {
                   return said.find(part) != std::string::npos;
               });
    }

    std::string describe() const override {
        std::ostringstream text;
        text << "is one line and holds";
        for (const std::string& part : parts_) text << "\n  " << part;
        return text.str();
    }

private:
    std::vector<std::string> parts_;
};

/// The model MODEL, from the file that this way to be wrong has for it, and the cause.
inline Says says(const std::string& way, const std::string& model, std::vector<std::string> cause) {
    cause.push_back("/" + way + "/plugins/" + model + ".so: model " + model + ": ");
    return Says(std::move(cause));
}

}  // namespace flutebook::bad
