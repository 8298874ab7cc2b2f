#include "host/web/plant_site.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdio>
#include <utility>

#include "host/base/errors.hpp"
#include "host/web/secrets.hpp"
#include "ledger/values/error.hpp"

namespace flutebook::web {

namespace {

constexpr std::size_t most_waiting = 64;

constexpr const char* page_policy =
    "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; img-src 'self'; connect-src 'self'; "
    "form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

constexpr const char* form_type = "application/x-www-form-urlencoded";
constexpr const char* csv_type = "text/csv";

std::string_view media_type(std::string_view content_type) {
    content_type = content_type.substr(0, content_type.find(';'));
    while (!content_type.empty() && content_type.back() == ' ') content_type.remove_suffix(1);
    return content_type;
}

std::string cookie_of(const Request& request, const std::string& name) {
    std::string_view cookies = request.header("cookie");
    while (!cookies.empty()) {
        std::string_view one = cookies.substr(0, cookies.find(';'));
        cookies.remove_prefix(std::min(one.size() + 1, cookies.size()));
        while (!one.empty() && one.front() == ' ') one.remove_prefix(1);
        if (one.size() > name.size() && one.substr(0, name.size()) == name && one[name.size()] == '=')
            return std::string(one.substr(name.size() + 1));
    }
    return "";
}

// Of a proxy before us, the last address is the one that it saw itself.
std::string forwarded_for(const Request& request) {
    const std::string_view all = request.header("x-forwarded-for");
    std::string_view last = all.substr(all.rfind(',') == std::string_view::npos ? 0 : all.rfind(',') + 1);
    while (!last.empty() && last.front() == ' ') last.remove_prefix(1);
    return last.empty() || last.size() > 45 ? request.peer : std::string(last);
}

}  // namespace

PlantSite::PlantSite(const workplace::Workplace& workplace, SiteOptions options, const Kept& kept)
    : options_(std::move(options)),
      key_(kept.key.empty() ? new_secret() : kept.key),
      is_key_told_(!kept.key.empty()),
      watch_(workplace.plant),
      reload_(workplace.plant.folder, watch_),
      users_(options_.host.empty() ? nullptr : std::make_unique<Users>(options_.ledger, Users::IfMissing::refuse)),
      desk_{workplace, options_.ledger, watch_, documents_, users_.get(), sessions_, reload_},
      writer_(most_waiting) {
    sessions_.take(kept.sessions);
    documents_.take(kept.documents);
    if (users_) users_->take_failures(kept.failures);
}

Kept PlantSite::kept() const {
    return {key_.now(), sessions_.in_lines(), documents_.in_bytes(), users_ ? users_->failures_in_bytes() : "",
            desk_.workplace.plant.files};
}

std::string PlantSite::address() const {
    if (is_behind_proxy()) return fmt::format("https://{}/", options_.host);
    return fmt::format("http://127.0.0.1:{}/session?key={}", port_, key_.now());
}

void PlantSite::tell_addresses(std::function<void(const std::string&)> tell) {
    tell_ = std::move(tell);
    if (!is_key_told_) tell_(address());
}

bool PlantSite::is_our_host(std::string_view host) const {
    if (is_behind_proxy()) return host == options_.host || host == options_.host + ":443";
    const std::string port = fmt::format(":{}", port_);
    return host == "127.0.0.1" + port || host == "localhost" + port;
}

// A browser takes a name with this prefix by TLS alone, and from this very host.
std::string PlantSite::cookie_name() const {
    return is_behind_proxy() ? "__Host-flutebook" : fmt::format("flutebook-{}", port_);
}

Call PlantSite::call_of(Request request) {
    Call call{std::move(request), {}, {}, {}, {}, {}, {}, desk_};
    call.secret = cookie_of(call.request, cookie_name());
    call.address = is_behind_proxy() ? forwarded_for(call.request) : call.request.peer;
    if (!call.secret.empty())
        if (auto session = sessions_.find(call.secret, Sessions::Clock::now())) call.session = std::move(*session);
    return call;
}

PlantSite::Found PlantSite::find_route(const Request& request, const Target& target) {
    Found found;
    for (const Route& route : routes()) {
        auto parts = match(route.pattern, target.segments);
        if (!parts) continue;
        if (route.method == request.method) {
            found.route = &route;
            found.parts = std::move(*parts);
            return found;
        }
        const std::string method = route.method == "GET" ? "GET, HEAD" : std::string(route.method);
        if (found.allowed.find(method) == std::string::npos)
            found.allowed += (found.allowed.empty() ? "" : ", ") + method;
    }
    return found;
}

std::optional<Response> PlantSite::refused_origin(const Call& call, const Route& route) const {
    const auto site = call.request.header("sec-fetch-site");
    const auto origin = call.request.header("origin");
    const std::string ours = (is_behind_proxy() ? "https://" : "http://") + std::string(call.request.header("host"));
    const bool is_of_ours = (site.empty() || site == "same-origin" || site == "none") &&
                            (origin.empty() ? route.proof != Route::Proof::origin || !site.empty() : origin == ours);
    if (is_of_ours) return std::nullopt;
    return refused(call, 403, {"request: was sent from a page of another site: open the page here and send it again"});
}

std::optional<Response> PlantSite::refused_head(const Call& call, const Found& found) {
    if (found.route == nullptr && found.allowed.empty())
        return refused(call, 404, {"address: there is no such page; begin at the first"});
    if (found.route == nullptr) {
        Response response = refused(call, 405, {"method: not taken by this page: send " + found.allowed});
        response.headers.emplace_back("allow", found.allowed);
        return response;
    }
    const Route& route = *found.route;
    if (route.least > call.session.role && call.session.role == pages::Role::nobody) {
        if (call.request.method == "GET" && is_behind_proxy() && !call.wants_json())
            return see_other(pages::Address("/session"));
        return refused(call, 401,
                       {is_behind_proxy() ? "session: nobody has signed in, or too long ago; sign in first"
                                          : "session: nobody has signed in, or too long ago; open the "
                                            "address that the terminal shows"});
    }
    if (route.least > call.session.role)
        return refused(
            call, 403,
            {fmt::format("session: only a {} may do this: found {}, {}; ask a {}", pages::role_name(route.least),
                         call.session.person, pages::role_name(call.session.role), pages::role_name(route.least))});
    if (route.method != "POST") return std::nullopt;
    if (auto refusal = refused_origin(call, route)) return refusal;
    const auto type = media_type(call.request.header("content-type"));
    if (type != form_type && !(route.body == Route::Body::form_or_csv && type == csv_type))
        return refused(call, 415,
                       {route.body == Route::Body::form_or_csv ? "content-type: is not taken: send a form, or text/csv"
                                                               : "content-type: is not taken: send a form"});
    return std::nullopt;
}

std::variant<std::size_t, Response> PlantSite::admit(const Request& head) {
    try {
        Call call = call_of(head);
        if (!is_our_host(head.header("host")))
            return refusal(421, "host: is not served here; open the address that the server was started with");
        const auto target = read_target(head.target);
        if (!target) return dressed(refused(call, 400, {"address: is not well formed; begin at the first page"}));
        Found found = find_route(head, *target);
        if (auto refusal = refused_head(call, found)) return dressed(std::move(*refusal));
        return found.route->most_bytes;
    } catch (const std::exception&) {
        return refusal(503, "server: has no room for this request; try again in a moment");
    }
}

std::optional<Response> PlantSite::refused_body(Call& call, const Route& route) {
    if (route.method != "POST") return std::nullopt;
    std::string token(call.request.header("x-token"));
    if (media_type(call.request.header("content-type")) == form_type) {
        auto form = read_fields(call.request.body, Lines::take);
        if (!form) return refused(call, 400, {"form: is not well formed; send it from the page"});
        call.form = std::move(*form);
        if (call.form.has("token")) token = call.form.at("token");
    }
    if (route.proof == Route::Proof::token && !is_same_secret(token, call.session.token))
        return refused(call, 403, {"form: is not of this session: reload the page and send it again"});
    return std::nullopt;
}

// A role counts as it is now, not as it was when the person signed in.
std::optional<Response> PlantSite::refused_user(Call& call, const Route& route) {
    if (users_ == nullptr || call.session.role == pages::Role::nobody) return std::nullopt;
    const auto user = users_->active(call.session.person);
    if (!user) {
        sessions_.end_of(call.session.person);
        call.session = {};
    } else {
        call.session.role = user->role;
    }
    if (call.session.role >= route.least) return std::nullopt;
    Found found;
    found.route = &route;
    return refused_head(call, found);
}

std::optional<Outcome> PlantSite::taken_key(const Call& call) {
    if (is_behind_proxy() || call.target.segments != std::vector<std::string>{"session"} ||
        !call.target.query.has("key"))
        return std::nullopt;
    if (!key_.take(call.target.query.at("key")))
        return refused(call, 401, {"session: this address was used before: open the newest that the terminal shows"});
    if (tell_) tell_(address());
    return NewSession{options_.person};
}

// The session that was there ends: its secret may be known to others.
Response PlantSite::changed_session(const Call& call, const NewSession& wanted) {
    if (!call.secret.empty()) sessions_.end(call.secret);
    std::string secret, end = "; Max-Age=0";
    if (!wanted.person.empty()) {
        pages::Role role = pages::Role::keeper;
        if (users_ != nullptr) {
            const auto user = users_->active(wanted.person);
            role = user ? user->role : pages::Role::nobody;
        }
        secret = sessions_.begin(wanted.person, role, Sessions::Clock::now());
        end.clear();
    }
    Response response = see_other(pages::Address("/"));
    response.headers.emplace_back("set-cookie",
                                  fmt::format("{}={}; Path=/; HttpOnly; SameSite=Strict{}{}", cookie_name(), secret,
                                              is_behind_proxy() ? "; Secure" : "", end));
    return response;
}

Response PlantSite::dressed(Response response) const {
    const auto add = [&](const char* name, const char* value) {
        for (const auto& header : response.headers)
            if (header.first == name) return;
        response.headers.emplace_back(name, value);
    };
    add("content-security-policy", page_policy);
    add("x-content-type-options", "nosniff");
    // Under a policy without any referrer browsers say of a form of ours that it comes from nowhere.
    add("referrer-policy", "same-origin");
    add("cross-origin-opener-policy", "same-origin");
    add("cross-origin-resource-policy", "same-origin");
    add("cache-control", "no-store");
    if (is_behind_proxy()) add("strict-transport-security", "max-age=31536000");
    return response;
}

Response PlantSite::refusal(int status, const std::string& text) {
    Call call{{}, {}, {}, {}, {}, {}, {}, desk_};
    Response response = dressed(refused(call, status, {text}));
    if (status == 503) response.headers.emplace_back("retry-after", "2");
    return response;
}

// An unexpected exception is written to standard error with a number; the page shows only the number.
Response PlantSite::failed(const Call& call, const std::exception& fault) {
    const auto number = ++faults_;
    std::fprintf(stderr, "flutebook serve: fault %llu: %s %s: %s\n", static_cast<unsigned long long>(number),
                 call.request.method.c_str(), call.request.target.substr(0, call.request.target.find('?')).c_str(),
                 fault.what());
    return refused(call, 500,
                   {fmt::format("server: could not go on: fault {}; the server's own messages say more", number)});
}

// The one place where a request's errors are caught.
template <typename Work>
auto PlantSite::around(const Call& call, const Work& work) -> decltype(work()) {
    try {
        return work();
    } catch (const InputError& error) {
        return refused(call, error.whose() == InputError::Whose::plant ? 500 : 422, error.lines());
    } catch (const ModelError& error) {
        return refused(call, 500, error.lines());
    } catch (const LedgerError& error) {
        const bool is_refused = error.kind() == LedgerError::Kind::refused;
        return refused(call, !is_refused ? 500 : call.request.method == "GET" ? 404 : 409, error.lines());
    } catch (const std::exception& fault) {
        return failed(call, fault);
    }
}

void PlantSite::answer(Request request, Done done) {
    const auto call = std::make_shared<Call>(call_of(std::move(request)));
    // The call lives until it is answered.
    const auto finish = [this, call, done](Response response) { done(dressed(std::move(response))); };
    Outcome outcome = around(*call, [&]() -> Outcome {
        // It was admitted, so both are there.
        call->target = read_target(call->request.target).value();
        Found found = find_route(call->request, call->target);
        call->parts = std::move(found.parts);
        if (auto refusal = refused_user(*call, *found.route)) return std::move(*refusal);
        if (auto refusal = refused_body(*call, *found.route)) return std::move(*refusal);
        if (auto taken = taken_key(*call)) return std::move(*taken);
        return found.route->handler(*call);
    });
    if (auto* response = std::get_if<Response>(&outcome)) return finish(std::move(*response));
    if (const auto* wanted = std::get_if<NewSession>(&outcome))
        return finish(around(*call, [&]() -> Response { return changed_session(*call, *wanted); }));
    const bool is_taken = writer_.add([this, call, finish, act = std::move(std::get<Act>(outcome))] {
        finish(around(*call, [&]() -> Response { return act(); }));
    });
    if (is_taken) return;
    Response busy = refused(*call, 503, {"ledger: too many writes are waiting; try again in a moment"});
    busy.headers.emplace_back("retry-after", "2");
    finish(std::move(busy));
}

}  // namespace flutebook::web
