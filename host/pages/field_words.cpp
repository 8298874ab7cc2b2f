#include "host/pages/field_words.hpp"

#include <array>
#include <string_view>

namespace flutebook::pages {

namespace {

struct Saying {
    std::string_view option, field;
};

// Those that are longer before their beginnings.
constexpr std::array<Saying, 15> sayings = {
    {{"--approve NAME with one of", "in the field Approved by:"},
     {"by --why", "in its field"},
     {"with --why", "in the field Why"},
     {"with --empty-months where nothing ran", "it with the tick that nothing ran there"},
     {"--explain", "figure"},
     {"--with", beside_label::with},
     {"--board", beside_label::boards},
     {"--margin", beside_label::margins},
     {"--price", beside_label::prices},
     {"--rank", beside_label::rank},
     {"--ect", beside_label::ect},
     {"--bct", beside_label::bct},
     {"--corrugator", beside_label::corrugator},
     {"--roll", beside_label::roll},
     {"--ups", beside_label::ups}}};

// Not within a longer word, and not what somebody typed, which stands between marks.
bool stands_alone(std::string_view text, std::size_t begin, std::size_t end) {
    constexpr std::string_view before = " (", behind = " :;,).";
    return (begin == 0 || before.find(text[begin - 1]) != std::string_view::npos) &&
           (end == text.size() || behind.find(text[end]) != std::string_view::npos);
}

}  // namespace

std::string in_field_words(std::string text) {
    for (const Saying& saying : sayings)
        for (std::size_t at = text.find(saying.option); at != std::string::npos; at = text.find(saying.option, at)) {
            const std::size_t end = at + saying.option.size();
            const bool is_option = stands_alone(text, at, end);
            if (is_option) text.replace(at, saying.option.size(), saying.field);
            at += is_option ? saying.field.size() : 1;
        }
    return text;
}

}  // namespace flutebook::pages
