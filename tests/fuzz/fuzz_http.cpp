// Mutated requests against the server of pages: each is answered with a reason and the policies of every page, or its
// connection is closed; none is a fault of the server's, and the server lives.
#include <set>

#include "tests/fuzz/fuzzer.hpp"
#include "tests/system/face.hpp"
#include "tests/web/served.hpp"

using namespace flutebook;
using fuzz::CaseEnd;
using fuzz::WrongCase;

namespace {

// What the server may answer to a request that a person's browser did not make.
const std::set<int> fit = {200, 303, 400, 401, 403, 404, 405, 408, 409, 411,
                           413, 415, 417, 421, 422, 431, 501, 503, 505};

struct Sender {
    fixture::PlantCopy plant;
    fixture::Served served{plant.folder()};
    fixture::Browser browser{served};
    std::string token = browser.token();
    std::vector<std::string> good = requests();

    [[nodiscard]] std::string head(const std::string& first) const {
        return first + " HTTP/1.1\r\nHost: 127.0.0.1:" + std::to_string(served.port()) +
               "\r\nCookie: " + browser.cookie() + "\r\nOrigin: " + browser.origin() +
               "\r\nSec-Fetch-Site: same-origin\r\nAccept: application/json\r\n";
    }

    [[nodiscard]] std::string with_body(const std::string& first, const std::string& type,
                                        const std::string& body) const {
        return head(first) + "X-Token: " + token + "\r\nContent-Type: " + type +
               "\r\nContent-Length: " + std::to_string(body.size()) + "\r\n\r\n" + body;
    }

    [[nodiscard]] std::vector<std::string> requests() const {
        const std::string form = "application/x-www-form-urlencoded";
        const std::string line = "0201+400x300x250+B-140+500+18%25";
        return {head("GET /quotes?for=ash&size=400x300x250&within=5%25&state=open&limit=20") + "\r\n",
                head("GET /quotes/new?line=" + line) + "\r\n",
                head("GET /quotes/Q000001.html?for=customer") + "\r\n",
                head("GET /quotes/Q000001/recheck?date=2026-11-01") + "\r\n",
                head("GET /months/2026-10?by=machine") + "\r\n",
                head("GET /entries?month=2026-10&saved=1") + "\r\n",
                head("GET /assets/flutebook.css") + "\r\n",
                head("HEAD /models") + "\r\n",
                with_body("POST /quotes", form, "token=" + token + "&line=" + line),
                with_body("POST /quotes/Q000001/mark", form, "state=lost&why=dear"),
                with_body("POST /entries/B1/reversal", form, "why=twice&date=2026-10-02"),
                with_body("POST /months/2026-10/closing", form, "why=scale&empty_months=1"),
                with_body("POST /documents?name=bales.csv", "text/csv",
                          "ref,date,shift,grade,kg\nB1,2026-10-01,early,4.01.00,512\n")};
    }
};

CaseEnd send_one(Sender& sender, fuzz::Draws& draws) {
    const std::string text = fuzz::mutated(draws.of(sender.good), draws);
    fixture::Wire wire(sender.served.port());
    static_cast<void>(wire.send(text));
    wire.end_sending();
    const fixture::Reply reply = wire.reply(std::chrono::seconds(15));
    if (!sender.served.is_alive()) throw WrongCase{"the server ended: " + sender.served.errors(), text};
    if (reply.status == 0) {
        if (!wire.is_closed(std::chrono::seconds(15))) throw WrongCase{"neither answered nor closed", text};
        return CaseEnd::refused;
    }
    if (fit.count(reply.status) == 0) throw WrongCase{"answered with " + std::to_string(reply.status), text};
    if (reply.header("content-security-policy").find("default-src 'none'") != 0)
        throw WrongCase{"answered without the policies of a page", text};
    return reply.status < 400 ? CaseEnd::answered : CaseEnd::refused;
}

}  // namespace

int main(int count, char** words) {
    Sender sender;
    return fuzz::run_fuzzer(count, words, [&](fuzz::Draws& draws) { return send_one(sender, draws); });
}
