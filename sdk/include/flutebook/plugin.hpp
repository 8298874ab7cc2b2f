// flutebook/plugin.hpp: a cost model as about twenty lines of C++20 over the C contract of plugin.h.
//
// A model is a struct whose members declare (model.hpp) and whose `evaluate` computes one row. It is built by the
// compiler, and its description is constant data. This header owns the loop over rows, so that the row inlines into it.
#pragma once

#include <flutebook/plugin.h>
#include <flutebook/model.hpp>

#include <cassert>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <optional>

namespace flutebook {

/// One row of a block: what `evaluate` reads and writes. Lives for one call.
class Frame {
public:
    Frame(const flutebook_block& block, std::uint32_t row) : block_(block), row_(row) {}

    double operator[](Need<order> name) const { return block_.needs[name.index][row_]; }

    template <Axis A>
    Column<A> operator[](Need<A> name) const {
        return {block_.needs[name.index] + row_, block_.pitch};
    }

    template <VariesBy V>
    auto operator[](Setting<V> name) const {
        const double* first = block_.settings[name.index] + row_;
        if constexpr (axis_of(V) == order)
            return *first;
        else
            return Column<axis_of(V)>(first, block_.pitch);
    }

    Indices<ply> plies() const { return {0, block_.plies}; }
    Indices<step> steps() const { return {0, block_.steps}; }
    Indices<step> converters() const { return {1, block_.steps - 1}; }
    /// The corrugator where there is no converter.
    Index<step> last_converter() const { return Index<step>(block_.steps - 2); }
    Index<step> dispatch() const { return Index<step>(block_.steps - 1); }

    /// The neighbours of an index; nothing at the ends.
    template <Axis A>
    std::optional<Index<A>> next(Index<A> index) const {
        if (index.at_ + 1 >= extent<A>()) return std::nullopt;
        return Index<A>(index.at_ + 1);
    }
    template <Axis A>
    std::optional<Index<A>> prev(Index<A> index) const {
        if (index.at_ == 0) return std::nullopt;
        return Index<A>(index.at_ - 1);
    }

    void set(Provide<order> name, double value) { block_.provides[name.index][row_] = value; }
    template <Axis A>
    void set(Provide<A> name, Index<A> index, double value) {
        block_.provides[name.index][offset(index)] = value;
    }

    /// quantity x rate, at a step or for a ply. Charging the same place twice keeps the last.
    template <Axis A>
    void charge(Line<A> line, Index<A> index, double quantity, double rate) {
        block_.quantities[line.index][offset(index)] = quantity;
        block_.rates[line.index][offset(index)] = rate;
    }
    /// The same once for the order; it belongs to dispatch.
    void charge(Line<order> line, double quantity, double rate) {
        block_.quantities[line.index][row_] = quantity;
        block_.rates[line.index][row_] = rate;
    }

    void shed(Loss loss, Index<step> index, double kg) { block_.losses[loss.index][offset(index)] = kg; }

    /// This row cannot be made, for a declared reason: the candidate is refused, others go on.
    void refuse(Reason reason) { block_.refused[row_] = reason.index + 1; }

private:
    template <Axis A>
    std::uint32_t extent() const {
        return A == step ? block_.steps : A == ply ? block_.plies : 1;
    }
    // An index of another frame may lie outside this one: a build with assertions says so.
    template <Axis A>
    std::size_t offset(Index<A> index) const {
        assert(index.at_ < extent<A>());
        return index.at_ * block_.pitch + row_;
    }

    const flutebook_block& block_;
    std::uint32_t row_;
};

namespace detail {

template <const auto& M>
std::uint32_t evaluate_rows(const flutebook_block* block) {
    // A local copy: the compiler then knows that no store of a result moves a column. No more than the host wrote: one
    // of an older minor knows fewer fields.
    flutebook_block columns{};
    std::memcpy(&columns, block, block->size < sizeof columns ? block->size : sizeof columns);
#if defined(__cpp_exceptions)
    try {
#endif
        for (std::uint32_t row = 0; row < columns.rows; ++row) {
            Frame frame(columns, row);
            M.evaluate(frame);
        }
#if defined(__cpp_exceptions)
    } catch (...) {
        return 1;
    }
#endif
    return 0;
}

}  // namespace detail
}  // namespace flutebook

/// Exports the model. Once in a plugin, outside any namespace: FLUTEBOOK_MODEL(Type, id, version, title), and who
/// answers for it, if you like: FLUTEBOOK_MODEL(Type, id, version, title, author, contact).
#define FLUTEBOOK_MODEL(Type, ...)                                \
    namespace {                                                   \
    constexpr Type flutebook_the_model = Type();                  \
    }                                                             \
    extern "C" constinit const flutebook_model flutebook_plugin = \
        flutebook_the_model.describe(&flutebook::detail::evaluate_rows<flutebook_the_model>, __VA_ARGS__);
