// `serve`: the pages of the plant, in a browser.
#include <fmt/format.h>
#include <unistd.h>

#include "host/cli/commands.hpp"
#include "host/web/serve.hpp"

namespace flutebook::cli {

namespace {

constexpr const char* serve_footer =
    R"(Serves the pages of the plant to browsers of this machine until it is ended (Ctrl-C, SIGTERM). It
prints an address with a key that works once; the browser that opens it then acts as the person who
started the server, in every role. When it has been used, the next one is printed.

To serve others, put a proxy with TLS in front of it, and give the host name that they use:
--host NAME --behind-proxy. `flutebook user` adds those who may sign in. The server listens on this
machine only.

The plant's files are read once, at the start. If one is changed later, each page says so, and the
keeper may reload the plant there. SIGHUP does the same where the server has no terminal. Files with
errors are refused, and the server goes on with the old ones. Nobody is signed out.

Exit code: 0 ended; 1 the port is not free, or nobody may sign in; 2 wrong usage; 3 the plant's
files or a plugin cannot be used.

Examples:
  flutebook --plant config/demo serve
  flutebook serve --port 8080
  flutebook serve --port 8080 --host flutebook.example --behind-proxy)";

struct ServeCommand {
    std::int64_t port = 0;
    std::string host;
    bool is_behind_proxy = false;
    bool is_trial = false;
};

ExitCode serve(const ServeCommand& asked, const RunContext& context) {
    if (asked.host.empty() == asked.is_behind_proxy) {
        complain({asked.is_behind_proxy
                      ? "flutebook serve: --behind-proxy: needs --host: name what browsers ask the proxy for"
                      : "flutebook serve: --host: is for a proxy with TLS before this server, which speaks none: add "
                        "--behind-proxy"});
        return ExitCode::misused;
    }
    web::ServeOptions options;
    options.plant = context.plant;
    options.port = static_cast<std::uint16_t>(asked.port);
    options.site = {context.ledger, context.person(), asked.host};
    // Who closes a terminal wants the server to end.
    if (::isatty(STDIN_FILENO) == 0) options.at_hang_up = web::ServeOptions::AtHangUp::reload;
    if (asked.is_trial) {
        web::try_to_serve(options);
        return ExitCode::done;
    }
    web::serve(options,
               [&context](const std::string& address) { context.output.write(fmt::format("open {}\n", address)); });
    return ExitCode::done;
}

}  // namespace

void add_serve(Command& program) {
    Command& command = program.add("serve", "serve the plant's pages to a browser", serve_footer);
    const auto asked = std::make_shared<ServeCommand>();
    command.option("--port", "N", "where it listens; a free one where it is not given",
                   read_whole_number({"port", 1, 65535}, asked->port));
    command.option("--host", "NAME", "the name that browsers ask the proxy for", read_line(asked->host));
    command.flag("--behind-proxy", "a proxy with TLS stands before it; people sign in", asked->is_behind_proxy);
    command.flag("--try", "open the plant as it would be served, and exit", asked->is_trial);
    command.run_with([asked](const RunContext& context) { return serve(*asked, context); });
}

}  // namespace flutebook::cli
