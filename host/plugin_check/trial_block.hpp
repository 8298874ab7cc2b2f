// A block in memory for one model, with or without guard pages around its columns, and a call of the model that notices
// whatever the model does.
#pragma once

#include <flutebook/plugin.h>

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "host/contract/model.hpp"
#include "host/plugin_check/trial_rows.hpp"
#include "host/sandbox/watched_calls.hpp"

namespace flutebook::plugin_check {

/// How columns lie in memory. Guarded: a page without access follows, or precedes, every column, and the inputs are
/// read-only.
enum class GuardPages { none, after, before };

/// The outcome of one call.
struct CallOutcome {
    std::uint32_t code = 0;
    std::optional<std::uintptr_t> fault_address;  // on guarded memory: the forbidden address that it accessed
    bool threw = false;
    std::optional<std::string> changed;  // in the floating-point environment
    sandbox::CallNotes notes;            // where calls are recorded
};

/// What a model wrote for one row: provides, quantities, rates and losses, in the order of the description and by axis
/// index, and which reason it refused the row for.
struct RowOutput {
    std::vector<double> numbers;
    std::uint32_t refused = 0;
    /// Compares the bits; all NaNs are equal.
    friend bool operator==(const RowOutput& left, const RowOutput& right);
};

/// The name of the result at a place of RowOutput::numbers: "run.fed of step 2".
[[nodiscard]] std::string result_name(const contract::Model& model, engine::Shape shape, std::size_t place);

/// Memory for blocks of one shape with up to `capacity` rows, a multiple of 8. One thread at a time.
class TrialBlock {
public:
    enum class List { needs, settings, provides, quantities, rates, losses };

    TrialBlock(const contract::Model& model, engine::Shape shape, std::size_t capacity, GuardPages guards);
    ~TrialBlock();
    TrialBlock(const TrialBlock&) = delete;
    TrialBlock& operator=(const TrialBlock&) = delete;

    /// Writes the rows into the block.
    void fill(const Group& rows);

    /// Resets the results, as call() does itself.
    void begin_results();

    /// Resets the results and calls the model for the rows of fill().
    CallOutcome call();
    [[nodiscard]] RowOutput written(std::size_t row) const;

    [[nodiscard]] std::size_t count(List list) const { return slots_[place_of(list)].size(); }
    [[nodiscard]] std::size_t extent(List list, std::size_t name) const;
    [[nodiscard]] double& number(List list, std::size_t name, std::size_t index, std::size_t row);
    [[nodiscard]] double number(List list, std::size_t name, std::size_t index, std::size_t row) const;

    /// The name of the column beside whose rows the model wrote in the last call; nothing where it did not.
    [[nodiscard]] std::optional<std::string> strayed() const;

    /// The column whose memory or guard pages contain an address; nothing where there is none.
    struct Found {
        std::string column;
        bool is_input;
        bool is_beside;  // in the memory around the rows
    };
    [[nodiscard]] std::optional<Found> find(std::uintptr_t address) const;

    /// The block of the rows of fill(), for callers that call the model themselves.
    [[nodiscard]] const flutebook_block& block() const { return block_; }

private:
    // The columns of one name.
    struct Slot {
        std::string name;
        std::size_t extent;
        double begins_as;  // the first value of a result
        double* first = nullptr;
    };
    static constexpr std::size_t lists = 6;
    [[nodiscard]] static std::size_t place_of(List list) { return static_cast<std::size_t>(list); }
    [[nodiscard]] static bool is_input(std::size_t list) { return list < place_of(List::provides); }

    void name_slots(const contract::Model& model);
    void lay_out();
    void lay_out_refused(std::byte* at);
    void point_block();
    void protect_inputs(int how) const;
    template <typename Take>
    void each_column(const Take& take) const;

    std::uint32_t (*evaluate_)(const flutebook_block*);
    engine::Shape shape_;
    std::size_t capacity_, rows_ = 0;
    GuardPages guards_;
    std::size_t data_, pitch_;  // bytes of one column, and from one column to the next
    std::vector<Slot> slots_[lists];
    std::vector<double*> pointers_[lists];
    std::byte* memory_ = nullptr;
    std::size_t size_ = 0;
    std::uint32_t* refused_ = nullptr;
    flutebook_block block_{};
};

}  // namespace flutebook::plugin_check
