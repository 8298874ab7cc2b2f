// The words of an offer, all in one file: the plant's offer.yaml where its folder has one, else
// config/offer-words.yaml, which is compiled in. So an offer leaves the house in the customer's language, and no word
// of another stands in it.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace flutebook::offers {

/// The plant's own file of words.
inline constexpr const char* own_words_file = "offer.yaml";

/// Plain values, safe to read from any thread.
class OfferWords {
public:
    /// What stands in braces, and the text that takes its place.
    using Filling = std::pair<std::string_view, std::string>;
    /// Words for names that others make: `tools.lines` and `not_included.lines` by the model and the line that charge,
    /// `drawing.pieces` by the pieces of styles, `terms.asked` by the model and the setting that a request gives,
    /// `terms.packed` by the model and the line that charge for what boxes stand on.
    enum class List { tools, not_included, pieces, asked, packed };

    /// `words` by their paths: "prices.title". `file` is what a message calls where they stand.
    OfferWords(std::string file, std::map<std::string, std::string> words)
        : file_(std::move(file)), words_(std::move(words)) {}

    /// The page's language, a code of ISO 639-1.
    [[nodiscard]] const std::string& language() const { return words_.at("language"); }
    /// A word that every file has, filled in.
    [[nodiscard]] std::string text(const std::string& path, const std::vector<Filling>& filled = {}) const;

    [[nodiscard]] bool has(List list, const std::string& name) const;
    /// What a customer calls it, filled in. Throws InputError (plant), naming the word that is missing.
    [[nodiscard]] std::string word_for(List list, const std::string& name,
                                       const std::vector<Filling>& filled = {}) const;

private:
    std::string file_;
    std::map<std::string, std::string> words_;
};

/// The words that count for a plant. Throws InputError (plant) with everything that is wrong with its file: each word
/// that is missing, one that is not known, one that lacks what it is to be filled with.
[[nodiscard]] OfferWords read_offer_words(const std::string& plant_folder);

/// The same from a text; `file` names it.
[[nodiscard]] OfferWords read_offer_words(const std::string& file, const std::string& text);

/// config/offer-words.yaml.
[[nodiscard]] std::string installed_words_text();

}  // namespace flutebook::offers
