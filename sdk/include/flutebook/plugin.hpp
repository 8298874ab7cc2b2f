// flutebook/plugin.hpp: a cost model as about twenty lines of C++20 over the C contract of plugin.h.
//
// A model is a struct whose members declare what it needs, provides, charges and sheds, and whose `evaluate` computes
// one row. It is built by the compiler: a default out of range or a name given twice does not compile, and the
// description is constant data. This header owns the loop over rows, so that the row inlines into it.
// A declared axis is part of the type: a column cannot be taken for a number, nor a ply's index for a step's.
#pragma once

#include <flutebook/plugin.h>

#include <array>
#include <concepts>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <initializer_list>
#include <limits>
#include <string_view>

namespace flutebook {

enum Axis : std::uint32_t { order = FLUTEBOOK_ORDER, ply = FLUTEBOOK_PLY, step = FLUTEBOOK_STEP };
enum VariesBy : std::uint32_t {
    by_plant = FLUTEBOOK_BY_PLANT,
    by_paper = FLUTEBOOK_BY_PAPER,
    by_flute = FLUTEBOOK_BY_FLUTE,
    by_machine = FLUTEBOOK_BY_MACHINE,
    by_request = FLUTEBOOK_BY_REQUEST
};
enum CostClass : std::uint32_t {
    material = FLUTEBOOK_MATERIAL,
    energy = FLUTEBOOK_ENERGY,
    system = FLUTEBOOK_SYSTEM,
    waste_management = FLUTEBOOK_WASTE_MANAGEMENT,
    recovery = FLUTEBOOK_RECOVERY
};
enum Behaviour : std::uint32_t {
    per_unit = FLUTEBOOK_PER_UNIT,
    per_run = FLUTEBOOK_PER_RUN,
    period = FLUTEBOOK_PERIOD
};

/// What `step.kind` says of a step. Numbers like the name itself: f[kind][k] == die_cutter_kind.
inline constexpr double corrugator_kind = 0;
inline constexpr double printer_kind = 1;
inline constexpr double die_cutter_kind = 2;
inline constexpr double folder_gluer_kind = 3;
inline constexpr double dispatch_kind = 4;

constexpr Axis axis_of(VariesBy varies) {
    if (varies == by_machine) return step;
    return varies == by_paper || varies == by_flute ? ply : order;
}

struct Range {
    double low, high;
};
/// Any finite number that is not negative: what a name without a range of its own may be.
inline constexpr Range not_negative{0, 1e15};

/// A setting without a default: the plant (or the request) must give it.
inline constexpr struct Required {
} required;

struct Initial {
    constexpr Initial(double number) : value(number) {}
    constexpr Initial(int number) : value(number) {}
    constexpr Initial(Required) : value(0), is_required(1) {}
    double value;
    std::uint32_t is_required = 0;
};

/// A place on an axis. `Index<step>` walks `Frame::steps()` and `Frame::converters()`, `Index<ply>` `Frame::plies()`.
template <Axis A>
struct Index {
    std::uint32_t at;
    friend constexpr bool operator==(Index, Index) = default;
};
inline constexpr Index<step> corrugator{0};

template <Axis A>
struct Indices {
    struct Walker {
        std::uint32_t at;
        constexpr Index<A> operator*() const { return {at}; }
        constexpr Walker& operator++() {
            ++at;
            return *this;
        }
        friend constexpr bool operator==(Walker, Walker) = default;
    };
    std::uint32_t first, past;
    constexpr Walker begin() const { return {first}; }
    constexpr Walker end() const { return {past}; }
};

/// One row of a name that has an axis.
template <Axis A>
class Column {
public:
    constexpr Column(const double* first, std::size_t pitch) : first_(first), pitch_(pitch) {}
    constexpr double operator[](Index<A> index) const { return first_[index.at * pitch_]; }

private:
    const double* first_;
    std::size_t pitch_;
};

namespace detail {

// A list that grows while the compiler builds the model. Going past its end does not compile.
template <typename T, std::size_t Capacity>
struct List {
    std::array<T, Capacity> items{};
    std::uint32_t count = 0;
    constexpr T& add(const T& item) {
        items[count] = item;
        return items[count++];
    }
    constexpr flutebook_span span() const { return {items.data(), count, sizeof(T)}; }
};

// Calls to these are what the compiler names when a declaration is wrong.
void a_default_lies_outside_its_range();
void a_range_is_upside_down_or_not_finite();
void a_name_is_declared_twice();

constexpr bool same(const char* left, const char* right) {
    return std::string_view(left) == right;
}

constexpr void check_range(Range range) {
    const double most = std::numeric_limits<double>::max();
    if (!(range.low <= range.high && range.low >= -most && range.high <= most)) a_range_is_upside_down_or_not_finite();
}

template <typename T, std::size_t N>
constexpr void check_new(const List<T, N>& list, const char* name) {
    for (std::uint32_t i = 0; i < list.count; ++i)
        if (same(list.items[i].name, name)) a_name_is_declared_twice();
}

}  // namespace detail

/// What a declaration returns: its place in its list, and the element, whose axis the member's type still fills in.
template <typename T>
struct Declared {
    T& element;
    std::uint32_t index;
};

template <Axis A>
struct Need {
    constexpr Need(Declared<flutebook_name> made) : index(made.index) { made.element.axis = A; }
    std::uint32_t index;
};
template <Axis A>
struct Provide {
    struct From : Declared<flutebook_name> {};
    constexpr Provide(From made) : index(made.index) { made.element.axis = A; }
    std::uint32_t index;
};
template <VariesBy V>
struct Setting {
    constexpr Setting(Declared<flutebook_setting> made) : index(made.index) { made.element.varies_by = V; }
    std::uint32_t index;
};
template <Axis A>
struct Line {
    static_assert(A == ply || A == step, "a line is charged at a step, or by ply, which belongs to step 0");
    constexpr Line(Declared<flutebook_line> made) : index(made.index) { made.element.axis = A; }
    std::uint32_t index;
};
struct Loss {
    std::uint32_t index;
};
struct Reason {
    std::uint32_t index;
};

/// What every model derives from: the declarations, and nothing else. A model has no state of its own.
class Model {
public:
    constexpr flutebook_model describe(const char* id, const char* version, const char* title,
                                       std::uint32_t (*evaluate)(const flutebook_block*)) const {
        return {sizeof(flutebook_model),
                FLUTEBOOK_MAGIC,
                FLUTEBOOK_MAJOR,
                FLUTEBOOK_MINOR,
                "flutebook sdk 1.0, " __VERSION__,
                id,
                version,
                title,
                needs_.span(),
                provides_.span(),
                settings_.span(),
                lines_.span(),
                losses_.span(),
                reasons_.span(),
                evaluate};
    }

protected:
    constexpr Model() = default;

