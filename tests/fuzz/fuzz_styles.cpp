// Mutated files of box styles through the reader; what it takes is drawn at a size, measured, proved by folding and
// drawn as pictures. Each is refused with its place or drawn: no figure is no number, no case takes long or much
// memory.
#include <sys/resource.h>

#include <algorithm>
#include <cmath>
#include <ctime>

#include "host/base/errors.hpp"
#include "host/base/yaml/document.hpp"
#include "host/blanks/flat_measures.hpp"
#include "host/blanks/proof.hpp"
#include "host/box_styles/styles_file.hpp"
#include "host/drawings/blank_drawings.hpp"
#include "host/render/svg.hpp"
#include "tests/fuzz/fuzzer.hpp"

using namespace flutebook;
using fuzz::CaseEnd;
using fuzz::WrongCase;

namespace {

const std::string styles_file = "s.yaml";

// Of the processor, so that a busy machine finds nothing.
constexpr double longest_case_s = 5;
// What the sanitizers keep of freed memory comes on top.
#if defined(FLUTEBOOK_SANITIZED)
constexpr long most_memory_kb = 1000 * 1024;
#else
constexpr long most_memory_kb = 200 * 1024;
#endif

// The library's files whole.
std::vector<std::string> whole_texts() {
    std::vector<std::string> texts;
    for (const box_styles::LibraryFile& file : box_styles::library_files()) texts.push_back(file.text);
    return texts;
}

// Each entry of a file of the library as a file of its own.
void add_entries(const std::string& library, std::vector<std::string>& texts) {
    for (std::size_t at = library.find("\n  \""); at != std::string::npos;) {
        const std::size_t next = library.find("\n  \"", at + 1);
        const std::size_t count = next == std::string::npos ? next : next - at - 1;
        texts.push_back("styles:\n" + library.substr(at + 1, count) + "\n");
        at = next;
    }
}

std::vector<std::string> entry_texts() {
    std::vector<std::string> texts;
    for (const std::string& library : whole_texts()) add_entries(library, texts);
    return texts;
}

void replace_one(std::string& text, const std::vector<std::string>& old_parts,
                 const std::vector<std::string>& new_parts, fuzz::Draws& draws) {
    const std::string& part = draws.of(old_parts);
    std::vector<std::size_t> places;
    for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) places.push_back(at);
    if (!places.empty()) text.replace(draws.of(places), part.size(), draws.of(new_parts));
}

// What people change in a style: a sum, a name, a sign of the map, an angle, a key.
std::string mutated_style(std::string text, fuzz::Draws& draws) {
    static const std::vector<std::string> sums = {"L", "B", "H", "t", "panel", "flap", "tab", "h", "l", "b/2", "h - t"};
    static const std::vector<std::string> other_sums = {
        "0",           "-t",        "L*B",      "1/0",  "20*L",   "(L - B)", "0.001",    "19999",
        "t/1000",      "max(L, B)", "-(L + H)", "40*t", "1e9",    "i",       "w",        "d",
        "floor(L/30)", "L/(L-B)",   "2*tab",    "H/2",  "0.99*L", "w*w/L",   "min(w, d)"};
    static const std::vector<std::string> signs = {" | ", " / ", "--", " . ",  "- ", "tab",
                                                   "p1",  "p2",  "g1", "base", "e1"};
    static const std::vector<std::string> other_signs = {" / ", " | ", " ",    "--", " . ", "p3",
                                                         "g1",  "p1",  "base", "x",  ""};
    static const std::vector<std::string> folds = {", ", " p2", " p4", " g1", " f2", " e1", " c2", " lid", "]"};
    static const std::vector<std::string> other_folds = {
        " -90, ", " 180 ", " -180 ", " 0 ", " 1 ", " 89.9 ", " 45 ", " -1e-9 ", " 181 ", " ", ", ", "]", " 90.0000001"};
    static const std::vector<std::string> keys = {
        "depth:", "inset:", "taper:", "shape:", "holes:", "plain:", "cells:", "fold:", "join:", "inside:",
        "cover:", "count:", "over:",  "like:",  "let:",   "ask:",   "size:",  "slot:", "turn:", "walls:"};
    for (std::size_t left = 1 + draws.below(3); left > 0; --left) switch (draws.below(4)) {
            case 0:
                replace_one(text, sums, other_sums, draws);
                break;
            case 1:
                replace_one(text, signs, other_signs, draws);
                break;
            case 2:
                replace_one(text, folds, other_folds, draws);
                break;
            default:
                replace_one(text, keys, keys, draws);
        }
    return text;
}

class StyleFuzzer {
public:
    StyleFuzzer() : plant_(plant::read_plant(FLUTEBOOK_SOURCE_DIR "/config/demo")), units_(plant_) {}

    [[nodiscard]] CaseEnd run_case(fuzz::Draws& draws) const {
        const std::clock_t begin = std::clock();
        const std::string text = changed(draws);
        try {
            const CaseEnd end = run_text(text, draws);
            check_costs(begin, text);
            return end;
        } catch (const InputError& error) {
            check_refusal(error, InputError::Whose::plant, text);
            check_costs(begin, text);
            return CaseEnd::refused;
        }
    }

private:
    [[nodiscard]] std::string changed(fuzz::Draws& draws) const {
        const std::string& text = draws.of(draws.one_in(40) ? files_ : entries_);
        switch (draws.below(3)) {
            case 0:
                return fuzz::mutated(text, draws);
            case 1:
                return fuzz::mutated(mutated_style(text, draws), draws);
            default:
                return mutated_style(text, draws);
        }
    }

