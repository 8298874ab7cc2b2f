// A style from its whole entry: what people read, what it asks for, and its blanks.
#include "host/box_styles/styles_file.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <map>
#include <mutex>
#include <optional>
#include <utility>

#include "host/base/quoted_text.hpp"
#include "host/base/yaml/document.hpp"
#include "host/box_styles/library_extract.hpp"
#include "host/box_styles/piece_reader.hpp"
#include "host/box_styles/style_entries.hpp"
#include "host/box_styles/style_map.hpp"
#include "host/box_styles/style_names.hpp"
#include "host/box_styles/style_sums.hpp"

namespace flutebook::box_styles {

namespace {

constexpr std::size_t most_styles = 500;
constexpr std::size_t most_pieces = 8;

class StyleReader {
public:
    StyleReader(const fields::Field& entry, const SumScope& scope) : form_(entry), scope_(scope) {}

    Style read() {
        const fields::Field& entry = form_.map();
        style_.code = entry.key();
        style_.place = entry.key_place();
        style_.title = form_.field("title").text();
        if (form_.has("note")) style_.note = form_.field("note").text();
        if (form_.has("turn")) style_.may_turn = form_.field("turn").choice({"true", "false"}) == 0U;
        read_asks();
        const auto stages = read_made_by(form_);
        auto lets = read_let(form_, scope_);
        if (form_.has("pieces")) {
            read_pieces(lets, stages);
        } else {
            auto piece = read_piece(form_, scope_);
            piece.made_by = stages.value_or(std::vector<Stage>{});
            piece.let = std::move(lets);
            style_.pieces.push_back(std::move(piece));
        }
        read_requirements();
        form_.finish();
        return std::move(style_);
    }

private:
    void read_asks() {
        if (!form_.has("ask")) return;
        for (const auto& entry : form_.field("ask").entries()) {
            scope_.check_new_name(entry);
            fields::MapReader ask(entry);
            AskedMeasure measure;
            measure.name = entry.key();
            measure.initial = scope_.read(ask.field("default"), SumUse::number);
            const auto range = ask.field("range");
            const auto ends = range.items();
            if (range.is_list() && ends.size() != 2)
                range.complain(fmt::format("wrong type: found a list of {}, expected [low, high]", ends.size()));
            if (ends.size() == 2) {
                measure.low = scope_.read(ends[0], SumUse::number);
                measure.high = scope_.read(ends[1], SumUse::number);
            }
            measure.says = ask.field("says").text();
            ask.finish();
            scope_.add(measure);
            style_.asks.push_back(std::move(measure));
        }
    }

    void read_requirements() {
        if (!form_.has("require")) return;
        for (const auto& entry : form_.field("require").entries())
            style_.requirements.push_back({scope_.read_key(entry, SumUse::number), entry.text()});
    }

    void read_pieces(const std::vector<NamedSum>& lets, const std::optional<std::vector<Stage>>& stages) {
        const auto field = form_.field("pieces");
        const auto entries = field.entries_at_least_one();
        if (entries.size() > most_pieces)
            field.complain(fmt::format("too many pieces: found {}, expected at most {}", entries.size(), most_pieces));
        for (const auto& entry : entries) {
            fields::MapReader form(entry);
            SumScope scope = scope_;
            const auto piece_stages = read_made_by(form);
            auto piece_lets = lets;
            for (auto& sum : read_let(form, scope)) piece_lets.push_back(std::move(sum));
            auto piece = read_piece(form, scope);
            piece.name = entry.key();
            if (!is_cell_name(piece.name))
                entry.complain_of_key("not a name for a piece: expected a letter, then letters, digits or `_`");
            piece.made_by = piece_stages ? *piece_stages : stages.value_or(std::vector<Stage>{});
            piece.let = std::move(piece_lets);
            if (form.has("over")) piece.over = read_over(form.field("over"), entries);
            form.finish();
            style_.pieces.push_back(std::move(piece));
        }
    }

    static std::optional<std::size_t> read_over(const fields::Field& field, const std::vector<fields::Field>& pieces) {
        const auto name = field.text();
        for (std::size_t i = 0; i < pieces.size(); ++i)
            if (pieces[i].key() == name) return i;
        if (!name.empty()) field.complain("unknown piece: found " + base::shown(name) + ", expected one of this style");
        return std::nullopt;
    }

