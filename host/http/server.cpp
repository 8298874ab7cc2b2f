#include <utility>  // before Asio, which uses std::exchange without it under C++20

#include "host/http/server.hpp"

#include <fcntl.h>
#include <fmt/format.h>

#include <boost/asio.hpp>
#include <boost/beast/core/flat_buffer.hpp>
#include <boost/beast/http.hpp>
#include <limits>
#include <optional>
#include <set>

#include "host/http/head_rules.hpp"

namespace flutebook::http {

namespace asio = boost::asio;
namespace beast = boost::beast;
namespace wire = boost::beast::http;
using tcp = asio::ip::tcp;
using boost::system::error_code;

namespace {

// A refusal that is on its way out takes no more than this of what its sender still sends.
constexpr std::size_t most_drained = 256 * 1024;

// Sandboxed children that are started meanwhile shall not have it.
template <typename Socket>
void keep_from_children(Socket& socket) {
    ::fcntl(socket.native_handle(), F_SETFD, FD_CLOEXEC);
}

RequestRefusal refused_by(const error_code& fault) {
    if (fault == wire::error::header_limit || fault == wire::error::buffer_overflow)
        return {431, "request: its head is too large; send less"};
    if (fault == wire::error::body_limit) return {413, "request: its body is too large; send less at a time"};
    return {400, fmt::format("request: is no HTTP/1.1: {}; send another", fault.message())};
}

Request read_request(const wire::request<wire::string_body>& message, const tcp::socket& socket) {
    Request result;
    result.method = std::string(message.method_string());
    result.target = std::string(message.target());
    for (const auto& field : message)
        result.headers.emplace_back(
            lower_case(std::string_view(field.name_string().data(), field.name_string().size())),
            std::string(field.value()));
    error_code gone;
    const auto peer = socket.remote_endpoint(gone);
    if (!gone) result.peer = peer.address().to_string();
    return result;
}

}  // namespace

struct Server::Service {
    class Visit;

    Service(Site& asked, const ServerLimits& allowed) : site(asked), limits(allowed) {}

    void welcome(tcp::socket socket);
    void let_in();
    void take_signals();
    void end();
    void end_if_all_left();

    Site& site;
    const ServerLimits limits;
    asio::io_context context{1};
    tcp::acceptor acceptor{context};
    asio::signal_set signals{context};
    asio::steady_timer last_moment{context};
    std::optional<asio::thread_pool> workers;
    std::set<std::shared_ptr<Visit>> visits;
    std::function<void()> at_hang_up;
    bool is_ending = false;
    bool is_handing_over = false;  // ends, and these sockets go on
    Sockets left;
};

// One connection: a request at a time, each with a deadline for the whole of it.
class Server::Service::Visit : public std::enable_shared_from_this<Visit> {
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
        if (!is_waiting_) return;
        if (!service_.is_handing_over) return close();
        // Either a request's first bytes were read by now, and it is answered, or none were, and another reads them.
        error_code ignored;
        socket_.cancel(ignored);
    }

    [[nodiscard]] bool is_answering() const { return is_answering_; }

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
        service_.end_if_all_left();
    }

