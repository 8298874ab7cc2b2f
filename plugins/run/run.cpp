// run: how much paper, how many sheets and how many hours' worth of pieces an order takes, and every kilogram that
// does not become a box. Charges nothing; the other models price what it provides.
//
// From the last converter K back to the corrugator, with run waste w, setup sheets s, d the parting step:
//   good[K] = quantity if K > d, else ceil(quantity / ups);   fed[k] = ceil(good[k] / (1 - w[k])) + s[k]
//   good[k-1] = ceil(fed[k] / ups) if k - 1 = d, else fed[k];   good length = ceil(good[0] / outs) x chop
//   web length = share x good length / (1 - w[0]) + order change, share being the part of its web that the order pays
//   issued[p] = web length x roll width x grammage x take-up / (1 - roll loss);   adhesive likewise, nothing stripped
// The losses are every difference between two of these lines, so that
//   issued + adhesive = quantity x box area x board grammage + losses
// holds by construction and nothing is "the rest".
// Source: conservation of mass and of pieces; the names of the causes are common practice, no published source.
#include <flutebook/plugin.hpp>
#include <flutebook/run.hpp>

#include <algorithm>

using namespace flutebook;

namespace {

constexpr Range share{0, 0.999999};  // what is lost; a machine that loses everything makes nothing
constexpr Range count{0, 1e12};
constexpr Range at_least_one{1, 1e6};

// Where nothing is lost, rounding may leave a number just below zero. A true negative would still be found: the host
// checks that the masses balance.
constexpr double not_below_nothing(double kg) {
    return std::max(kg, 0.0);
}

struct Run : Model {
    Need<order> quantity = need("order.quantity", "1", "boxes ordered", count);
    Need<order> box_area = need("box.area", "m2", "net area of one box");
    Need<order> sheet_area = need("sheet.area", "m2", "area of one sheet off the corrugator");
    Need<order> chop = need("sheet.chop", "m", "length of the sheet along the web");
    Need<order> ups = need("sheet.ups", "1", "boxes on one sheet", at_least_one);
    Need<order> grammage = need("board.grammage", "g/m2", "combined board, adhesive included");
    Need<order> roll_width = need("web.roll_width", "m", "width of the paper rolls");
    Need<order> trim = need("web.trim", "m", "slit off both edges of the web");
    Need<order> outs = need("web.outs", "1", "sheets side by side on the web", at_least_one);
    Need<order> web_share = need("web.share", "1", "part of its web that the order pays", {0, 1e6});
    Need<order> order_change = need("web.order_change", "m", "web lost when the order starts");
    Need<order> roll_loss = need("web.roll_loss", "1", "share of issued paper stripped or left on the core", share);
    Need<order> parting = need("step.parting", "1", "step where boxes part from the sheet", {0, 1000});
    Need<step> waste = need("step.run_waste", "1", "share lost of what is fed after the setup sheets", share);
    Need<step> setup_sheets = need("step.setup_sheets", "1", "pieces spent on setting the machine", count);
    Need<step> piece_area = need("step.piece_area", "m2", "one piece at each step");
    Need<ply> ply_grammage = need("ply.grammage", "g/m2", "grammage of each paper");
    Need<ply> take_up = need("ply.take_up", "1", "metres of paper per metre of board");
    Need<ply> adhesive = need("ply.adhesive", "g/m2", "dry adhesive of each ply's glue lines");

    Provide<step> fed = provide("run.fed", "1", "pieces fed to each step");
    Provide<step> good = provide("run.good", "1", "good pieces leaving each step");
    Provide<order> web_length = provide("web.length", "m", "board combined, by length");
    Provide<order> web_area = provide("web.area", "m2", "board combined over the whole roll width");
    Provide<ply> issued = provide("paper.issued", "kg", "paper issued for each ply");
    Provide<order> adhesive_dry = provide("adhesive.dry", "kg", "dry adhesive used");
    Provide<step> scrap_mass = provide("scrap.mass", "kg", "all that each step loses");

    Loss roll_ends = loss("roll-ends", "Roll ends: wraps, butts and cores");
    Loss side_trim = loss("side-trim", "Side trim");
    Loss change_loss = loss("order-change", "Order change");
    Loss corrugator_run = loss("corrugator-run", "Corrugator run waste");
    Loss surplus = loss("surplus", "Surplus over what the next step takes");
    Loss setup = loss("setup", "Setup sheets");
    Loss rejects = loss("rejects", "Rejects");
    Loss cut_out = loss("cut-out", "Cut-out: slots, die-cut waste, gaps between blanks");