    // Found before the C library's function of the same name, which a standard header may bring in.
    static constexpr CostClass system = flutebook::system;

    /// A fact of the host, or what another model provides.
    constexpr Declared<flutebook_name> need(const char* name, const char* unit, const char* meaning,
                                            Range range = not_negative) {
        detail::check_range(range);
        detail::check_new(needs_, name);
        auto& made = needs_.add({name, unit, meaning, range.low, range.high, order, 0});
        return {made, needs_.count - 1};
    }

    struct Provided {
        Declared<flutebook_name> made;
        template <Axis A>
        constexpr operator Provide<A>() const {
            return typename Provide<A>::From{made};
        }
    };

    /// A number for other models. It must be set in every row, at every index of its axis.
    constexpr Provided provide(const char* name, const char* unit, const char* meaning, Range range = not_negative) {
        detail::check_range(range);
        detail::check_new(provides_, name);
        auto& made = provides_.add({name, unit, meaning, range.low, range.high, order, 0});
        return {{made, provides_.count - 1}};
    }

    /// A number that a person sets, by what it varies.
    constexpr Declared<flutebook_setting> setting(const char* name, const char* unit, Initial initial, Range range,
                                                  const char* meaning) {
        detail::check_range(range);
        detail::check_new(settings_, name);
        if (!initial.is_required && !(initial.value >= range.low && initial.value <= range.high))
            detail::a_default_lies_outside_its_range();
        auto& made = settings_.add(
            {name, unit, meaning, initial.value, range.low, range.high, {}, by_plant, initial.is_required});
        return {made, settings_.count - 1};
    }

