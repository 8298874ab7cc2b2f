// The other pieces of a set are costed before its first, because the first piece's late models need the cost of all.
#include "host/quoting/quote.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "host/base/errors.hpp"
#include "host/quoting/approval.hpp"
#include "host/quoting/cost_sheet.hpp"
#include "host/quoting/explained_figure.hpp"
#include "host/quoting/forced_way.hpp"
#include "host/quoting/offered_price.hpp"
#include "host/quoting/piece_quote.hpp"
#include "host/quoting/provided.hpp"
#include "host/quoting/shared_trim.hpp"
#include "host/quoting/strength.hpp"
#include "host/quoting/style_warnings.hpp"

namespace flutebook::quoting {
namespace {

using answers::RequestAnswer;

// A request laid out piece by piece.
struct LaidOutRequest {
    const plant::Plant& plant;
    const engine::Engine& engine;
    const orders::Request& request;
    std::vector<geometry::Layout> layouts;  // by piece
    std::optional<ExplainedFigure> explained = {};

    [[nodiscard]] bool is_set() const { return !layouts.front().piece.name.empty(); }
};

LaidOutRequest laid_out(const plant::Plant& plant, const engine::Engine& engine, const orders::Request& request,
                        const answers::ForcedWay& way) {
    LaidOutRequest result{plant, engine, request, {}};
    const std::size_t pieces = blanks::pieces_of(plant, request).size();
    for (std::size_t p = 0; p < pieces; ++p)
        result.layouts.push_back(narrowed_to(way, plant, request, p, geometry::lay_out(plant, request, p)));
    return result;
}

// What is asked for of one piece may pass what a plant makes of anything, though the sets do not.
void refuse_too_many(const LaidOutRequest& work) {
    for (const geometry::Layout& layout : work.layouts)
        for (const double sets : work.request.quantities) {
            const double pieces = sets * layout.piece.count;
            if (pieces <= fields::range::ordered.high) continue;
            throw InputError(InputError::Whose::request,
                             {fmt::format("{}: quantities: too many pieces: found {:.0f} sets, {:.0f} of {}, expected "
                                          "at most {:.0f}; ask for fewer sets",
                                          base::place_text(work.request.places, "quantities", work.request.place), sets,
                                          pieces, layout.piece.name, fields::range::ordered.high)});
        }
}

// A box that cannot be, and extras that do not fit the models, have nothing to do with each other: both are told.
LaidOutRequest checked_and_laid_out(const plant::Plant& plant, const engine::Engine& engine, orders::Request& request,
                                    const answers::ForcedWay& way) {
    std::vector<std::string> faults;
    InputError::Whose whose{};
    try {
        if (request.outside) request.inside = blanks::inside_of(plant, request);
        LaidOutRequest result = laid_out(plant, engine, request, way);
        refuse_too_many(result);
        return result;
    } catch (const InputError& box) {
        faults = box.lines();
        whose = box.whose();
    }
    try {
        static_cast<void>(engine.settings_of(plant, request));
    } catch (const InputError& extras) {
        faults.insert(faults.end(), extras.lines().begin(), extras.lines().end());
    }
    throw InputError(whose, std::move(faults));
}

// One piece at each quantity; `others` holds, by quantity, what all other pieces cost where this is the first.
std::vector<PieceQuantity> quote_one(const LaidOutRequest& work, std::size_t piece,
                                     const std::vector<engine::ClassCosts>& others,
                                     const answers::QuoteOptions& asked) {
    const geometry::Layout& layout = work.layouts[piece];
    std::vector<engine::Order> orders;
    for (std::size_t i = 0; i < work.request.quantities.size(); ++i)
        orders.push_back(work.engine.order(work.plant, work.request, layout,
                                           work.request.quantities[i] * layout.piece.count,
                                           {piece, work.layouts.size(), others[i]}));
    std::optional<ExplainedFigure> explained = work.explained;
    if (explained && explained->quantity) *explained->quantity *= layout.piece.count;
    return quote_piece(work.engine, layout, orders, asked, explained);
}

void add_costs(std::vector<engine::ClassCosts>& sum, const std::vector<PieceQuantity>& piece) {
    for (std::size_t i = 0; i < sum.size(); ++i)
        for (std::size_t c = 0; c < sum[i].size(); ++c) sum[i][c] += piece[i].costs[c];
}

// The sum of the pieces; where one of them cannot be made, the limits of each that cannot.
RequestAnswer::Quantity set_quantity(const LaidOutRequest& work, double sets, std::vector<RequestAnswer::Piece>& pieces,
                                     std::size_t index) {
    std::vector<const answers::Quote*> quotes;
    answers::Unmakeable unmakeable{sets, {}};
    for (const RequestAnswer::Piece& piece : pieces) {
        const RequestAnswer::Quantity& quantity = piece.quantities[index];
        if (quantity.quote) quotes.push_back(&*quantity.quote);
        if (quantity.unmakeable)
            for (const geometry::Refused& way : quantity.unmakeable->refused)
                unmakeable.refused.push_back({piece.name + ": " + way.candidate, way.limit});
    }
    if (quotes.size() == pieces.size())
        return {std::nullopt, std::nullopt, set_sheet(work.plant, work.request, sets, quotes)};
    for (RequestAnswer::Piece& piece : pieces)
        if (RequestAnswer::Quantity& quantity = piece.quantities[index]; quantity.quote)
            quantity = {std::nullopt, answers::Unmakeable{sets * piece.count, {}}};
    return {std::nullopt, std::move(unmakeable)};
}

void quote_set(const LaidOutRequest& work, const answers::QuoteOptions& asked, RequestAnswer& result) {
    const std::vector<double>& quantities = work.request.quantities;
    const std::vector<engine::ClassCosts> nothing(quantities.size());
    std::vector<engine::ClassCosts> others = nothing;
    std::vector<RequestAnswer::Piece> pieces;
    for (std::size_t p = work.layouts.size(); p-- > 0;) {
        std::vector<PieceQuantity> costed = quote_one(work, p, p == 0 ? others : nothing, asked);
        add_costs(others, costed);
        const blanks::BlankPiece& blank = work.layouts[p].piece;
        RequestAnswer::Piece piece{blank.name, blank.count, {}};
        for (PieceQuantity& quantity : costed) piece.quantities.push_back(std::move(quantity.answered));
        pieces.insert(pieces.begin(), std::move(piece));
    }
    for (std::size_t i = 0; i < quantities.size(); ++i)
        result.quantities.push_back(set_quantity(work, quantities[i], pieces, i));
    result.pieces = std::move(pieces);
}

void quote_box(const LaidOutRequest& work, const answers::QuoteOptions& asked, RequestAnswer& result) {
    const std::vector<engine::ClassCosts> nothing(work.request.quantities.size());
    for (PieceQuantity& quantity : quote_one(work, 0, nothing, asked))
        result.quantities.push_back(std::move(quantity.answered));
}

void add_losses_warning(RequestAnswer& answer, const RequestAnswer::Quantity& quantity) {
    if (!quantity.quote || quantity.quote->terms.lost_otherwise_by.empty()) return;
    const orders::OrderRecord& terms = quantity.quote->terms;
    answer.warnings.push_back(
        {base::place_text(answer.request.place),
         fmt::format("the losses at {:.0f}{} are those of {}, not of the formulas of the run, by which month and "
                     "`order cost` expect",
                     terms.quantity, terms.piece.empty() ? "" : " of " + terms.piece, terms.lost_otherwise_by)});
}

void add_warnings(const plant::Plant& plant, const answers::QuoteOptions& asked, RequestAnswer& answer) {
    for (std::size_t i = 0; i < answer.quantities.size(); ++i) {
        if (auto warning = price_warning(plant, answer.request, answer.quantities[i], asked))
            answer.warnings.push_back(std::move(*warning));
        add_losses_warning(answer, answer.quantities[i]);
        for (const RequestAnswer::Piece& piece : answer.pieces) add_losses_warning(answer, piece.quantities[i]);
    }
}

// Beside what the request costs with its share of the web, what it costs alone.
void add_alone(RequestAnswer& result, const LaidOutRequest& work, const answers::QuoteOptions& asked) {
    if (!result.request.trim.share || !asked.has_alone || result.model_fault) return;
    orders::Request alone = result.request;
    alone.trim = {};
    alone.outside.reset();  // its inside is known
    answers::QuoteOptions options;
    options.threads = asked.threads;
    options.way = asked.way;
    result.trim = shared_trim(result, quote(work.plant, work.engine, alone, options));
    for (base::Warning& warning : trim_warnings(result)) result.warnings.push_back(std::move(warning));
}

}  // namespace

RequestAnswer quote(const plant::Plant& plant, const engine::Engine& engine, const orders::Request& request,
                    const answers::QuoteOptions& asked) {
    if (asked.provided) expect_model(engine, *asked.provided);
    expect_way(plant, asked.way);
    RequestAnswer result{request, {}, std::nullopt};
    LaidOutRequest work = checked_and_laid_out(plant, engine, result.request, asked.way);
    if (asked.explain) work.explained = explained_figure(engine, result.request, work.layouts.size(), *asked.explain);
    const engine::Order order =
        engine.order(plant, result.request, work.layouts.front(), result.request.quantities.front());
    result.warnings = request.doubts;
    for (const contract::UnusualValue& value : order.settings.unusual)
        result.warnings.push_back({base::place_text(value.place), value.text});
    try {
        work.is_set() ? quote_set(work, asked, result) : quote_box(work, asked, result);
    } catch (const ModelError& error) {
        result.quantities.clear();
        result.model_fault = error.what();
    }
    add_warnings(plant, asked, result);
    for (base::Warning& warning : approval_warnings(plant, result)) result.warnings.push_back(std::move(warning));
    result.terms = offer_terms(plant, result.request);
    result.strength = estimated_strength(plant, result.request);
    add_alone(result, work, asked);
    for (base::Warning& warning : style_warnings(plant, engine, result)) result.warnings.push_back(std::move(warning));
    if (asked.has_drawings) result.drawn = blanks::draw_request(plant, result.request);
    return result;
}

}  // namespace flutebook::quoting
