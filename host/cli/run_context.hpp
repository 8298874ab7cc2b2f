// What every command is run with.
#pragma once

#include <string>

#include "host/cli/output.hpp"

namespace flutebook::cli {

struct RunContext {
    std::string plant;   // the folder of its files
    std::string ledger;  // the file
    Output& output;

    /// The user name of the person who runs the program; the user number where there is no name. The ledger keeps it
    /// with each entry.
    [[nodiscard]] std::string person() const;
};

}  // namespace flutebook::cli