    fields::MapReader form_;
    SumScope scope_;
    Style style_;
};

const std::vector<std::string>& first_allowance_names() {
    static const std::vector<std::string> names = {"panel", "depth", "flap", "joint", "tab", "slot"};
    return names;
}

std::vector<Style> styles_of(const std::vector<base::Node::Entry>& entries, const fields::Field& table,
                             const std::vector<std::string>& allowance_names) {
    const SumScope scope(allowance_names);
    std::vector<Style> styles;
    for (const auto& entry : entries) {
        StyleReader reader(table.with_value(entry), scope);
        styles.push_back(reader.read());
        styles.back().text = entry_text(entry);
        note_names(styles.back(), allowance_names);
    }
    return styles;
}

// The whole text of a file of the library, or a part of it.
StyleLibrary read_library(const std::string& file, std::string text) {
    base::Diagnostics complaints;
    fields::Reading reading{complaints, ""};
    StyleLibrary library;
    const auto document = base::parse_document(std::move(text), file, complaints);
    if (document) {
        fields::MapReader form(fields::Field(*document, file, reading));
        const auto table = form.field("styles");
        library.entries = whole_entries(table, {});
        library.styles = styles_of(library.entries, table, first_allowance_names());
        form.finish();
    }
    complaints.throw_if_any(InputError::Whose::plant);
    return library;
}

StyleLibrary read_whole_library() {
    StyleLibrary whole;
    for (const LibraryFile& file : library_files()) {
        StyleLibrary part = read_library(file.name, file.text);
        std::move(part.entries.begin(), part.entries.end(), std::back_inserter(whole.entries));
        std::move(part.styles.begin(), part.styles.end(), std::back_inserter(whole.styles));
    }
    return whole;
}

Style outline_style() {
    Style outline;
    outline.code = outline_code;
    outline.title = "Cut to the customer's drawing, which gives the blank and its area";
    outline.is_outline = true;
    return outline;
}

std::vector<Style> with_library(std::vector<Style> plants) {
    std::vector<Style> styles = style_library().styles;
    for (auto& style : plants) {
        const auto same =
            std::find_if(styles.begin(), styles.end(), [&](const Style& other) { return other.code == style.code; });
        if (same == styles.end())
            styles.push_back(std::move(style));
        else
            *same = std::move(style);
    }
    styles.push_back(outline_style());
    return styles;
}

}  // namespace

std::vector<Style> read_styles(const fields::Field& table, const StyleSources& sources) {
    const auto entries = whole_entries(table, sources.library);
    if (table.is_map() && table.node()->entries.size() > most_styles) {
        table.complain(
            fmt::format("too many styles: found {}, expected at most {}", table.node()->entries.size(), most_styles));
        return {};
    }
    for (const auto& entry : table.entries_if_any())
        if (entry.key() == outline_code)
            entry.complain_of_key("a name that is taken: the request gives an outline itself, expected another");
    auto names = first_allowance_names();
    for (const auto& name : sources.allowance_names)
        if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    return styles_of(entries, table, names);
}

const StyleLibrary& style_library() {
    static const StyleLibrary library = read_whole_library();
    return library;
}

const Style* library_style(const std::string& code) {
    static std::mutex mutex;
    static std::map<std::string, Style> known;  // no code that the library lacks: a list may ask for any number
    const std::lock_guard lock(mutex);
    if (const auto found = known.find(code); found != known.end()) return &found->second;
    for (const LibraryFile& file : library_files()) {
        std::string text = library_extract(file.text, code);
        if (text.empty()) continue;
        for (Style& style : read_library(file.name, std::move(text)).styles)
            if (style.code == code) return &known.emplace(code, std::move(style)).first->second;
    }
    return nullptr;
}

StyleList::StyleList(std::vector<Style> plants) : styles_(std::make_shared<PlantStyles>()) {
    styles_->plants = std::move(plants);
}

const std::vector<Style>& StyleList::all() const {
    static const std::vector<Style> library_alone = with_library({});
    if (!styles_) return library_alone;
    std::call_once(styles_->merging, [&] { styles_->all = with_library(styles_->plants); });
    return styles_->all;
}

const Style* StyleList::find(const std::string& code) const {
    static const Style outline = outline_style();
    if (code == outline_code) return &outline;
    if (styles_)
        for (const Style& style : styles_->plants)
            if (style.code == code) return &style;
    return library_style(code);
}

}  // namespace flutebook::box_styles
