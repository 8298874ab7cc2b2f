#include "host/offers/offer_words.hpp"

#include <fmt/format.h>

#include <array>
#include <filesystem>
#include <optional>
#include <system_error>

#include "host/base/diagnostics.hpp"
#include "host/base/quoted_text.hpp"
#include "host/base/yaml/document.hpp"
#include "host/base/yaml/file.hpp"
#include "host/fields/map_reader.hpp"

namespace flutebook::offers {

namespace {

// A word, and what it is filled with, parted by spaces.
struct KnownWord {
    const char *section, *key, *filled;
};

constexpr std::array<KnownWord, 45> known_words{{{"heading", "offer", "number"},
                                                 {"heading", "for", ""},
                                                 {"heading", "enquiry", ""},
                                                 {"heading", "date", ""},
                                                 {"box", "style", ""},
                                                 {"box", "outline", ""},
                                                 {"box", "inside", ""},
                                                 {"box", "outside", ""},
                                                 {"box", "size", ""},
                                                 {"box", "board", ""},
                                                 {"box", "flutes", "flutes papers unit"},
                                                 {"box", "sheets", "flutes grammage unit"},
                                                 {"box", "printing", ""},
                                                 {"box", "one_colour", ""},
                                                 {"box", "colours", "colours"},
                                                 {"box", "box_weight", ""},
                                                 {"box", "sheet_weight", ""},
                                                 {"box", "set_weight", ""},
                                                 {"prices", "title", "currency"},
                                                 {"prices", "boxes", ""},
                                                 {"prices", "sheets", ""},
                                                 {"prices", "sets", ""},
                                                 {"prices", "per_thousand", ""},
                                                 {"prices", "order_value", ""},
                                                 {"prices", "not_offered", ""},
                                                 {"prices", "tax", ""},
                                                 {"drawing", "folded", ""},
                                                 {"drawing", "half_open", ""},
                                                 {"drawing", "piece_folded", "piece"},
                                                 {"drawing", "piece_half_open", "piece"},
                                                 {"drawing", "flat", ""},
                                                 {"drawing", "piece_flat", "piece"},
                                                 {"tools", "title", ""},
                                                 {"tools", "in_price", "tool"},
                                                 {"tools", "apart", "tool amount currency"},
                                                 {"not_included", "title", ""},
                                                 {"", "at_quantities", "quantities text"},
                                                 {"terms", "title", ""},
                                                 {"terms", "tolerance", ""},
                                                 {"terms", "up_to", "under over"},
                                                 {"terms", "valid_until", ""},
                                                 {"terms", "packing", ""},
                                                 {"terms", "delivery", ""},
                                                 {"terms", "payment", ""},
                                                 {"terms", "from", ""}}};

constexpr std::array<const char*, 7> sections{"heading", "box", "prices", "drawing", "tools", "not_included", "terms"};

std::string path_of(const std::string& section, const std::string& key) {
    return section.empty() ? key : section + "." + key;
}

std::string in_braces(std::string_view name) {
    return fmt::format("{{{}}}", name);
}

// What stands in braces, by what takes its place.
std::string filled_in(const std::string& word, const std::vector<OfferWords::Filling>& filled) {
    std::string result;
    for (std::size_t at = 0; at < word.size();) {
        const OfferWords::Filling* found = nullptr;
        for (const OfferWords::Filling& filling : filled)
            if (word.compare(at, filling.first.size() + 2, in_braces(filling.first)) == 0) found = &filling;
        result += found == nullptr ? std::string(1, word[at]) : found->second;
        at += found == nullptr ? 1 : found->first.size() + 2;
    }
    return result;
}

// A list of words for names that are not known beforehand.
struct KnownList {
    OfferWords::List list;
    const char *section, *key;
};

constexpr std::array<KnownList, 5> known_lists{{{OfferWords::List::tools, "tools", "lines"},
                                                {OfferWords::List::not_included, "not_included", "lines"},
                                                {OfferWords::List::pieces, "drawing", "pieces"},
                                                {OfferWords::List::asked, "terms", "asked"},
                                                {OfferWords::List::packed, "terms", "packed"}}};

std::string path_in(OfferWords::List list, const std::string& name) {
    const KnownList& known = known_lists.at(static_cast<std::size_t>(list));
    return fmt::format("{}.{}.{}", known.section, known.key, name);
}

std::vector<std::string> names_in(const std::string& list) {
    std::vector<std::string> result;
    for (std::size_t at = 0; at < list.size();) {
        const std::size_t end = std::min(list.find(' ', at), list.size());
        result.push_back(list.substr(at, end - at));
        at = end + 1;
    }
    return result;
}

class WordsReader {
public:
    WordsReader(fields::MapReader& file, std::map<std::string, std::string>& words) : file_(file), words_(words) {}

    void read() {
        words_["language"] = file_.field("language").text();
        read_section("", file_);
        for (const char* section : sections) {
            fields::MapReader form = file_.form(section);
            read_section(section, form);
            for (const KnownList& list : known_lists)
                if (section == std::string(list.section))
                    for (const fields::Field& entry : form.field(list.key).entries())
                        words_[path_in(list.list, entry.key())] = entry.text();
            form.finish();
        }
        file_.finish();
    }

private:
    void read_section(const std::string& section, fields::MapReader& form) {
        for (const KnownWord& word : known_words) {
            if (section != word.section) continue;
            const fields::Field field = form.field(word.key);
            std::string text = field.text();
            if (!text.empty())
                for (const std::string& name : names_in(word.filled))
                    if (text.find(in_braces(name)) == std::string::npos)
                        field.complain(fmt::format("a part is missing: found {}, expected `{}` in it",
                                                   base::shown(text), in_braces(name)));
            words_[path_of(section, word.key)] = std::move(text);
        }
    }

    fields::MapReader& file_;
    std::map<std::string, std::string>& words_;
};

}  // namespace

std::string OfferWords::text(const std::string& path, const std::vector<Filling>& filled) const {
    return filled_in(words_.at(path), filled);
}

bool OfferWords::has(List list, const std::string& name) const {
    return words_.count(path_in(list, name)) == 1;
}

std::string OfferWords::word_for(List list, const std::string& name, const std::vector<Filling>& filled) const {
    const auto found = words_.find(path_in(list, name));
    if (found != words_.end()) return filled_in(found->second, filled);
    throw InputError(InputError::Whose::plant,
                     {fmt::format("{}: {}: a word is missing: found none of that name; add it, in {} of the plant's "
                                  "folder",
                                  file_, path_in(list, name), own_words_file)});
}

OfferWords read_offer_words(const std::string& file, const std::string& text) {
    base::Diagnostics complaints;
    fields::Reading reading{complaints, ""};
    std::map<std::string, std::string> words;
    if (const auto document = base::parse_document(text, file, complaints)) {
        fields::MapReader form(fields::Field(*document, file, reading));
        WordsReader(form, words).read();
    }
    complaints.throw_if_any(InputError::Whose::plant);
    return {file, std::move(words)};
}

OfferWords read_offer_words(const std::string& plant_folder) {
    const std::string file = (std::filesystem::path(plant_folder) / own_words_file).string();
    std::error_code failure;
    if (std::filesystem::symlink_status(file, failure).type() == std::filesystem::file_type::not_found)
        return read_offer_words("config/offer-words.yaml", installed_words_text());
    base::Diagnostics complaints;
    const auto text = base::read_text_file(file, complaints);
    complaints.throw_if_any(InputError::Whose::plant);
    return read_offer_words(file, *text);
}

}  // namespace flutebook::offers
