#include "host/pages/sign_in_page.hpp"

#include "host/pages/markup.hpp"

namespace flutebook::pages {

namespace {

Html password_form(const SignIn& asked) {
    const Html fault =
        asked.fault.empty() ? Html() : html("<p class=\"warning\" id=\"fault\" role=\"alert\">{}</p>\n", asked.fault);
    return html(
        "<h1>Sign in</h1>\n{}<form method=\"post\" action=\"{}\" class=\"sign-in\">\n"
        "<p><label for=\"name\">Name</label> <input id=\"name\" name=\"name\" autocomplete=\"username\" required "
        "autofocus></p>\n<p><label for=\"password\">Password</label> <input id=\"password\" name=\"password\" "
        "type=\"password\" autocomplete=\"current-password\" required></p>\n"
        "<p><button>Sign in</button></p>\n</form>\n",
        fault, Address("/session"));
}

}  // namespace

std::string sign_in_page(const Frame& frame, const SignIn& asked) {
    if (frame.role == Role::nobody && asked.door == Door::password)
        return document(frame, "Sign in", password_form(asked));
    if (frame.role == Role::nobody)
        return document(frame, "Nobody has signed in here",
                        html("<h1>Nobody has signed in here</h1>\n<p>Open the address that the terminal shows: it "
                             "has a key that works once.</p>\n"));
    return document(frame, "At the desk",
                    html("<h1>At the desk</h1>\n<p>{}</p>\n<form method=\"post\" action=\"{}\">{}"
                         "<button>Sign out</button></form>\n",
                         frame.person, Address("/session").at("end"), token_field(frame)));
}

}  // namespace flutebook::pages
