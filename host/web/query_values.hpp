// Values of a query or a form, read as the command line reads those of its options; what is wrong with any is told
// together.
#pragma once

#include <string>
#include <vector>

#include "host/command_line/option_readers.hpp"
#include "host/web/fields.hpp"

namespace flutebook::web {

/// `fields` must outlive it.
class QueryValues {
public:
    explicit QueryValues(const Fields& fields) : fields_(fields) {}

    /// Reads the field where it is there and not empty.
    void take(const char* name, const cli::Reader& read);
    /// It must be there.
    void expect(const char* name, const cli::Reader& read);

    /// Throws InputError (request).
    void throw_if_any_is_wrong() const;

private:
    const Fields& fields_;
    std::vector<std::string> faults_;
};

/// The value of a part of the address: throws InputError (request) where `read` refuses it.
void read_part(const char* name, const std::string& text, const cli::Reader& read);

}  // namespace flutebook::web