    struct Parted {
        double cut_out, surplus;
    };

    // What is lost where sheets become boxes: `asked` boxes are taken on, the sheets hold some more.
    Parted part(const Frame& f, double sheets, double asked) const {
        const double cut = sheets * (f[sheet_area] - f[ups] * f[box_area]);
        const double over = (sheets * f[ups] - asked) * f[box_area];
        return {not_below_nothing(run::mass(cut, f[grammage])), not_below_nothing(run::mass(over, f[grammage]))};
    }

    // One converter: feeds enough for `pieces` good ones; returns what it is fed.
    double convert(Frame& f, Index<step> k, double pieces, Parted parted) const {
        const double in = run::fed(pieces, f[waste][k], f[setup_sheets][k]);
        const double setting = run::mass(f[setup_sheets][k] * f[piece_area][k], f[grammage]);
        const double rejected =
            not_below_nothing(run::mass((in - f[setup_sheets][k] - pieces) * f[piece_area][k], f[grammage]));
        f.set(good, k, pieces);
        f.set(fed, k, in);
        f.shed(setup, k, setting);
        f.shed(rejects, k, rejected);
        f.shed(cut_out, k, parted.cut_out);
        f.shed(surplus, k, parted.surplus);
        f.set(scrap_mass, k, setting + rejected + parted.cut_out + parted.surplus);
        return in;
    }

    // Issues the papers and the adhesive for an area of web; returns the kg of paper lost as roll ends.
    double issue(Frame& f, double area) const {
        double paper = 0;
        double glue = 0;
        for (auto p : f.plies()) {
            const double kg = run::paper_issued(area, f[ply_grammage][p], f[take_up][p], f[roll_loss]);
            f.set(issued, p, kg);
            paper += kg;
            glue += f[adhesive][p];
        }
        f.set(adhesive_dry, run::mass(area, glue));
        return paper * f[roll_loss];
    }

    // The corrugator: `sheets` good ones off the knife.
    void combine(Frame& f, double sheets, Parted parted) const {
        const run::WebCut cut{f[roll_width], f[roll_width] - f[trim], f[outs], f[chop], f[sheet_area], f[web_share]};
        const double length = run::web_length(run::good_length(cut, sheets), f[waste][corrugator], f[order_change]);
        const double area = length * f[roll_width];
        const run::WebLoss lost = run::web_loss(cut, length, f[order_change], sheets);
        const double ends = issue(f, area);
        const double edges = not_below_nothing(run::mass(lost.side_trim, f[grammage]));
        const double change = run::mass(lost.order_change, f[grammage]);
        const double wasted = not_below_nothing(run::mass(lost.run_waste, f[grammage]));
        const double over = run::mass(lost.surplus, f[grammage]) + parted.surplus;
        f.set(web_length, length);
        f.set(web_area, area);
        f.set(good, corrugator, sheets);
        f.set(fed, corrugator, 0);
        f.shed(roll_ends, corrugator, ends);
        f.shed(side_trim, corrugator, edges);
        f.shed(change_loss, corrugator, change);
        f.shed(corrugator_run, corrugator, wasted);
        f.shed(surplus, corrugator, over);
        f.shed(cut_out, corrugator, parted.cut_out);
        f.set(scrap_mass, corrugator, ends + edges + change + wasted + over + parted.cut_out);
    }

    void evaluate(Frame& f) const {
        const auto d = static_cast<std::uint32_t>(f[parting]);
        double asked = f[quantity];  // pieces that the next step takes
        f.set(fed, f.dispatch(), asked);
        f.set(good, f.dispatch(), asked);
        f.set(scrap_mass, f.dispatch(), 0);
        for (auto k = f.last_converter(); k != corrugator; k = *f.prev(k)) {
            const bool parts = k.number() == d;
            const double pieces = parts ? run::sheets_for(asked, f[ups]) : asked;
            asked = convert(f, k, pieces, parts ? part(f, pieces, asked) : Parted{0, 0});
        }
        const double sheets = d == 0 ? run::sheets_for(asked, f[ups]) : asked;
        combine(f, sheets, d == 0 ? part(f, sheets, asked) : Parted{0, 0});
    }
};

}  // namespace
FLUTEBOOK_MODEL(Run, "run", "1.0.0", "Sheets, web, paper and losses of the run")
