// What a plant's server serves: finds the route of each request, checks the session and the role of the user, runs its
// handler, and turns what that throws into the page that says so.
//
// A request must name one of our own hosts. What changes something comes by POST alone, from a page of ours, with the
// token of its session. Every response carries the policies that keep other sites out.
#pragma once

#include <atomic>
#include <cstdint>
#include <functional>
#include <memory>
#include <string>
#include <variant>

#include "host/http/server.hpp"
#include "host/web/call.hpp"
#include "host/web/documents.hpp"
#include "host/web/kept.hpp"
#include "host/web/plant_watch.hpp"
#include "host/web/reload.hpp"
#include "host/web/routes.hpp"
#include "host/web/users.hpp"
#include "host/web/writer_queue.hpp"

namespace flutebook::web {

struct SiteOptions {
    std::string ledger;  // the file
    std::string person;  // at the terminal
    std::string host;    // that browsers ask for, behind a proxy with TLS; empty: this machine alone
};

class PlantSite : public http::Site {
public:
    /// `workplace` must outlive it. Behind a proxy, users must be there: throws InputError, LedgerError.
    /// `kept`: what the site of the process before this one kept.
    PlantSite(const workplace::Workplace& workplace, SiteOptions options, const Kept& kept = {});

    /// What the next process goes on with.
    [[nodiscard]] Kept kept() const;
    [[nodiscard]] Reload& reload() { return reload_; }
    [[nodiscard]] PlantWatch& watch() { return watch_; }

    /// The port is known once the server listens; to be called before it runs.
    void listen_at(std::uint16_t port) { port_ = port; }
    /// Told a new address each time that the last one was used, and the first.
    void tell_addresses(std::function<void(const std::string&)> tell);

    [[nodiscard]] std::variant<std::size_t, Response> admit(const Request& head) override;
    void answer(Request request, Done done) override;
    [[nodiscard]] Response refusal(int status, const std::string& text) override;

private:
    struct Found {
        const Route* route = nullptr;
        std::vector<std::string> parts;
        std::string allowed;  // the methods of this path; empty: there is no such path
    };
    [[nodiscard]] static Found find_route(const Request& request, const Target& target);

    [[nodiscard]] bool is_behind_proxy() const { return !options_.host.empty(); }
    [[nodiscard]] bool is_our_host(std::string_view host) const;
    [[nodiscard]] std::string cookie_name() const;
    [[nodiscard]] Call call_of(Request request);
    /// Why it is refused by its head; nothing where it is not.
    [[nodiscard]] std::optional<Response> refused_head(const Call& call, const Found& found);
    [[nodiscard]] std::optional<Response> refused_origin(const Call& call, const Route& route) const;
    [[nodiscard]] std::optional<Response> refused_body(Call& call, const Route& route);
    [[nodiscard]] std::optional<Response> refused_user(Call& call, const Route& route);
    [[nodiscard]] std::optional<Outcome> taken_key(const Call& call);
    [[nodiscard]] Response changed_session(const Call& call, const NewSession& wanted);
    [[nodiscard]] Response dressed(Response response) const;
    [[nodiscard]] Response failed(const Call& call, const std::exception& fault);
    template <typename Work>
    [[nodiscard]] auto around(const Call& call, const Work& work) -> decltype(work());
    [[nodiscard]] std::string address() const;

    SiteOptions options_;
    std::uint16_t port_ = 0;
    Sessions sessions_;
    OneTimeKey key_;
    bool is_key_told_;
    std::function<void(const std::string&)> tell_;
    PlantWatch watch_;
    Reload reload_;
    Documents documents_;
    std::unique_ptr<Users> users_;
    Desk desk_;
    std::atomic<std::uint64_t> faults_{0};
    WriterQueue writer_;  // the last: what waits in it uses the others
};

}  // namespace flutebook::web
