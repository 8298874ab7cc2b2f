// The names that one table of the plant gives, as another file may refer to them.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "host/plant/yaml/map_reader.hpp"

namespace flutebook::plant {

class Codes {
public:
    /// `kind` is what a message calls one of them: "paper".
    Codes(std::string kind, const Field& table);

    /// The index of a name in the order of its file. Complains at `field`, where it was referred to, if there is no
    /// such name; but not where the table itself could not be read: it was complained of.
    [[nodiscard]] std::optional<std::size_t> find(const Field& field, const std::string& name) const;
    /// The same where the index is of no use.
    void expect(const Field& field, const std::string& name) const { static_cast<void>(find(field, name)); }

private:
    std::string kind_;
    std::vector<std::string> names_;
    std::unordered_map<std::string, std::size_t> index_;
    bool is_known_;
};

}  // namespace flutebook::plant
