// terms: what a plant agreed with its customers, and what it charges by board, by style, and by the wear of a machine.
#include <flutebook/plugin.hpp>
using namespace flutebook;

struct Terms : Model {
    Need<step> fed = need("run.fed", "1", "pieces fed to each step");
    Setting<by_customer> handling = setting("handling", "money", required, {0, 1e6}, "handling of an order");
    Setting<by_board> testing = setting("testing", "money", 1, {0, 1e6}, "testing of a board");
    Setting<by_style> drawing = setting("drawing", "money", 2, {0, 1e6}, "drawing of a style");
    Setting<by_machine> wear = setting("wear", "money", 0, {0, 1e6}, "wear by pieces fed").stepped_over(fed);
    Line<order> handled = line("handling", "1", flutebook::system, per_run, "Handling");
    Line<order> tested = line("testing", "1", flutebook::system, per_run, "Testing");
    Line<order> drawn = line("drawing", "1", flutebook::system, per_run, "Drawing");
    Line<step> worn = line("wear", "1", flutebook::system, per_run, "Wear");

    void evaluate(Frame& f) const {
        f.charge(handled, 1, f[handling]);
        f.charge(tested, 1, f[testing]);
        f.charge(drawn, 1, f[drawing]);
        for (auto k : f.converters()) f.charge(worn, k, 1, f[wear][k]);
    }
};
FLUTEBOOK_MODEL(Terms, "terms", "1.0.0", "Terms of customers, boards and styles")