    static std::vector<box_styles::Style> read(const std::string& text) {
        base::Diagnostics complaints;
        fields::Reading reading{complaints, "EUR"};
        std::vector<box_styles::Style> styles;
        if (const auto document = base::parse_document(text, styles_file, complaints)) {
            fields::MapReader form(fields::Field(*document, styles_file, reading));
            styles = box_styles::read_styles(form.field("styles"), {box_styles::style_library().entries, {}});
            form.finish();
        }
        complaints.throw_if_any(InputError::Whose::plant);
        return styles;
    }

    [[nodiscard]] CaseEnd run_text(const std::string& text, fuzz::Draws& draws) const {
        bool is_drawn = false;
        for (const box_styles::Style& style : read(text)) is_drawn = draw(style, text, draws) || is_drawn;
        return is_drawn ? CaseEnd::answered : CaseEnd::refused;
    }

    [[nodiscard]] blanks::StyleSize drawn_size(fuzz::Draws& draws) const {
        static const std::vector<double> lengths = {400, 300, 250, 130, 90, 70, 61.5, 1180, 900, 1, 0.001, 7000};
        static const std::vector<double> calipers = {1.5, 3, 4.2, 7};
        blanks::StyleSize size{{draws.of(lengths), draws.of(lengths), draws.of(lengths)},
                               draws.of(calipers),
                               draws.one_in(20) ? nullptr : &draws.of(plant_.allowances),
                               {},
                               draws.one_in(4),
                               "inside"};
        if (!draws.one_in(3)) size.inside_mm = {400, 300, 250};
        return size;
    }

    // Whether the style has blanks at a size.
    [[nodiscard]] bool draw(const box_styles::Style& style, const std::string& text, fuzz::Draws& draws) const {
        try {
            const auto blanks = blanks::draw_flat(style, drawn_size(draws));
            for (const blanks::FlatBlank& blank : blanks) check_measures(blank, text);
            check_proof(blanks::prove(blanks), text);
            const std::string picture = render::svg_file(drawings::blank_drawings(units_, blanks));
            if (picture.find("nan") != std::string::npos || picture.find("inf\"") != std::string::npos)
                throw WrongCase{"a picture with a place that is no number: " + style.code, text};
            return true;
        } catch (const InputError& error) {
            check_refusal(error, InputError::Whose::request, text);
            return false;
        }
    }

    static void check_measures(const blanks::FlatBlank& blank, const std::string& text) {
        const blanks::FlatMeasures measures = blanks::measure(blank);
        const double most_mm2 = blank.length_mm * blank.width_mm * (1 + 1e-9) + 1e-3;
        check_figure("length", blank.length_mm, 1e7, text);
        check_figure("width", blank.width_mm, 1e7, text);
        check_figure("area", measures.area_mm2, most_mm2, text);
        check_figure("print area", measures.print_area_mm2, measures.area_mm2 * (1 + 1e-9) + 1e-3, text);
        for (const double figure : {measures.cut_mm, measures.crease_mm, measures.joint_mm})
            check_figure("a line", figure, 1e9, text);
    }

    static void check_figure(const char* name, double value, double most, const std::string& text) {
        // Sums of lengths may leave less than rounding below 0.
        if (!std::isfinite(value) || value < -1e-6 || value > most)
            throw WrongCase{std::string(name) + " of a blank is " + std::to_string(value), text};
    }

    static void check_proof(const blanks::FoldingProof& proof, const std::string& text) {
        for (const blanks::FoldingFault& fault : proof.faults)
            if (!std::isfinite(fault.amount) || fault.text.empty() || fault.text.find("nan") != std::string::npos)
                throw WrongCase{"a fault that says no number: " + fault.text, text};
        if (!proof.holds()) return;
        for (const blanks::PieceProof& piece : proof.pieces)
            for (const auto& inside : piece.inside_mm)
                if (inside && !(inside->pushed_out_mm > 0))
                    throw WrongCase{"a box that holds, with nothing inside: " + std::to_string(inside->pushed_out_mm),
                                    text};
    }

    static void check_refusal(const InputError& error, InputError::Whose whose, const std::string& text) {
        if (error.whose() != whose)
            throw WrongCase{"an error that is told as somebody else's: " + error.lines().front(), text};
        const bool is_files = whose == InputError::Whose::plant;
        if (const auto fault =
                fuzz::fault_of_refusal(error.lines(), {is_files ? styles_file + ":" : "inside: ", "library/"}))
            throw WrongCase{*fault, text};
        for (const std::string& line : error.lines())
            if (!is_files && line.find("; style `") == std::string::npos)
                throw WrongCase{"a refusal that names no style: " + line, text};
    }

    static void check_costs(std::clock_t begin, const std::string& text) {
        const double spent_s = static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
        if (spent_s > longest_case_s) throw WrongCase{"took " + std::to_string(spent_s) + " s", text};
        rusage used{};
        ::getrusage(RUSAGE_SELF, &used);
        if (used.ru_maxrss > most_memory_kb)
            throw WrongCase{"took " + std::to_string(used.ru_maxrss) + " kB of memory", text};
    }

    plant::Plant plant_;
    drawings::ShownUnits units_;
    std::vector<std::string> files_ = whole_texts(), entries_ = entry_texts();
};

}  // namespace

int main(int count, char** words) {
    const StyleFuzzer fuzzer;
    return fuzz::run_fuzzer(count, words, [&](fuzz::Draws& draws) { return fuzzer.run_case(draws); });
}
