// How messages name what a person gave: the command line has options, pages have fields.
#pragma once

#include <string>

namespace flutebook::pages {

/// What the fields are called that ask for something beside an enquiry: on their form, and in messages about them.
namespace beside_label {
inline constexpr const char *with = "Other numbers", *boards = "Boards side by side", *margins = "Margins",
                            *prices = "Prices asked", *rank = "What moves the price", *ect = "Edge crush",
                            *bct = "Compression", *corrugator = "Corrugator", *roll = "Roll", *ups = "Boxes a sheet";
}  // namespace beside_label

/// A message with the fields of the pages in place of the options that it names; what it quotes stays as it is.
[[nodiscard]] std::string in_field_words(std::string text);

}  // namespace flutebook::pages
