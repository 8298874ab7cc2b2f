// One request at one of the routes, with who asks and what it works with; and what a handler answers.
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <variant>
#include <vector>

#include "host/base/date.hpp"
#include "host/http/message.hpp"
#include "host/pages/frame.hpp"
#include "host/web/fields.hpp"
#include "host/web/sessions.hpp"
#include "host/workplace/workplace.hpp"
#include "ledger/store/store.hpp"

namespace flutebook::web {

using http::Request;
using http::Response;

class Documents;
class PlantWatch;
class Reload;
class Users;

/// What all requests share. Lives as long as the server.
struct Desk {
    const workplace::Workplace& workplace;
    std::string ledger;  // the file
    PlantWatch& watch;
    Documents& documents;
    Users* users;  // null where the person at the terminal is the only one
    Sessions& sessions;
    Reload& reload;
};

/// Constant while it is answered.
struct Call {
    Request request;
    Target target;
    std::vector<std::string> parts;  // what stands in the places of the route's pattern
    Fields form;                     // of a POST that carries one
    Session session;                 // nobody's where nobody signed in
    std::string secret;              // of its cookie; empty where there is none
    std::string address;             // from where: of the browser, not of a proxy before us
    Desk& desk;

    [[nodiscard]] const plant::Plant& plant() const { return desk.workplace.plant; }
    /// Whether the answer's document is asked for instead of a page.
    [[nodiscard]] bool wants_json() const;
    /// What stands around a page.
    [[nodiscard]] pages::Frame frame(pages::Place place) const;
    /// By this machine's clock, UTC.
    [[nodiscard]] static base::Date today();
};

/// What is written to the ledger, in its turn, once everything before it is worked out. It may refer to the call.
using Act = std::function<Response()>;

/// Somebody has shown who it is, and goes on at the first page; with no name, the session is over.
struct NewSession {
    std::string person;
};
using Outcome = std::variant<Response, Act, NewSession>;

/// Throws InputError, ModelError and LedgerError, which become the page that says so.
using Handler = Outcome (*)(const Call&);

/// Before the first quote or document there is none.
[[nodiscard]] bool has_ledger(const Call& call);
/// For reading. Throws LedgerError.
[[nodiscard]] ledger::Store opened_ledger(const Call& call);

[[nodiscard]] Response page(std::string html);
[[nodiscard]] Response json(std::string document);
/// A page with a style of its own and nothing else: what render::to_html() writes.
[[nodiscard]] Response sheet(std::string html);
/// The same for a drawing by itself: what render::svg_file() writes.
[[nodiscard]] Response picture(std::string svg);
[[nodiscard]] Response see_other(const pages::Address& address);
/// A file to keep.
[[nodiscard]] Response attachment(std::string content_type, const std::string& name, std::string bytes);
/// A workbook to keep.
[[nodiscard]] Response workbook(const std::string& name, std::string bytes);
/// `lines` are finished sentences; a document where one was asked for.
[[nodiscard]] Response refused(const Call& call, int status, const std::vector<std::string>& lines);
/// On a page with this around it.
[[nodiscard]] Response refused(const Call& call, int status, const std::vector<std::string>& lines,
                               const pages::Frame& frame);

}  // namespace flutebook::web