private:
    void hand_over() {
        timer_.cancel();
        error_code fault;
        const int socket = socket_.release(fault);
        if (!fault) service_.left.waiting.push_back(socket);
        service_.visits.erase(shared_from_this());
        service_.end_if_all_left();
    }

    void set_deadline(std::chrono::milliseconds time) {
        timer_.expires_after(time);
        timer_.async_wait([self = shared_from_this()](const error_code& cancelled) {
            if (!cancelled) self->run_out();
        });
    }

    [[nodiscard]] std::chrono::milliseconds time_for(std::size_t bytes) const {
        return service_.limits.message + std::chrono::seconds(bytes / service_.limits.bytes_a_second);
    }

    // Refuses a client that has sent only a part in time.
    void run_out() {
        if (is_writing_ || is_waiting_) return close();
        if (is_answering_) return;
        is_late_ = true;
        error_code ignored;
        socket_.cancel(ignored);
    }

    void read_more() {
        socket_.async_read_some(buffer_.prepare(4096), [self = shared_from_this()](const error_code& fault,
                                                                                   std::size_t bytes) {
            self->buffer_.commit(fault ? 0 : bytes);
            if (self->is_late_) return self->refuse_late();
            if (fault && self->is_waiting_ && self->service_.is_handing_over && fault == asio::error::operation_aborted)
                return self->hand_over();
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
        if (fault == wire::error::need_more) {
            if (buffer_.size() > service_.limits.header_bytes) return refuse_by(wire::error::header_limit);
            return read_more();
        }
        if (fault) return refuse_by(fault);
        if (!parser_->is_header_done()) return read_more();
        admit();
    }

    void refuse_by(const error_code& fault) {
        const RequestRefusal why = refused_by(fault);
        refuse(why.status, why.text);
    }

    void admit() {
        request_ = read_request(parser_->get(), socket_);
        if (const auto why = refused_head(request_, parser_->get().version(), service_.limits.headers))
            return refuse(why->status, why->text);
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
        wire::async_read(socket_, buffer_, *parser_, [self = shared_from_this()](const error_code& fault, std::size_t) {
            if (self->is_late_) return self->refuse_late();
            if (fault == wire::error::partial_message || fault == wire::error::end_of_stream) return self->close();
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
        auto& message = message_.emplace(wire::status::ok, 11);
        message.result(static_cast<unsigned>(response.status));
        if (!response.content_type.empty()) message.set(wire::field::content_type, response.content_type);
        for (const auto& [name, value] : response.headers) message.insert(name, value);
        message.body() = response.body;
        message.keep_alive(!is_last_);
        message.prepare_payload();
        if (is_head_) {
            message.body().clear();
            message.content_length(response.body.size());
        }
        set_deadline(time_for(response.body.size()));
        wire::async_write(socket_, message, [self = shared_from_this()](const error_code& fault, std::size_t) {
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
    std::optional<wire::request_parser<wire::string_body>> parser_;
    std::optional<wire::response<wire::string_body>> message_;
    Request request_;
    bool is_waiting_ = true;  // for the first byte of a request
    bool is_answering_ = false, is_writing_ = false;
    bool is_late_ = false, is_last_ = false, is_head_ = false;
    bool is_cut_off_ = false;  // more may come, and is not wanted
};

void Server::Service::welcome(tcp::socket socket) {
    keep_from_children(socket);
    const auto visit = std::make_shared<Visit>(std::move(socket), *this);
    visits.insert(visit);
    if (visits.size() > limits.connections)
        visit->refuse(503, "server: too many connections at once; try again in a moment");
    else
        visit->begin();
}

void Server::Service::let_in() {
    acceptor.async_accept([this](error_code fault, tcp::socket socket) {
        if (!fault && is_handing_over) {
            left.waiting.push_back(socket.release(fault));
        } else if (!is_ending) {
            if (!fault) welcome(std::move(socket));
            let_in();
        }
    });
}

void Server::Service::take_signals() {
    signals.async_wait([this](const error_code& cancelled, int signal) {
        if (cancelled) return;
        if (signal == SIGHUP) {
            if (!is_ending) asio::post(*workers, at_hang_up);
            return take_signals();
        }
        is_handing_over = false;
        if (!is_ending) end();
    });
}

void Server::Service::end_if_all_left() {
    if (!is_ending || !visits.empty()) return;
    last_moment.cancel();
    signals.cancel();
}

void Server::Service::end() {
    is_ending = true;
    error_code ignored;
    if (is_handing_over)
        left.listening = acceptor.release(ignored);
    else
        acceptor.close(ignored);
    last_moment.expires_after(limits.end);
    last_moment.async_wait([this](const error_code& cancelled) {
        if (cancelled) return;
        const auto late = visits;
        for (const auto& visit : late)
            if (!is_handing_over || !visit->is_answering()) visit->close();
    });
    const auto all = visits;
    for (const auto& visit : all) visit->end_soon();
    end_if_all_left();
}

Server::Server(const Sockets& sockets, Site& site, const ServerLimits& limits)
    : service_(std::make_unique<Service>(site, limits)) {
    service_->acceptor.assign(tcp::v4(), sockets.listening);
    keep_from_children(service_->acceptor);
    for (const int waiting : sockets.waiting) service_->welcome(tcp::socket(service_->context, tcp::v4(), waiting));
}

Server::~Server() = default;

std::uint16_t Server::port() const {
    return service_->acceptor.local_endpoint().port();
}

void Server::at_hang_up(std::function<void()> act) {
    service_->at_hang_up = std::move(act);
    service_->signals.add(SIGHUP);
}

void Server::hand_over() {
    asio::post(service_->context, [service = service_.get()] {
        if (service->is_ending) return;
        service->is_handing_over = true;
        service->end();
    });
}

std::optional<Sockets> Server::run(unsigned workers) {
    service_->workers.emplace(workers);
    service_->signals.add(SIGTERM);
    service_->signals.add(SIGINT);
    // Those of which the server before this one was told too late.
    sigset_t taken{};
    for (const int signal : taken_signals) ::sigaddset(&taken, signal);
    ::pthread_sigmask(SIG_UNBLOCK, &taken, nullptr);
    service_->take_signals();
    service_->let_in();
    service_->context.run();
    service_->workers->join();
    if (!service_->is_handing_over) return std::nullopt;
    return service_->left;
}

}  // namespace flutebook::http
