// Handlers of the first page, the assets, and signing in.
#include <fmt/format.h>

#include "host/pages/assets.hpp"
#include "host/pages/sign_in_page.hpp"
#include "host/pages/users_page.hpp"
#include "host/web/handlers.hpp"
#include "host/web/users.hpp"

namespace flutebook::web {

namespace {

pages::Door door_of(const Call& call) {
    return call.desk.users == nullptr ? pages::Door::terminal : pages::Door::password;
}

Response sign_in_again(const Call& call, int status, const std::string& fault) {
    if (call.wants_json()) return refused(call, status, {fault});
    Response response = page(pages::sign_in_page(call.frame(pages::Place::none), {door_of(call), fault}));
    response.status = status;
    return response;
}

}  // namespace

Outcome show_home(const Call&) {
    return see_other(pages::Address("/quotes"));
}

Outcome show_asset(const Call& call) {
    for (const pages::Asset& asset : pages::assets()) {
        if (asset.served_as != call.parts.front()) continue;
        Response response;
        response.content_type = asset.content_type;
        response.body = asset.bytes;
        response.headers.emplace_back("cache-control", "public, max-age=31536000, immutable");
        return response;
    }
    return refused(call, 404, {"address: there is no such file"});
}

Outcome show_session(const Call& call) {
    return page(pages::sign_in_page(call.frame(pages::Place::none), {door_of(call), ""}));
}

Outcome begin_session(const Call& call) {
    if (call.desk.users == nullptr)
        return refused(call, 403, {"session: nobody has a password here; open the address that the terminal shows"});
    const auto outcome = call.desk.users->sign_in(call.form.at("name"), {call.form.at("password")}, call.address);
    if (const auto* wait = std::get_if<Users::Wait>(&outcome)) {
        Response response = sign_in_again(
            call, 429, fmt::format("session: tried too often: wait {} s and try again", wait->left.count()));
        response.headers.emplace_back("retry-after", std::to_string(wait->left.count()));
        return response;
    }
    if (const auto* user = std::get_if<User>(&outcome)) return NewSession{user->name};
    return sign_in_again(call, 401, "session: the name or the password is wrong; try again, or ask the keeper");
}

Outcome end_session(const Call&) {
    return NewSession{};
}

Outcome show_users(const Call& call) {
    std::vector<pages::ListedUser> listed;
    if (call.desk.users != nullptr)
        for (const User& user : call.desk.users->all())
            listed.push_back({user.name, pages::role_name(user.role), user.is_off});
    return page(pages::users_page(call.frame(pages::Place::users), listed));
}

}  // namespace flutebook::web
