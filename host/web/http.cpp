#include <utility>  // before Asio, which uses std::exchange without it under C++20

#include "host/web/http.hpp"

#include <fcntl.h>
#include <fmt/format.h>

#include <boost/asio.hpp>
#include <boost/beast/core/flat_buffer.hpp>
#include <boost/beast/http.hpp>
#include <limits>
#include <optional>
#include <set>

#include "host/base/errors.hpp"

namespace flutebook::web {

namespace asio = boost::asio;
namespace beast = boost::beast;
namespace http = boost::beast::http;
using tcp = asio::ip::tcp;
using boost::system::error_code;

namespace {

// A refusal that is on its way out takes no more than this of what its sender still sends.
constexpr std::size_t most_drained = 256 * 1024;

struct Refused {
    int status;
    std::string text;
};

std::string lower(std::string_view text) {
    std::string result(text);
    for (char& sign : result)
        if (sign >= 'A' && sign <= 'Z') sign = static_cast<char>(sign - 'A' + 'a');
    return result;
}

// Sandboxed children that are started meanwhile shall not have it.
template <typename Socket>
void keep_from_children(Socket& socket) {
    ::fcntl(socket.native_handle(), F_SETFD, FD_CLOEXEC);
}

// A header that goes on in the next line: read differently by different programs.
bool has_folded_header(std::string_view bytes) {
    const std::string_view head = bytes.substr(0, bytes.find("\r\n\r\n"));
    return head.find("\n ") != std::string_view::npos || head.find("\n\t") != std::string_view::npos;
}

Refused refused_by(const error_code& fault) {
    if (fault == http::error::header_limit || fault == http::error::buffer_overflow)
        return {431, "request: its head is too large; send less"};
    if (fault == http::error::body_limit) return {413, "request: its body is too large; send less at a time"};
    return {400, fmt::format("request: is no HTTP/1.1: {}; send another", fault.message())};
}

std::optional<Refused> refused_head(const http::request<http::string_body>& head, const HttpLimits& limits) {
    const auto count = [&](http::field name) { return head.count(name); };
    if (head.version() != 11 && head.version() != 10) return Refused{505, "request: is of another version of HTTP"};
    if (count(http::field::host) != 1)
        return Refused{421, "host: the request must name one: found none or several; send one"};
    if (count(http::field::transfer_encoding) > 0)
        return Refused{411, "transfer-encoding: not taken: send the body whole, with its content-length"};
    if (count(http::field::content_encoding) > 0)
        return Refused{415, "content-encoding: not taken: send the body as it is"};
    if (count(http::field::expect) > 0) return Refused{417, "expect: not taken: send the body at once"};
    if (head.method() == http::verb::unknown || head.method() == http::verb::trace ||
        head.method() == http::verb::connect)
        return Refused{501, "method: is not known here; send GET, HEAD or POST"};
    if (head.target().empty() || head.target().front() != '/' || head.target().find('#') != std::string_view::npos)
        return Refused{400, "target: must be a path of this server that begins with a slash"};
    const auto fields = static_cast<std::size_t>(std::distance(head.begin(), head.end()));
    if (fields > limits.headers) return Refused{431, "request: has too many headers; send fewer"};
    return std::nullopt;
}

Request read_request(const http::request<http::string_body>& message, const tcp::socket& socket) {
    Request result;
    result.method = std::string(message.method_string());
    result.target = std::string(message.target());
    for (const auto& field : message)
        result.headers.emplace_back(lower(std::string_view(field.name_string().data(), field.name_string().size())),
                                    std::string(field.value()));
    error_code gone;
    const auto peer = socket.remote_endpoint(gone);
    if (!gone) result.peer = peer.address().to_string();
    return result;
}

}  // namespace

struct HttpServer::Service {
    class Visit;

    Service(std::uint16_t port, Site& asked, const HttpLimits& allowed) : site(asked), limits(allowed) {
        const tcp::endpoint place(asio::ip::address_v4::loopback(), port);
        error_code fault;
        acceptor.open(place.protocol(), fault);
        if (!fault) acceptor.set_option(asio::socket_base::reuse_address(true), fault);
        if (!fault) acceptor.bind(place, fault);
        if (!fault) acceptor.listen(asio::socket_base::max_listen_connections, fault);
        if (fault)
            throw InputError(InputError::Whose::request,
                             {fmt::format("--port: cannot be listened on: found {} ({}); name another, or leave it out",
                                          port, fault.message())});
        keep_from_children(acceptor);
    }

    void let_in();
    void end();

