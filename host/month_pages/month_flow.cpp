// Masses are the answer's own; the picture leaves out what flowed back and says so in words, since it has one
// direction.
#include "host/month_pages/month_flow.hpp"

#include <map>
#include <optional>

#include "host/charts/stacked_bar.hpp"
#include "host/charts/staged_flow.hpp"
#include "host/month/placed_loss.hpp"
#include "host/month_pages/month_text.hpp"
#include "host/pages/report_parts.hpp"

namespace flutebook::pages {

namespace {

using charts::FlowNode;
using charts::FlowStream;
using Lane = FlowNode::Lane;

enum FlowStage : std::size_t { sources, corrugators, on_floor, converters, scrap, yard, ends };

const char* const paper_store = "paper-store";
const char* const adhesive_store = "adhesive-store";
const char* const floor_account = "floor";
const char* const finished = "finished";
const char* const loose_scrap = "loose-scrap";
const char* const bale_yard = "bale-yard";
// No accounts of the ledger: no account's name has a space.
const char* const opening_node = "opening stock";
const char* const closing_node = "closing stock";
const char* const missing_node = "not explained";
const char* const found_node = "found by counts";
const char* const mills_node = "all mills";

class FlowBuilder {
public:
    explicit FlowBuilder(const answers::MonthReview& review) : review_(review), account_(review.month.account) {
        flow_.title = "Flow of mass from the paper store to boxes and mills; the tables below have the same figures";
        flow_.others_link = month_address(account_.month).to("tables").text();
    }

    charts::StagedFlow flow() {
        add_nodes();
        for (const auto& stream : review_.streams) add_moved(stream);
        for (const auto& centre : account_.centres) add_stock(centre.centre, centre.open, centre.close, centre);
        add_floor_stock();
        return std::move(flow_);
    }

private:
    [[nodiscard]] ledger::EntrySearch entries(const char* kind, const std::string& centre = {}) const {
        ledger::EntrySearch search;
        search.month = account_.month;
        if (*kind != '\0') search.kind = kind;
        if (!centre.empty()) search.centre = centre;
        return search;
    }

    void add_node(const std::string& key, const std::string& name, const std::string& figure, std::size_t stage,
                  Lane lane, const Address& address) {
        nodes_[key] = flow_.nodes.size();
        flow_.nodes.push_back({name, figure, address.text(), stage, lane});
    }

    [[nodiscard]] bool is_corrugator(const std::string& machine) const {
        for (const auto& stream : review_.streams) {
            if (stream.to != machine) continue;
            if (stream.from == floor_account) return false;
            if (stream.from == paper_store || stream.from == adhesive_store) return true;
        }
        return false;
    }

    void add_machines(std::size_t stage) {
        for (const auto& centre : account_.centres)
            if (is_corrugator(centre.centre) == (stage == corrugators))
                add_node(centre.centre, centre.centre, tonnes_text(centre.in) + " in", stage, Lane::board,
                         entries_address(entries("", centre.centre)));
    }

    void add_nodes() {
        const Address tables = month_address(account_.month).to("tables");
        const auto sides = month::unexplained_sides(account_);
        add_node(paper_store, "Paper store", tonnes_text(account_.issued), sources, Lane::board,
                 entries_address(entries("paper")));
        add_node(adhesive_store, "Adhesive", tonnes_text(account_.adhesive), sources, Lane::board,
                 entries_address(entries("corrugator-run")));
        if (account_.opening_stock() > Grams())
            add_node(opening_node, "Opening stock", tonnes_text(account_.opening_stock()), sources, Lane::board,
                     entries_address(entries("count")));
        if (sides.under > Grams())
            add_node(found_node, "Found by counts", mass_words(sides.under), sources, Lane::board,
                     entries_address(entries("count")));
        add_machines(corrugators);
        add_node(floor_account, "Floor", tonnes_text(account_.floor.fed) + " fed", on_floor, Lane::board,
                 entries_address(entries("converter-run")));
        add_machines(converters);
        add_node(finished, "Boxes, sheets", tonnes_text(account_.product), ends, Lane::board, tables);
        if (account_.closing_stock() > Grams())
            add_node(closing_node, "Closing stock", tonnes_text(account_.closing_stock()), ends, Lane::board, tables);
        if (sides.over > Grams())
            add_node(missing_node, "Not explained", mass_words(sides.over), ends, Lane::board, tables);
        add_scrap_nodes();
    }

    void add_scrap_nodes() {
        add_node(loose_scrap, "Scrap", tonnes_text(account_.lost()), scrap, Lane::scrap,
                 month_address(account_.month).to("losses"));
        add_node(bale_yard, "Bale yard", tonnes_text(account_.bale_yard.close) + " left", yard, Lane::scrap,
                 entries_address(entries("bale")));
        add_node(mills_node, "Mills", tonnes_text(account_.sent), ends, Lane::scrap,
                 entries_address(entries("ticket")));
    }

