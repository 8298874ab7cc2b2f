// The answer of a search for the cheapest board that bears what is asked, and its document.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "host/answers/json_text.hpp"
#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"
#include "ledger/values/money.hpp"

namespace flutebook::what_if_answers {

/// At least one is given; both must be borne.
struct AskedStrength {
    std::optional<double> ect_kn_m;  // of the board
    std::optional<double> bct_kn;    // of the box, by the estimate

    [[nodiscard]] bool is_any() const { return ect_kn_m || bct_kn; }
};

struct BoardOnTrial {
    struct Priced {
        double quantity;
        std::optional<Money> cost, price_per_thousand;  // nothing where it cannot be made
    };
    std::string board;
    std::optional<double> ect_kn_m;       // nothing where boards.yaml gives none
    std::optional<double> compression_n;  // nothing where there is no estimate
    std::string why_not = {};             // empty: it bears what is asked, and was costed
    std::vector<Priced> quantities = {};  // of the request; empty where it was not costed

    [[nodiscard]] std::optional<Money> cost_at(std::size_t index) const {
        return index < quantities.size() ? quantities[index].cost : std::nullopt;
    }
};

struct BoardSearch {
    orders::Request request;
    AskedStrength asked;
    std::vector<BoardOnTrial> boards;
    std::vector<std::optional<std::size_t>> cheapest;  // by quantity, an index of `boards`; nothing where none serves

    /// Whether a board serves at every quantity.
    [[nodiscard]] bool is_complete() const;
};

/// The document of many requests, written one by one:
///
/// {"answer": "board-search", "answer_version", "plant", "currency", "requests": [R...]}
/// R = {"request", "asked": {"ect_kn_m", "bct_kn"} (null where it was not asked for), "boards": [B...], "cheapest":
/// [{"quantity", "board" (null where none serves)}...]}
/// B = {"board", "ect_kn_m", "compression_n" (null where there is no estimate), "why_not" (null where it was costed),
/// "quotes": [{"quantity", "cost", "price_per_thousand" (null where nothing can make it)}...]}
class BoardSearchStream {
public:
    explicit BoardSearchStream(const plant::Plant& plant);

    [[nodiscard]] const std::string& begin() const { return list_.begin(); }
    [[nodiscard]] std::string add(const BoardSearch& search);
    [[nodiscard]] std::string end() const { return list_.end(); }

private:
    answers::JsonListStream list_;
};

}  // namespace flutebook::what_if_answers
