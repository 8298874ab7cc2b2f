// The floating-point environment: rounding, flushing of small numbers, traps. It belongs to the thread, and a plugin
// that changes it would change every later sum without a message; a library linked for fast arithmetic does so by being
// loaded.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

namespace flutebook::contract {

/// Remembers the environment when made and puts it back when it goes out of scope. Sticky flags (inexact, overflow …)
/// do not count: every sum sets them.
class FloatingPointGuard {
public:
    FloatingPointGuard();
    ~FloatingPointGuard();
    FloatingPointGuard(const FloatingPointGuard&) = delete;
    FloatingPointGuard& operator=(const FloatingPointGuard&) = delete;

    /// What differs from when the guard was made: "the rounding mode"; nothing where nothing does.
    [[nodiscard]] std::optional<std::string> change() const;

private:
    struct Control {
        int rounding;
        std::uint32_t vector_unit, scalar_unit;
        friend bool operator==(const Control&, const Control&) = default;
    };
    static Control read();

    Control before_;
};

}  // namespace flutebook::contract
