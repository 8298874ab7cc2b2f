// A block laid out in memory for one model, in the open or on guarded ground, and called so that nothing the model
// does can end the call unseen.
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

/// How columns lie in memory. Guarded: every column ends, or begins, where memory that may not be touched begins or
/// ends, and what a model only reads may only be read.
enum class Ground { open, guarded_after, guarded_before };

/// What came of one call.
struct Answer {
    std::uint32_t code = 0;
    std::optional<std::uintptr_t> struck;  // on guarded ground: the address that it must not touch
    bool threw = false;
    std::optional<std::string> changed;  // of the floating-point environment
    sandbox::CallNotes notes;            // where calls are watched
};

/// What a model wrote for one row: provides, quantities, rates and losses, in the order of the description and by axis
/// index, and which reason it refused the row for.
struct Written {
    std::vector<double> numbers;
    std::uint32_t refused = 0;
    /// To the bit; every NaN is like every other.
    friend bool operator==(const Written& left, const Written& right);
};

/// Which result stands at a place of Written::numbers: "run.fed of step 2".
[[nodiscard]] std::string result_name(const contract::Model& model, engine::Shape shape, std::size_t place);

/// Memory for blocks of one shape with up to `capacity` rows, a multiple of 8. One thread at a time.
class Stage {
public:
    enum class List { needs, settings, provides, quantities, rates, losses };

    Stage(const contract::Model& model, engine::Shape shape, std::size_t capacity, Ground ground);
    ~Stage();
    Stage(const Stage&) = delete;
    Stage& operator=(const Stage&) = delete;

    /// Puts the rows in.
    void fill(const Group& rows);

    /// Hands results over afresh, as call() does by itself.
    void begin_results();

    /// Calls the model over the rows that were put in. Results start afresh.
    Answer call();
    [[nodiscard]] Written written(std::size_t row) const;

    [[nodiscard]] std::size_t count(List list) const { return slots_[place_of(list)].size(); }
    [[nodiscard]] std::size_t extent(List list, std::size_t name) const;
    [[nodiscard]] double& number(List list, std::size_t name, std::size_t index, std::size_t row);
    [[nodiscard]] double number(List list, std::size_t name, std::size_t index, std::size_t row) const;

    /// Where the model wrote beside its rows in the last call, as people are told; nothing where it did not.
    [[nodiscard]] std::optional<std::string> strayed() const;

    /// The column that an address belongs to, with the ground around it; nothing where it is no part of this.
    struct Found {
        std::string column;
        bool is_input;
        bool is_beside;  // on the ground around it
    };
    [[nodiscard]] std::optional<Found> find(std::uintptr_t address) const;

    /// The block of the rows that were put in, for rules that call the model themselves.
    [[nodiscard]] const flutebook_block& block() const { return block_; }

private:
    // The columns of one name.
    struct Slot {
        std::string name;
        std::size_t extent;
        double begins_as;  // results: what they are handed over as
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
    Ground ground_;
    std::size_t data_, pitch_;  // bytes of one column's own ground, and from one column to the next
    std::vector<Slot> slots_[lists];
    std::vector<double*> pointers_[lists];
    std::byte* memory_ = nullptr;
    std::size_t size_ = 0;
    std::uint32_t* refused_ = nullptr;
    flutebook_block block_{};
};

}  // namespace flutebook::plugin_check
