// The program: runs the command line, and turns an exception into its message and its exit code.
#include <exception>
#include <string>

#include "host/base/errors.hpp"
#include "host/cli/commands.hpp"
#include "ledger/values/error.hpp"

using flutebook::InputError;
using flutebook::LedgerError;
using flutebook::ModelError;
using namespace flutebook::cli;

int main(int count, char** words) {
    try {
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
        // The machine failed, not a file: no memory, no link to the program itself.
        complain({std::string("flutebook: could not go on: ") + error.what() +
                  "; free some memory or ask for less at a time"});
        return static_cast<int>(ExitCode::refused);
    }
}
