// paper: what the papers of an order cost.
//
//   paper[p] = issued kg of ply p x price per kg on the day of the request
// Roll ends are paid for like the rest: `paper.issued` holds them. Source: common practice, no published source.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

struct Paper : Model {
    Need<ply> issued = need("paper.issued", "kg", "paper issued for each ply");
    Need<ply> price = need("ply.price", "money/kg", "price of each paper on the day of the request");
    Line<ply> paper = line("paper", "kg", material, per_unit, "Paper");

    void evaluate(Frame& f) const {
        for (auto p : f.plies()) f.charge(paper, p, f[issued][p], f[price][p]);
    }
};

}  // namespace
FLUTEBOOK_MODEL(Paper, "paper", "1.0.0", "Paper by ply")