    Site& site;
    const HttpLimits limits;
    asio::io_context context{1};
    tcp::acceptor acceptor{context};
    asio::signal_set signals{context};
    asio::steady_timer last_moment{context};
    std::optional<asio::thread_pool> workers;
    std::set<std::shared_ptr<Visit>> visits;
    bool is_ending = false;
};

// One connection: a request at a time, each with a deadline for the whole of it.
class HttpServer::Service::Visit : public std::enable_shared_from_this<Visit> {
public:
    Visit(tcp::socket socket, Service& service)
        : socket_(std::move(socket)), timer_(service.context), service_(service) {}

    void begin() {
        parser_.emplace();
        parser_->header_limit(static_cast<std::uint32_t>(service_.limits.header_bytes));
        // Until the route is known. No limit at all would refuse every body that has a length.
        parser_->body_limit(std::numeric_limits<std::uint64_t>::max());
        parser_->eager(false);
        is_waiting_ = buffer_.size() == 0;
        set_deadline(is_waiting_ ? service_.limits.idle : service_.limits.message);
        if (is_waiting_)
            read_more();
        else
            take_head();
    }

    /// Nothing more is begun here; what is under way goes on.
    void end_soon() {
        is_last_ = true;
        if (is_waiting_) close();
    }

    void refuse(int status, const std::string& text) {
        is_last_ = true;
        is_cut_off_ = true;
        write(service_.site.refusal(status, text));
    }

    void close() {
        timer_.cancel();
        error_code ignored;
        socket_.shutdown(tcp::socket::shutdown_both, ignored);
        socket_.close(ignored);
        service_.visits.erase(shared_from_this());
        if (service_.is_ending && service_.visits.empty()) service_.last_moment.cancel();
    }

private:
    void set_deadline(std::chrono::milliseconds left) {
        timer_.expires_after(left);
        timer_.async_wait([self = shared_from_this()](const error_code& cancelled) {
            if (!cancelled) self->run_out();
        });
    }

    [[nodiscard]] std::chrono::milliseconds time_for(std::size_t bytes) const {
        return service_.limits.message + std::chrono::seconds(bytes / service_.limits.bytes_a_second);
    }

    // Too late: whoever has sent a part is told.
    void run_out() {
        if (is_writing_ || is_waiting_) return close();
        if (is_answering_) return;
        is_late_ = true;
        error_code ignored;
        socket_.cancel(ignored);
    }

    void read_more() {
        socket_.async_read_some(buffer_.prepare(4096),
                                [self = shared_from_this()](const error_code& fault, std::size_t bytes) {
                                    self->buffer_.commit(fault ? 0 : bytes);
                                    if (self->is_late_) return self->refuse_late();
                                    if (fault) return self->close();
                                    if (self->is_waiting_) self->set_deadline(self->service_.limits.message);
                                    self->is_waiting_ = false;
                                    self->take_head();
                                });
    }

    void refuse_late() { refuse(408, "request: did not arrive in time; send it again"); }

    void take_head() {
        const auto bytes = buffer_.data();
        if (has_folded_header({static_cast<const char*>(bytes.data()), bytes.size()}))
            return refuse(400, "request: a header goes on in the next line; send it in one");
        error_code fault;
        buffer_.consume(parser_->put(bytes, fault));
        if (fault == http::error::need_more) {
            if (buffer_.size() > service_.limits.header_bytes) return refuse_by(http::error::header_limit);
            return read_more();
        }
        if (fault) return refuse_by(fault);
        if (!parser_->is_header_done()) return read_more();
        admit();
    }

    void refuse_by(const error_code& fault) {
        const Refused why = refused_by(fault);
        refuse(why.status, why.text);
    }

    void admit() {
        if (const auto why = refused_head(parser_->get(), service_.limits)) return refuse(why->status, why->text);
        request_ = read_request(parser_->get(), socket_);
        is_head_ = request_.method == "HEAD";
        if (is_head_) request_.method = "GET";
        const auto admitted = service_.site.admit(request_);
        if (const auto* refusal = std::get_if<Response>(&admitted)) {
            // What is left of its body is not read.
            is_last_ = is_last_ || !parser_->is_done();
            is_cut_off_ = !parser_->is_done();
            return write(*refusal);
        }
        const std::size_t most = std::get<std::size_t>(admitted);
        const std::size_t length = static_cast<std::size_t>(parser_->content_length().value_or(0));
        if (length > most)
            return refuse(413,
                          fmt::format("request: its body is too large: found {} bytes; send at most {}", length, most));
        parser_->body_limit(most);
        parser_->eager(true);
        set_deadline(time_for(length));
        if (parser_->is_done()) return take_body();
        http::async_read(socket_, buffer_, *parser_, [self = shared_from_this()](const error_code& fault, std::size_t) {
            if (self->is_late_) return self->refuse_late();
            if (fault == http::error::partial_message || fault == http::error::end_of_stream) return self->close();
            if (fault) return self->refuse_by(fault);
            self->take_body();
        });
    }

