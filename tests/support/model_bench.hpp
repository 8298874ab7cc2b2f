// A workbench for one built model: opens its file as it is, without the host, and evaluates rows written by hand.
//
// Tests of a model say what goes in by name and read what comes out by name. The bench keeps the contract that the
// host would keep (columns on 64 bytes, a default where no setting is given, results handed over as NaN or 0) and
// refuses a test that breaks it: a name left out or out of range, a list of the wrong length, a setting unknown.
//
// A test program that uses it lists tests/support/model_bench.cpp among its sources and links flutebook::sdk and the
// loader (CMAKE_DL_LIBS).
#pragma once

#include <flutebook/plugin.h>

#include <cstdint>
#include <initializer_list>
#include <map>
#include <string>
#include <vector>

namespace flutebook::fixture {

/// What a name has: one number, or one per ply or step.
class Numbers {
public:
    Numbers(double one) : all_{one} {}
    Numbers(int one) : all_{static_cast<double>(one)} {}
    Numbers(std::initializer_list<double> several) : all_(several) {}
    Numbers(std::vector<double> several) : all_(std::move(several)) {}
    [[nodiscard]] const std::vector<double>& all() const { return all_; }

private:
    std::vector<double> all_;
};

using Named = std::map<std::string, Numbers>;

/// One order: how many plies and steps (K + 2) it has, its facts and its settings. Facts that a model does not need
/// are passed over, so that one row serves several models.
struct BenchRow {
    std::uint32_t plies, steps;
    Named facts;
    Named settings = {};
};

struct BenchLine {
    std::vector<double> quantity, rate;  // by step or by ply

    /// Sum of quantity x rate, not rounded.
    [[nodiscard]] double amount() const;
};

struct BenchResult {
    std::map<std::string, std::vector<double>> provides;
    std::map<std::string, BenchLine> lines;
    std::map<std::string, std::vector<double>> losses;  // by step, kg
    std::string refused;                                // the reason, empty where the row was taken

    /// Of all lines.
    [[nodiscard]] double amount() const;
};

/// One model. The file stays open for the life of the process. Const, usable from any thread.
class ModelBench {
public:
    /// Opens `id`.so where the build puts plugins. Throws std::runtime_error where it cannot.
    explicit ModelBench(const std::string& id);

    [[nodiscard]] const flutebook_model& model() const { return *model_; }

    /// Throws std::invalid_argument for a row that breaks the contract, std::logic_error where the model does: a result
    /// left unset or out of its range, a line or loss that is not finite, a block faulted.
    [[nodiscard]] BenchResult evaluate(const BenchRow& row) const;

    /// The same for rows of one shape, in one block.
    [[nodiscard]] std::vector<BenchResult> evaluate(const std::vector<BenchRow>& rows) const;

private:
    const flutebook_model* model_;
};

/// The row with all that the model provided added to its facts, for the model that comes next.
[[nodiscard]] BenchRow with_provided(BenchRow row, const BenchResult& result);

}  // namespace flutebook::fixture
