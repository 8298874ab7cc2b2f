// The arguments that every command receives.
#pragma once

#include <string>

#include "host/base/date.hpp"
#include "host/command_line/output.hpp"

namespace flutebook::cli {

struct RunContext {
    std::string plant;   // the folder of its files
    std::string ledger;  // the file
    Output& output;

    /// The user name of the person who runs the program; the user number where there is no name. The ledger keeps it
    /// with each entry.
    [[nodiscard]] std::string person() const;
    /// By this machine's clock, UTC.
    [[nodiscard]] static base::Date today();
};

}  // namespace flutebook::cli