    void take_body() {
        request_.body = std::move(parser_->get().body());
        is_last_ = is_last_ || !parser_->get().keep_alive();
        is_answering_ = true;
        timer_.cancel();
        // Until it is answered the sockets' thread has work to wait for.
        const auto work = std::make_shared<asio::executor_work_guard<asio::io_context::executor_type>>(
            asio::make_work_guard(service_.context));
        asio::post(*service_.workers, [self = shared_from_this(), work] {
            // The connection is handed back before the work ends: whoever answers may let go of this later than the
            // sockets' thread has ended.
            self->service_.site.answer(std::move(self->request_), [visit = self, work](Response response) mutable {
                asio::io_context& sockets = visit->service_.context;
                asio::post(sockets, [visit = std::move(visit), answer = std::move(response)] { visit->write(answer); });
                work->reset();
            });
        });
    }

    void write(const Response& response) {
        is_answering_ = false;
        is_writing_ = true;
        is_last_ = is_last_ || service_.is_ending;
        auto& message = message_.emplace(http::status::ok, 11);
        message.result(static_cast<unsigned>(response.status));
        if (!response.content_type.empty()) message.set(http::field::content_type, response.content_type);
        for (const auto& [name, value] : response.headers) message.insert(name, value);
        message.body() = response.body;
        message.keep_alive(!is_last_);
        message.prepare_payload();
        if (is_head_) {
            message.body().clear();
            message.content_length(response.body.size());
        }
        set_deadline(time_for(response.body.size()));
        http::async_write(socket_, message, [self = shared_from_this()](const error_code& fault, std::size_t) {
            self->is_writing_ = false;
            if (fault) return self->close();
            if (self->is_cut_off_) return self->drain(0);
            if (self->is_last_ || self->service_.is_ending) return self->close();
            self->begin();
        });
    }

    // A socket that is closed with unread bytes resets the connection, and the answer is lost: some of them are read.
    void drain(std::size_t read) {
        error_code ignored;
        if (read == 0) socket_.shutdown(tcp::socket::shutdown_send, ignored);
        if (read == 0) set_deadline(std::chrono::milliseconds(1000));
        is_waiting_ = true;
        buffer_.clear();
        socket_.async_read_some(buffer_.prepare(16384),
                                [self = shared_from_this(), read](const error_code& fault, std::size_t bytes) {
                                    if (fault || read + bytes > most_drained) return self->close();
                                    self->drain(read + std::max<std::size_t>(bytes, 1));
                                });
    }

    tcp::socket socket_;
    asio::steady_timer timer_;
    Service& service_;
    beast::flat_buffer buffer_;
    std::optional<http::request_parser<http::string_body>> parser_;
    std::optional<http::response<http::string_body>> message_;
    Request request_;
    bool is_waiting_ = true;  // for the first byte of a request
    bool is_answering_ = false, is_writing_ = false;
    bool is_late_ = false, is_last_ = false, is_head_ = false;
    bool is_cut_off_ = false;  // more may come, and is not wanted
};

void HttpServer::Service::let_in() {
    acceptor.async_accept([this](const error_code& fault, tcp::socket socket) {
        if (is_ending) return;
        if (!fault) {
            keep_from_children(socket);
            const auto visit = std::make_shared<Visit>(std::move(socket), *this);
            visits.insert(visit);
            if (visits.size() > limits.connections)
                visit->refuse(503, "server: too many connections at once; try again in a moment");
            else
                visit->begin();
        }
        let_in();
    });
}

void HttpServer::Service::end() {
    is_ending = true;
    error_code ignored;
    acceptor.close(ignored);
    const auto all = visits;
    for (const auto& visit : all) visit->end_soon();
    if (visits.empty()) return;
    last_moment.expires_after(limits.end);
    last_moment.async_wait([this](const error_code& cancelled) {
        if (cancelled) return;
        const auto left = visits;
        for (const auto& visit : left) visit->close();
    });
}

HttpServer::HttpServer(std::uint16_t port, Site& site, const HttpLimits& limits)
    : service_(std::make_unique<Service>(port, site, limits)) {}

HttpServer::~HttpServer() = default;

std::uint16_t HttpServer::port() const {
    return service_->acceptor.local_endpoint().port();
}

void HttpServer::run(unsigned workers) {
    service_->workers.emplace(workers);
    service_->signals.add(SIGTERM);
    service_->signals.add(SIGINT);
    service_->signals.async_wait([this](const error_code& cancelled, int) {
        if (!cancelled) service_->end();
    });
    service_->let_in();
    service_->context.run();
    service_->workers->join();
}

}  // namespace flutebook::web
