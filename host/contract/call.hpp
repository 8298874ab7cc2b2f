// One call of a model's function, in any process, and the faults that are found after it returns.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include <flutebook/plugin.h>

namespace flutebook::contract {

/// What the model did wrong, as it goes on after its name; nothing where it answered. What it wrote is not looked at.
/// The floating-point environment is put back.
[[nodiscard]] std::optional<std::string> call(std::uint32_t (*evaluate)(const flutebook_block*),
                                              const flutebook_block& block);

}  // namespace flutebook::contract