    /// A choice among named values; the model gets the index. `names` must outlive the model: a static array.
    template <std::size_t N>
    constexpr Declared<flutebook_setting> choice(const char* name, const char* const (&names)[N], std::uint32_t initial,
                                                 const char* meaning) {
        auto made = setting(name, "1", static_cast<double>(initial), {0, static_cast<double>(N - 1)}, meaning);
        made.element.choices = {names, N, sizeof(const char*)};
        return made;
    }

    /// A line of the cost sheet: quantity in `unit` x rate in money per `unit`.
    constexpr Declared<flutebook_line> line(const char* name, const char* unit, CostClass cost_class,
                                            Behaviour behaviour, const char* title) {
        detail::check_new(lines_, name);
        auto& made = lines_.add({name, unit, title, step, cost_class, behaviour, 0});
        return {made, lines_.count - 1};
    }

    /// A cause under which paper and adhesive are lost, in kg by step.
    constexpr Loss loss(const char* cause, const char* title) {
        for (std::uint32_t i = 0; i < losses_.count; ++i)
            if (detail::same(losses_.items[i].cause, cause)) detail::a_name_is_declared_twice();
        losses_.add({cause, title});
        return {losses_.count - 1};
    }

    /// Why a row may be refused, as a person reads it: "heavier than a pallet may be".
    constexpr Reason reason(const char* sentence) {
        reasons_.add(sentence);
        return {reasons_.count - 1};
    }

private:
    detail::List<flutebook_name, 48> needs_;
    detail::List<flutebook_name, 32> provides_;
    detail::List<flutebook_setting, 48> settings_;
    detail::List<flutebook_line, 32> lines_;
    detail::List<flutebook_loss, 16> losses_;
    detail::List<const char*, 16> reasons_;
};

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
    Index<step> last_converter() const { return {block_.steps - 2}; }
    Index<step> dispatch() const { return {block_.steps - 1}; }

    void set(Provide<order> name, double value) { block_.provides[name.index][row_] = value; }
    template <Axis A>
    void set(Provide<A> name, Index<A> index, double value) {
        block_.provides[name.index][index.at * block_.pitch + row_] = value;
    }

    /// quantity x rate, at a step or for a ply. Charging the same place twice keeps the last.
    template <Axis A>
    void charge(Line<A> line, Index<A> index, double quantity, double rate) {
        block_.quantities[line.index][index.at * block_.pitch + row_] = quantity;
        block_.rates[line.index][index.at * block_.pitch + row_] = rate;
    }

    void shed(Loss loss, Index<step> index, double kg) {
        block_.losses[loss.index][index.at * block_.pitch + row_] = kg;
    }

    /// This row cannot be made, for a declared reason: the candidate is refused, others go on.
    void refuse(Reason reason) { block_.refused[row_] = reason.index + 1; }

private:
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

/// Exports the model. Once in a plugin, outside any namespace.
#define FLUTEBOOK_MODEL(Type, id, version, title)                 \
    namespace {                                                   \
    constexpr Type flutebook_the_model = Type();                  \
    }                                                             \
    extern "C" constinit const flutebook_model flutebook_plugin = \
        flutebook_the_model.describe(id, version, title, &flutebook::detail::evaluate_rows<flutebook_the_model>);
