// flutebook/model.hpp: what a model declares, and the places that it may use. plugin.hpp brings it in.
//
// Members of a model's struct declare what it needs, provides, charges and sheds. The lists grow while the compiler
// builds the model: a default out of range or a name given twice does not compile. A declared axis is part of the type:
// a column cannot be taken for a number, nor a ply's index for a step's.
#pragma once

#include <flutebook/plugin.h>

#include <array>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <string_view>

namespace flutebook {

enum Axis : std::uint32_t { order = FLUTEBOOK_ORDER, ply = FLUTEBOOK_PLY, step = FLUTEBOOK_STEP };
enum VariesBy : std::uint32_t {
    by_plant = FLUTEBOOK_BY_PLANT,
    by_paper = FLUTEBOOK_BY_PAPER,
    by_flute = FLUTEBOOK_BY_FLUTE,
    by_machine = FLUTEBOOK_BY_MACHINE,
    by_request = FLUTEBOOK_BY_REQUEST,
    by_customer = FLUTEBOOK_BY_CUSTOMER,
    by_board = FLUTEBOOK_BY_BOARD,
    by_style = FLUTEBOOK_BY_STYLE,
    by_choice = FLUTEBOOK_BY_CHOICE
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
inline constexpr double slitter_kind = 5;
inline constexpr double stitcher_kind = 6;
inline constexpr double hand_kind = 7;

/// What `ply.kind` says of a ply.
inline constexpr double liner_kind = 0;
inline constexpr double medium_kind = 1;

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

class Frame;
template <Axis A>
struct Indices;
template <Axis A>
class Column;

/// A place on an axis, never outside it: only a Frame makes one. `Index<step>` walks `Frame::steps()` and
/// `Frame::converters()`, `Index<ply>` `Frame::plies()`.
template <Axis A>
class Index {
public:
    /// The corrugator, or the outside ply.
    constexpr Index() = default;
    friend constexpr bool operator==(Index, Index) = default;
    /// As numbers of facts count them: 0 is the corrugator, or the outside ply.
    [[nodiscard]] constexpr std::uint32_t number() const { return at_; }

private:
    friend class Frame;
    friend class Column<A>;
    friend struct Indices<A>;
    explicit constexpr Index(std::uint32_t place) : at_(place) {}
    std::uint32_t at_ = 0;
};
inline constexpr Index<step> corrugator{};

template <Axis A>
struct Indices {
    struct Walker {
        std::uint32_t at;
        constexpr Index<A> operator*() const { return Index<A>(at); }
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
    constexpr double operator[](Index<A> index) const { return first_[index.at_ * pitch_]; }

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
void a_usual_range_lies_outside_its_range();
void a_setting_is_stepped_over_a_need_of_another_axis();
void a_setting_is_keyed_by_something_else_than_a_choice();

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
template <VariesBy V>
struct Setting;

/// A setting on its way into its list, for what few settings declare:
///     setting("rate", "money/t", required, {0, 500}, "freight").usual({10, 60}).stepped_over(pallets)
struct DeclaredSetting : Declared<flutebook_setting> {
    Axis over = order;  // the axis of the need it is stepped over

    /// Outside this range the plant is warned.
    constexpr DeclaredSetting usual(Range range) const {
        detail::check_range(range);
        if (!(range.low >= element.low && range.high <= element.high && range.low < range.high))
            detail::a_usual_range_lies_outside_its_range();
        element.usual_low = range.low;
        element.usual_high = range.high;
        return *this;
    }
    /// Its file may give steps over this need, which is one of the order or of the setting's own axis.
    template <Axis A>
    constexpr DeclaredSetting stepped_over(Need<A> need) const {
        element.stepped_over = need.index + 1;
        auto result = *this;
        result.over = A;
        return result;
    }
    /// Of a setting by_choice: whose names are its keys.
    template <VariesBy V>
    constexpr DeclaredSetting keyed_by(Setting<V> choice) const;
};
template <Axis A>
struct Provide {
    struct From : Declared<flutebook_name> {};
    constexpr Provide(From made) : index(made.index) { made.element.axis = A; }
    std::uint32_t index;
};
template <VariesBy V>
struct Setting {
    constexpr Setting(DeclaredSetting made) : index(made.index) {
        made.element.varies_by = V;
        if (made.over != order && made.over != axis_of(V)) detail::a_setting_is_stepped_over_a_need_of_another_axis();
        if ((made.element.keyed_by != 0) != (V == by_choice))
            detail::a_setting_is_keyed_by_something_else_than_a_choice();
    }
    std::uint32_t index;
};
template <VariesBy V>
constexpr DeclaredSetting DeclaredSetting::keyed_by(Setting<V> choice) const {
    element.keyed_by = choice.index + 1;
    return *this;
}

/// A line on its way into its list.
struct DeclaredLine : Declared<flutebook_line> {
    /// The unit of its rate, where it is not money per unit of the quantity: "money/t" for a quantity in kg.
    constexpr DeclaredLine rate_unit(const char* unit) const {
        element.rate_unit = unit;
        return *this;
    }
};
template <Axis A>
struct Line {
    constexpr Line(DeclaredLine made) : index(made.index) { made.element.axis = A; }
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
    constexpr flutebook_model describe(std::uint32_t (*evaluate)(const flutebook_block*), const char* id,
                                       const char* version, const char* title, const char* author = nullptr,
                                       const char* contact = nullptr) const {
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
                evaluate,
                author,
                contact,
                0,
                0};
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
    constexpr DeclaredSetting setting(const char* name, const char* unit, Initial initial, Range range,
                                      const char* meaning) {
        detail::check_range(range);
        detail::check_new(settings_, name);
        if (!initial.is_required && !(initial.value >= range.low && initial.value <= range.high))
            detail::a_default_lies_outside_its_range();
        auto& made = settings_.add(
            {name, unit, meaning, initial.value, range.low, range.high, {}, by_plant, initial.is_required, 0, 0, 0, 0});
        return {{made, settings_.count - 1}};
    }

    /// A choice among named values; the model gets the index. `names` must outlive the model: a static array.
    template <std::size_t N>
    constexpr DeclaredSetting choice(const char* name, const char* const (&names)[N], std::uint32_t initial,
                                     const char* meaning) {
        auto made = setting(name, "1", static_cast<double>(initial), {0, static_cast<double>(N - 1)}, meaning);
        made.element.choices = {names, N, sizeof(const char*)};
        return made;
    }

    /// A line of the cost sheet: quantity in `unit` x rate in money per `unit`.
    constexpr DeclaredLine line(const char* name, const char* unit, CostClass cost_class, Behaviour behaviour,
                                const char* title) {
        detail::check_new(lines_, name);
        auto& made = lines_.add({name, unit, title, step, cost_class, behaviour, 0, nullptr});
        return {{made, lines_.count - 1}};
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
    detail::List<flutebook_name, FLUTEBOOK_MOST_NAMES> needs_;
    detail::List<flutebook_name, FLUTEBOOK_MOST_NAMES> provides_;
    detail::List<flutebook_setting, FLUTEBOOK_MOST_SETTINGS> settings_;
    detail::List<flutebook_line, FLUTEBOOK_MOST_LINES> lines_;
    detail::List<flutebook_loss, FLUTEBOOK_MOST_LOSSES> losses_;
    detail::List<const char*, FLUTEBOOK_MOST_REASONS> reasons_;
};

}  // namespace flutebook
