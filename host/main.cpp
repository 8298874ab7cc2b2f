// The program. Hands over to the command line's face, and catches what made going on impossible.
#include <exception>
#include <string>

#include "host/base/errors.hpp"
#include "host/cli/child_process_main.hpp"
#include "host/cli/output.hpp"
#include "host/cli/program.hpp"
#include "ledger/values/error.hpp"

using flutebook::InputError;
using flutebook::LedgerError;
using flutebook::ModelError;
using namespace flutebook::cli;

int main(int count, char** words) {
    try {
        if (const auto inside = run_inside(count, words)) return *inside;
        return run(count, words);
    } catch (const InputError& error) {
        complain(error.lines());
        return static_cast<int>(error.whose() == InputError::Whose::plant ? ExitCode::unfit : ExitCode::refused);
    } catch (const ModelError& error) {
        complain(error.lines());
        return static_cast<int>(ExitCode::unfit);
    } catch (const LedgerError& error) {
        complain(error.lines());
        return static_cast<int>(error.kind() == LedgerError::Kind::unfit ? ExitCode::unfit : ExitCode::refused);
    } catch (const std::exception& error) {
        // Of the machine, not of any file: no memory, no such program link.
        complain({std::string("flutebook: could not go on: ") + error.what() +
                  "; free some memory or ask for less at a time"});
        return static_cast<int>(ExitCode::refused);
    }
}
