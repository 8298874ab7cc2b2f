// paper: what the papers of an order cost, or its board where that is bought as sheets.
//
//   paper[p]     = issued kg of ply p x price per kg on the day of the request
//   bought-board = m2 of board bought x price per m2 on the day of the request, in the place of its papers
// Roll ends are paid for like the rest: `paper.issued` holds them. Source: common practice, no published source.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

constexpr double grams_per_kg = 1000;

struct Paper : Model {
    Need<order> made_here =
        need("board.made_here", "1", "1 where the board is made here, 0 where it is bought", {0, 1});
    Need<ply> issued = need("paper.issued", "kg", "paper issued for each ply, or the board that is bought");
    Need<ply> price = need("ply.price", "money/kg", "price of each paper on the day of the request");
    Need<ply> grammage =
        need("ply.grammage", "g/m2", "grammage of each paper, or of the board that is bought", {1e-6, 1e9});
    Line<ply> paper = line("paper", "kg", material, per_unit, "Paper");
    Line<ply> bought = line("bought-board", "m2", material, per_unit, "Board, bought as sheets");

    void evaluate(Frame& f) const {
        const double here = f[made_here];
        for (auto p : f.plies()) {
            const double kg_per_m2 = f[grammage][p] / grams_per_kg;
            f.charge(paper, p, here * f[issued][p], f[price][p]);
            f.charge(bought, p, (1 - here) * f[issued][p] / kg_per_m2, f[price][p] * kg_per_m2);
        }
    }
};

}  // namespace
FLUTEBOOK_MODEL(Paper, "paper", "1.0.0", "Paper by ply")
