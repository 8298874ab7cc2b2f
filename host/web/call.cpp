#include "host/web/call.hpp"

#include <fmt/format.h>

#include <chrono>
#include <filesystem>
#include <utility>

#include "host/answers/refusal_json.hpp"
#include "host/pages/refusal_page.hpp"
#include "host/web/plant_watch.hpp"
#include "host/web/secrets.hpp"

namespace flutebook::web {

namespace {

Response response(int status, std::string content_type, std::string body) {
    Response result;
    result.status = status;
    result.content_type = std::move(content_type);
    result.body = std::move(body);
    return result;
}

constexpr const char* html_type = "text/html; charset=utf-8";
constexpr const char* json_type = "application/json";

// Its policy lets its own style in, by its hash, and nothing else.
Response with_own_style(const char* content_type, std::string text) {
    const std::string open = "<style>";
    const std::size_t begin = text.find(open);
    const std::size_t end = text.find("</style>");
    std::string policy = "default-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";
    if (begin != std::string::npos && end != std::string::npos) {
        const std::size_t inner = begin + open.size();
        policy += fmt::format("; style-src '{}'", policy_hash(std::string_view(text).substr(inner, end - inner)));
    }
    Response result = response(200, content_type, std::move(text));
    result.headers.emplace_back("content-security-policy", std::move(policy));
    return result;
}

}  // namespace

bool Call::wants_json() const {
    return request.header("accept").find(json_type) != std::string_view::npos;
}

pages::Frame Call::frame(pages::Place place) const {
    pages::Frame result;
    const bool is_known = session.role != pages::Role::nobody;
    if (is_known) {
        result.plant = plant().name;
        result.open_plant = &plant();
        result.notices = desk.watch.notices();
    }
    result.person = session.person;
    result.role = session.role;
    result.token = session.token;
    result.place = place;
    return result;
}

base::Date Call::today() {
    return std::chrono::floor<std::chrono::days>(std::chrono::system_clock::now());
}

bool has_ledger(const Call& call) {
    return std::filesystem::exists(call.desk.ledger);
}

ledger::Store opened_ledger(const Call& call) {
    return ledger::Store::open_for_reading(call.desk.ledger);
}

Response page(std::string html) {
    return response(200, html_type, std::move(html));
}

Response json(std::string document) {
    return response(200, json_type, std::move(document));
}

Response sheet(std::string html) {
    return with_own_style(html_type, std::move(html));
}

Response picture(std::string svg) {
    return with_own_style("image/svg+xml", std::move(svg));
}

Response see_other(const pages::Address& address) {
    Response result = response(303, "", "");
    result.headers.emplace_back("location", address.text());
    return result;
}

Response attachment(std::string content_type, const std::string& name, std::string bytes) {
    Response result = response(200, std::move(content_type), std::move(bytes));
    result.headers.emplace_back("content-disposition", fmt::format("attachment; filename=\"{}\"", name));
    return result;
}

Response workbook(const std::string& name, std::string bytes) {
    return attachment("application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", name, std::move(bytes));
}

Response refused(const Call& call, int status, const std::vector<std::string>& lines) {
    return refused(call, status, lines, call.frame(pages::Place::none));
}

Response refused(const Call& call, int status, const std::vector<std::string>& lines, const pages::Frame& frame) {
    if (call.wants_json()) return response(status, json_type, answers::refusal_document(lines));
    return response(status, html_type, pages::refusal_page(frame, {status, lines}));
}

}  // namespace flutebook::web
