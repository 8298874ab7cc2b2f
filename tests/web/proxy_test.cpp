// The server behind the proxy of config/serve/nginx.conf, asked by TLS.
#include <catch2/catch.hpp>
#include <csignal>
#include <fstream>
#include <memory>
#include <sstream>
#include <thread>

#include "host/web/users.hpp"
#include "tests/system/face.hpp"
#include "tests/web/served.hpp"

using namespace flutebook;
using namespace flutebook::fixture;

namespace {

const std::string vera_password = "several plain words";

std::string replaced(std::string text, const std::string& from, const std::string& to) {
    for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size()))
        text.replace(at, from.size(), to);
    return text;
}

// The first of three ports that are this process's own: below those that the system gives to anybody who asks for none.
int free_ports() {
    return 10000 + 3 * (::getpid() % 3000);
}

// The sample as it is, on ports and with a certificate of the test's own.
class Proxy {
public:
    Proxy(const std::string& folder, int upstream) : folder_(folder), port_(upstream + 1), plain_(upstream + 2) {
        shell(
            "openssl req -x509 -newkey rsa:2048 -nodes -days 2 -subj /CN=flutebook.example -addext "
            "subjectAltName=DNS:flutebook.example -keyout key.pem -out certificate.pem");
        std::ostringstream sample;
        sample << std::ifstream(FLUTEBOOK_SOURCE_DIR "/config/serve/nginx.conf").rdbuf();
        std::string text = replaced(sample.str(), "/etc/ssl/flutebook/", folder_ + "/");
        text = replaced(text, "127.0.0.1:8080", "127.0.0.1:" + std::to_string(upstream));
        text = replaced(text, "listen 443", "listen 127.0.0.1:" + std::to_string(port_));
        text = replaced(text, "listen 80;", "listen 127.0.0.1:" + std::to_string(plain_) + ";");
        std::ofstream(folder_ + "/nginx.conf")
            << "pid " << folder_ << "/nginx.pid;\nerror_log " << folder_
            << "/nginx.log;\nevents {}\nhttp {\naccess_log "
            << "off;\n"
            << "client_body_temp_path " << folder_ << "/body;\nproxy_temp_path " << folder_ << "/proxy;\n"
            << text << "}\n";
        started_ = shell("/usr/sbin/nginx -p . -c nginx.conf").exit_code == 0;
    }
    Proxy(const Proxy&) = delete;
    Proxy& operator=(const Proxy&) = delete;
    ~Proxy() { shell("test -f nginx.pid && kill $(cat nginx.pid)"); }

    [[nodiscard]] bool is_started() const { return started_; }
    [[nodiscard]] int plain_port() const { return plain_; }
    /// curl by TLS with these words; what it wrote, head and all.
    [[nodiscard]] std::string ask(const std::string& words, const std::string& path,
                                  const std::string& name = "flutebook.example") const {
        const std::string port = std::to_string(port_);
        return shell("curl -s -i --max-time 20 --cacert certificate.pem -b jar -c jar --resolve " + name + ":" + port +
                     ":127.0.0.1 -H 'Host: " + name + "' " + words + " 'https://" + name + ":" + port + path + "'")
            .output;
    }
    Ended shell(const std::string& command) const {
        Child child{{"/bin/sh", "-c", "cd '" + folder_ + "' && " + command}};
        return run(child);
    }

private:
    std::string folder_;
    int port_, plain_;
    bool started_ = false;
};

bool begins(const std::string& text, const std::string& with) {
    return text.rfind(with, 0) == 0;
}

}  // namespace

TEST_CASE("behind the sample proxy a person signs in by TLS, saves a quote, and keeps to what the role allows") {
    const PlantCopy plant;
    web::Users(plant.folder() + "/ledger.db", web::Users::IfMissing::create)
        .add("Vera", pages::Role::accountant, {vera_password}, "test");
    const int port = free_ports();
    Served served(plant.folder(), {"--port", std::to_string(port), "--host", "flutebook.example", "--behind-proxy"});
    const Proxy proxy(plant.folder(), port);
    REQUIRE(proxy.is_started());

    CHECK(begins(proxy.ask("", "/quotes"), "HTTP/2 303"));
    const std::string ours = "-H 'Origin: https://flutebook.example' ";
    const std::string signed_in =
        proxy.ask(ours + "--data-urlencode name=Vera --data-urlencode 'password=" + vera_password + "'", "/session");
    REQUIRE(begins(signed_in, "HTTP/2 303"));
    CHECK(signed_in.find("__Host-flutebook=") != std::string::npos);
    CHECK(signed_in.find("strict-transport-security") != std::string::npos);
    const std::string session = proxy.ask("", "/session");
    const std::string mark = "name=\"token\" value=\"";
    const std::size_t at = session.find(mark);
    REQUIRE(at != std::string::npos);
    const std::string token = session.substr(at + mark.size(), 64);
    const std::string form = ours + "-d token=" + token + " ";
    CHECK(begins(proxy.ask(form + "--data-urlencode 'line=0201 400x300x250 B-140 500 18%'", "/quotes"), "HTTP/2 303"));
    CHECK(proxy.ask("-H 'Accept: application/json'", "/quotes").find("\"who\": \"Vera\"") != std::string::npos);
    CHECK(begins(proxy.ask("", "/documents"), "HTTP/2 403"));
    CHECK(begins(proxy.ask("-H 'Origin: https://elsewhere.example' -d token=" + token, "/quotes"), "HTTP/2 403"));
}

TEST_CASE("the sample proxy serves no other name, and sends who comes without TLS to it") {
    const PlantCopy plant;
    web::Users(plant.folder() + "/ledger.db", web::Users::IfMissing::create)
        .add("Vera", pages::Role::reader, {vera_password}, "test");
    const int port = free_ports();
    Served served(plant.folder(), {"--port", std::to_string(port), "--host", "flutebook.example", "--behind-proxy"});
    const Proxy proxy(plant.folder(), port);
    REQUIRE(proxy.is_started());
    CHECK(proxy.ask("-k", "/session", "elsewhere.example").empty());
    const Reply plain = ask_raw(static_cast<std::uint16_t>(proxy.plain_port()),
                                "GET /quotes HTTP/1.1\r\nHost: flutebook.example\r\n\r\n");
    CHECK(plain.status == 301);
    CHECK(plain.header("location") == "https://flutebook.example/quotes");
}