    void add_stream(const std::string& from, const std::string& to, Grams mass, FlowStream::Kind kind,
                    const std::string& words, const Address& address) {
        const auto start = nodes_.find(from), end = nodes_.find(to);
        if (start == nodes_.end() || end == nodes_.end() || mass <= Grams()) return;
        if (flow_.nodes[start->second].stage >= flow_.nodes[end->second].stage) return;
        flow_.streams.push_back(
            {start->second, end->second, mass.to_kg(), kind, {words + ", " + tonnes_text(mass), address.text()}});
    }

    void add_moved(const answers::MassStream& stream) {
        const bool is_to_mill = stream.to.rfind("mill:", 0) == 0;
        if (is_to_mill)
            return add_stream(stream.from, mills_node, stream.mass, FlowStream::Kind::scrap,
                              "sent to " + stream.to.substr(stream.to.find(':') + 1),
                              entries_address(entries("ticket")));
        if (stream.to == bale_yard)
            return add_stream(stream.from, stream.to, stream.mass, FlowStream::Kind::scrap, "baled",
                              entries_address(entries("bale")));
        if (stream.to == loose_scrap)
            return add_stream(stream.from, stream.to, stream.mass, FlowStream::Kind::lost, "lost at " + stream.from,
                              entries_address(entries("", stream.from)));
        const bool is_fed = stream.from == floor_account;
        const std::string centre =
            is_fed || nodes_.count(stream.from) == 0 || stream.from == paper_store || stream.from == adhesive_store
                ? stream.to
                : stream.from;
        const char* kind = stream.from == paper_store ? "paper" : "";
        add_stream(stream.from, stream.to, stream.mass, FlowStream::Kind::board, stream.from + " to " + stream.to,
                   entries_address(entries(kind, centre)));
    }

    void add_stock(const std::string& name, Grams open, Grams close, const month::CentreAccount& centre) {
        const Address counts = entries_address(entries("count"));
        add_stream(opening_node, name, open, FlowStream::Kind::board, "opening stock at " + name, counts);
        add_stream(name, closing_node, close, FlowStream::Kind::board, "closing stock at " + name, counts);
        add_stream(name, missing_node, centre.unexplained(), FlowStream::Kind::lost, "not explained at " + name,
                   counts);
        add_stream(found_node, name, -centre.unexplained(), FlowStream::Kind::board, "found at " + name, counts);
    }

    void add_floor_stock() {
        month::CentreAccount floor;
        floor.open = account_.floor.counted;  // what it cannot explain is the count's difference alone
        floor.in = -(account_.floor.counted + account_.floor.counted);
        add_stock(floor_account, account_.floor.open, account_.floor.close, floor);
    }

    const answers::MonthReview& review_;
    const month::MonthAccount& account_;
    charts::StagedFlow flow_;
    std::map<std::string, std::size_t> nodes_;
};

// All that is accounted for: what was found stands on the side of what came in, so that nothing nets.
Html accounted_bar(const month::MonthAccount& account) {
    const auto sides = month::unexplained_sides(account);
    const Address here = month_address(account.month);
    std::vector<charts::StackedPart> parts = {
        {"product", {"product", here.to("tables").text()}, account.product.to_kg(), ""},
        {"closing stock", {"closing stock", here.to("tables").text()}, account.closing_stock().to_kg(), ""}};
    std::vector<Grams> masses = {account.product, account.closing_stock()};
    for (const auto& cause : account.causes) {
        parts.push_back({cause.cause,
                         {cause.cause, cause_address(account.month, cause.cause).text()},
                         cause.actual.to_kg(),
                         name_or(cause.cause, "no cause")});
        masses.push_back(cause.actual);
    }
    parts.push_back({"not explained", {"not explained", here.to("tables").text()}, sides.over.to_kg(), "unexplained"});
    masses.push_back(sides.over);
    Grams whole;
    for (const Grams mass : masses) whole += mass;
    const auto shares = shares_of_parts(masses, whole, whole);
    for (std::size_t i = 0; i < parts.size(); ++i) {
        parts[i].mark.name += " " + mass_words(masses[i]) + ", " + shares[i];
        parts[i].label += " " + shares[i];
    }
    return Html::rendered(charts::stacked_bar(
        {"Shares of all that is accounted for, " + tonnes_text(whole) + ", 100 %", parts, here.to("losses").text()},
        "shares"));
}

// What the picture cannot show, since it has one direction.
Html returned_note(const month::MonthAccount& account) {
    if (account.floor.returned <= Grams()) return {};
    return html(
        "<p class=\"note\">{} of what the converters were fed came back to the floor and was fed again; the picture "
        "shows it once.</p>\n",
        tonnes_text(account.floor.returned));
}

}  // namespace

Html month_flow(const answers::MonthReview& review) {
    const auto& account = review.month.account;
    const Html aside = html(
        "<span class=\"small quiet\">width is mass; board is warm, what was lost is red, scrap is grey</span>"
        "<a class=\"end\" href=\"{}\">as tables</a>",
        Address::here().to("tables"));
    Html inside = scrolling("Flow of mass", Html::rendered(charts::staged_flow(FlowBuilder(review).flow())));
    inside += scrolling("Shares of all that is accounted for", accounted_bar(account));
    return panel("flow", "Where every tonne went", aside, inside + returned_note(account));
}

}  // namespace flutebook::pages
