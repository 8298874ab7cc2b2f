// What was complained of so far, as the lines a person reads.
#pragma once

#include "host/catalogue/complaints.hpp"
#include "tests/unit/catalogue/plant_folder.hpp"

namespace flutebook::fixture {

inline Lines lines_of(const catalogue::Complaints& complaints) {
    try {
        complaints.throw_if_any(InputError::Whose::plant);
    } catch (const InputError& error) {
        return error.lines();
    }
    return {};
}

}  // namespace flutebook::fixture
