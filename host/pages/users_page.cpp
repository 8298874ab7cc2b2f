#include "host/pages/users_page.hpp"

#include "host/pages/markup.hpp"

namespace flutebook::pages {

std::string users_page(const Frame& frame, const std::vector<ListedUser>& users) {
    Html rows;
    for (const ListedUser& user : users)
        rows += html("<tr><th scope=\"row\">{}</th><td>{}</td><td>{}</td></tr>\n", user.name, user.role,
                     user.is_off ? "off" : "");
    const Html table =
        users.empty() ? html("<p>This server is for the person at the terminal alone: nobody else can sign in.</p>\n")
                      : html(
                            "<table id=\"users\"><thead><tr><th scope=\"col\">Name</th><th scope=\"col\">Role</th>"
                            "<th scope=\"col\">State</th></tr></thead><tbody>\n{}</tbody></table>\n",
                            rows);
    return document(frame, "Users",
                    html("<h1>Users</h1>\n{}<p>They are added and changed by <code>flutebook user</code>, at the "
                         "server.</p>\n",
                         table));
}

}  // namespace flutebook::pages
