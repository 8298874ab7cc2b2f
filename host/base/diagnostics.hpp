// Collects all errors of the files being read, so that a person can correct them together.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "host/base/errors.hpp"
#include "host/base/place.hpp"

namespace flutebook::base {

/// Not shared between threads.
class Diagnostics {
public:
    /// `file:line:column: path: text`; a path may be empty, a line 0 is left out.
    void add(const Place& place, const std::string& path, const std::string& text);

    void add_all(const Diagnostics& others);

    [[nodiscard]] std::size_t count() const { return items_.size(); }
    [[nodiscard]] bool empty() const { return items_.empty(); }
    /// Whether there are so many already that a better sentence is not worth its time.
    [[nodiscard]] bool too_many() const { return count() > 1000; }

    /// All complaints: files in the order of their first, each in its own order. What was
    /// said twice of one place is said once, though two paths lead there: an entry that takes over another's.
    [[nodiscard]] std::vector<std::string> lines() const;

    /// Throws lines() as an InputError if there is any complaint.
    void throw_if_any(InputError::Whose whose) const;

private:
    struct Item {
        std::size_t file;  // index into files_
        Place place;
        std::string line;
        std::string text;  // of the line, without place and path
    };
    void add_item(const Place& place, const std::string& line, const std::string& text);

    std::vector<std::string> files_;
    std::vector<Item> items_;
};

}  // namespace flutebook::base
