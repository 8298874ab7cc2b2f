#include "ledger/writing/sealed_content.hpp"

#include <array>
#include <utility>

#include "ledger/writing/chain.hpp"

namespace flutebook::ledger {

namespace {

// The lines of hashes, in their order.
constexpr std::array<std::pair<std::string_view, Hash SealedContent::*>, 4> hash_lines = {{
    {"totals ", &SealedContent::totals},
    {"stocks ", &SealedContent::stocks},
    {"quotes ", &SealedContent::quotes},
    {"orders ", &SealedContent::orders},
}};

// Takes the next line off the text, if it begins so; answers with its rest.
std::optional<std::string_view> take_line(std::string_view& text, std::string_view beginning) {
    if (text.substr(0, beginning.size()) != beginning) return std::nullopt;
    const auto end = text.find('\n');
    if (end == std::string_view::npos) return std::nullopt;
    const auto rest = text.substr(beginning.size(), end - beginning.size());
    text.remove_prefix(end + 1);
    return rest;
}

std::optional<Month> parse_month(std::string_view text) {
    if (text.size() != 7 || text[4] != '-') return std::nullopt;
    std::int64_t number = 0;
    for (const std::size_t i : {0U, 1U, 2U, 3U, 5U, 6U}) {
        if (text[i] < '0' || text[i] > '9') return std::nullopt;
        number = number * 10 + (text[i] - '0');
    }
    return month_of(number);
}

}  // namespace

std::string to_text(const SealedContent& content) {
    std::string text = "month " + to_text(content.month) + "\n";
    for (const auto& line : hash_lines) text += std::string(line.first) + to_hex(content.*line.second) + "\n";
    for (const auto& account : content.inner_accounts) text += "inner " + account + "\n";
    return text;
}

std::optional<SealedContent> parse_sealed(std::string_view text) {
    SealedContent content;
    const auto month_text = take_line(text, "month ");
    const auto month = month_text ? parse_month(*month_text) : std::nullopt;
    if (!month) return std::nullopt;
    content.month = *month;
    for (const auto& line : hash_lines) {
        const auto digits = take_line(text, line.first);
        const auto hash = digits ? from_hex(*digits) : std::nullopt;
        if (!hash) return std::nullopt;
        content.*line.second = *hash;
    }
    while (const auto account = take_line(text, "inner ")) content.inner_accounts.emplace_back(*account);
    return text.empty() ? std::optional(content) : std::nullopt;
}

Hash totals_hash(Month month, const std::vector<Flow>& flows, const std::vector<ExpectedLoss>& expected) {
    ChainText text;
    text.begin(Hash{}, "totals 1");
    text.number(to_number(month));
    text.number(static_cast<std::int64_t>(flows.size()));
    for (const auto& flow : flows) {
        for (const auto* name : {&flow.from, &flow.to, &flow.material, &flow.cause}) text.text(*name);
        text.number(flow.movements);
        text.number(flow.mass.count());
        text.number(flow.money.ten_thousandths());
    }
    text.number(static_cast<std::int64_t>(expected.size()));
    for (const auto& loss : expected) {
        text.text(loss.centre);
        text.text(loss.cause);
        text.number(loss.mass.count());
    }
    return text.hash();
}

Hash stocks_hash(Month month, const std::vector<Balance>& stocks) {
    ChainText text;
    text.begin(Hash{}, "stocks 1");
    text.number(to_number(month));
    text.number(static_cast<std::int64_t>(stocks.size()));
    for (const auto& stock : stocks) {
        text.text(stock.account);
        text.text(stock.material);
        text.number(stock.mass.count());
        text.number(stock.money.ten_thousandths());
    }
    return text.hash();
}

}  // namespace flutebook::ledger
