// Takes kilograms of paper for metres.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

struct Metres : Model {
    Need<ply> paper = need("paper.issued", "m", "paper issued for each ply");

    void evaluate(Frame&) const {}
};

}  // namespace
FLUTEBOOK_MODEL(Metres, "unit_clash", "1.0.0", "Paper by the metre")
