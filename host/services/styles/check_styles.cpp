// Sizes, flutes and boxes at random.
#include "host/services/styles/check_styles.hpp"

#include <fmt/format.h>

#include <cmath>

#include "host/base/errors.hpp"
#include "host/services/styles/show_style.hpp"

namespace flutebook::services {

namespace {

using plant_answers::CheckedStyle;
using plant_answers::StyleTrial;
using BoxSize = std::array<double, 3>;

// A carton, a cube, a flat, a tall, a small and a very large one.
constexpr BoxSize named_sizes[] = {{400, 300, 250}, {250, 250, 250}, {600, 400, 60},
                                   {200, 120, 500}, {130, 90, 70},   {1180, 780, 900}};

struct CheckedFlutes {
    const plant::Allowance* allowance;
    double caliper_mm;
};

std::vector<CheckedFlutes> checked_flutes(const plant::Plant& plant, const box_styles::Style& style) {
    std::vector<CheckedFlutes> all;
    for (const plant::Allowance& allowance : plant.allowances)
        for (const plant::Board& board : plant.boards) {
            if (plant.find_allowance(board.flutes, style.code) != &allowance) continue;
            all.push_back({&allowance, plant::caliper_mm(plant, board)});
            break;
        }
    return all;
}

// The same numbers on every machine, which distributions of the standard library do not promise.
class RandomSizes {
public:
    explicit RandomSizes(std::uint64_t seed) : state_(seed) {}

    /// L between 120 and 1200 mm, B no longer, H between 60 and 900; whole millimetres, small ones as often as large.
    BoxSize next() {
        const double length = between(120, 1200), breadth = between(90, length);
        return {length, breadth, between(60, 900)};
    }

private:
    double between(double low, double high) { return std::round(low * std::pow(high / low, share())); }

    // SplitMix64 (Steele, Lea, Flood 2014), public domain.
    double share() {
        state_ += 0x9e3779b97f4a7c15U;
        std::uint64_t mixed = (state_ ^ (state_ >> 30U)) * 0xbf58476d1ce4e5b9U;
        mixed = (mixed ^ (mixed >> 27U)) * 0x94d049bb133111ebU;
        return static_cast<double>((mixed ^ (mixed >> 31U)) >> 11U) * 0x1p-53;
    }

    std::uint64_t state_;
};

StyleTrial trial(const box_styles::Style& style, const CheckedFlutes& flutes, const BoxSize& inside_mm,
                 blanks::SizeBounds bounds) {
    StyleTrial result = {flutes.allowance->flutes, flutes.caliper_mm, inside_mm, "", {}};
    try {
        result.proof =
            blanks::prove(blanks::draw_flat(style, {inside_mm, flutes.caliper_mm, flutes.allowance, {}}), bounds);
    } catch (const InputError& error) {
        result.refusal = error.lines().front();
    }
    return result;
}

void try_random_boxes(const box_styles::Style& style, const CheckedFlutes& flutes,
                      const plant_answers::StyleCheckOptions& options, CheckedStyle& checked) {
    RandomSizes sizes(options.seed);
    for (std::size_t box = 0; box < options.random_boxes; ++box) {
        StyleTrial tried = trial(style, flutes, sizes.next(), options.bounds);
        ++checked.random_boxes;
        if (!tried.refusal.empty())
            ++checked.refused_boxes;
        else if (!tried.proof.holds())
            checked.wrong_boxes.push_back(std::move(tried));
    }
}

CheckedStyle checked_style(const plant::Plant& plant, const box_styles::Style& style,
                           const plant_answers::StyleCheckOptions& options) {
    CheckedStyle checked = {style.code, style.title, style.note, style.is_folded(), {}, 0, 0, {}};
    for (const CheckedFlutes& flutes : checked_flutes(plant, style)) {
        for (const BoxSize& size : named_sizes) checked.trials.push_back(trial(style, flutes, size, options.bounds));
        try_random_boxes(style, flutes, options, checked);
    }
    return checked;
}

[[noreturn]] void refuse_outline(const std::string& code) {
    throw InputError(
        InputError::Whose::request,
        {fmt::format("style: {} has nothing to fold: the request itself gives its blank; name another", code)});
}

}  // namespace

plant_answers::StyleCheck check_styles(const plant::Plant& plant, const plant_answers::StyleCheckOptions& options) {
    plant_answers::StyleCheck check;
    if (!options.code.empty()) {
        const box_styles::Style& style = style_of(plant, options.code);
        if (style.is_outline) refuse_outline(style.code);
        check.styles.push_back(checked_style(plant, style, options));
        return check;
    }
    for (const box_styles::Style& style : plant.styles)
        if (!style.is_outline) check.styles.push_back(checked_style(plant, style, options));
    return check;
}

}  // namespace flutebook::services
