// What was complained of so far, as the lines a person reads.
#pragma once

#include "host/base/diagnostics.hpp"
#include "tests/unit/plant/plant_folder.hpp"

namespace flutebook::fixture {

inline Lines lines_of(const base::Diagnostics& complaints) {
    try {
        complaints.throw_if_any(InputError::Whose::plant);
    } catch (const InputError& error) {
        return error.lines();
    }
    return {};
}

}  // namespace flutebook::fixture
