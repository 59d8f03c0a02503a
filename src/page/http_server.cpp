// See http_server.h. The only file that sees Boost.Beast and Boost.Asio: each connection runs in its own strand and is,
// one after the other, reading a header, reading a body, answering, and at the end letting go.
#include "page/http_server.h"

#include <fmt/format.h>
#include <unistd.h>

#include <array>
#include <atomic>
#include <boost/asio/ip/tcp.hpp>
#include <boost/asio/posix/stream_descriptor.hpp>
#include <boost/asio/signal_set.hpp>
#include <boost/asio/steady_timer.hpp>
#include <boost/asio/strand.hpp>
#include <boost/beast/core.hpp>
#include <boost/beast/http.hpp>
#include <csignal>
#include <mutex>
#include <thread>

#include "page/connection_places.h"

namespace tapbook {
namespace {

namespace asio = boost::asio;
namespace beast = boost::beast;
namespace http = boost::beast::http;
using Tcp = asio::ip::tcp;
using Error = beast::error_code;

constexpr std::size_t most_drained = 256 * 1024;
constexpr std::string_view no_place =
    "HTTP/1.1 503 Service Unavailable\r\nContent-Length: 0\r\nRetry-After: 1\r\nConnection: close\r\n\r\n";

// Desks that wait for work: as many are made as there are threads at work at once.
class Desks {
  public:
    explicit Desks(const ShopPlace& place) : place_(place) {}
    template <class Work>
    auto with_one(Work work) {
        std::unique_ptr<PageDesk> desk;
        {
            const std::lock_guard lock(mutex_);
            if (!free_.empty()) {
                desk = std::move(free_.back());
                free_.pop_back();
            }
        }
        if (!desk) desk = std::make_unique<PageDesk>(place_);
        auto result = work(*desk);
        const std::lock_guard lock(mutex_);
        free_.push_back(std::move(desk));
        return result;
    }

  private:
    const ShopPlace& place_;
    std::mutex mutex_;
    std::vector<std::unique_ptr<PageDesk>> free_;
};

// What all connections of a running server share.
struct Running {
    Running(const PageGate& the_gate, const ServerLimits& the_limits, const ShopPlace& place)
        : gate(the_gate), limits(the_limits), desks(place) {}

    const PageGate& gate;
    const ServerLimits& limits;
    Desks desks;
    std::atomic<bool> stops = false;
};

struct Refusal {
    int status;
    std::string_view message, hint;
};

// What is wrong with the syntax, as a page; absent when the other side only went away.
std::optional<Refusal> refusal_of(Error error) {
    constexpr std::string_view again = "Start again from the first page.";
    if (error == http::error::header_limit || error == http::error::buffer_overflow)
        return Refusal{431, "The address or a cookie is too long.", again};
    if (error == http::error::body_limit)
        return Refusal{413, "This is more than the server takes at once.", "Send less at a time."};
    const bool is_syntax = error.category() == make_error_code(http::error::bad_method).category();
    if (!is_syntax || error == http::error::end_of_stream || error == http::error::partial_message) return std::nullopt;
    return Refusal{400, "This is no request that a browser sends.", again};
}

// Forms of a request with two readings, and what no browser of ours sends: refused before anything else looks at it.
std::optional<Refusal> refusal_of(const http::request_header<>& header, bool is_chunked) {
    constexpr std::string_view again = "Start again from the first page.";
    if (is_chunked || header.count(http::field::transfer_encoding) > 0)
        return Refusal{411, "The length of what is sent has to be said first.", again};
    if (header.count(http::field::expect) > 0)
        return Refusal{417, "The server does not answer before all is sent.", again};
    const auto length = header.find(http::field::content_length);
    const bool sends = length != header.end() && length->value() != "0";
    if (sends && header.method() != http::verb::post) return Refusal{400, "Only a form sends something along.", again};
    return std::nullopt;
}

class Connection : public std::enable_shared_from_this<Connection> {
  public:
    Connection(Tcp::socket socket, std::string from, std::shared_ptr<void> place, std::shared_ptr<Running> running)
        : stream_(std::move(socket)),
          from_(std::move(from)),
          place_(std::move(place)),
          running_(std::move(running)),
          buffer_(running_->limits.header_bytes) {}

    void start() {
        asio::dispatch(stream_.get_executor(), [self = shared_from_this()] { self->read_header(); });
    }

  private:
    void read_header() {
        parser_.emplace();
        parser_->header_limit(static_cast<std::uint32_t>(running_->limits.header_bytes));
        parser_->body_limit(running_->limits.body_bytes);
        request_ = {};
        stream_.expires_after(running_->limits.header_time);
        http::async_read_header(stream_, buffer_, *parser_, [self = shared_from_this()](Error error, std::size_t) {
            error ? self->fail(error) : self->header_read();
        });
    }

    void header_read() {
        const auto& header = parser_->get().base();
        request_.method = header.method_string().to_string();
        request_.target = header.target().to_string();
        request_.from = from_;
        for (const auto& field : header)
            request_.headers.emplace_back(field.name_string().to_string(), field.value().to_string());
        if (const auto refusal = refusal_of(header, parser_->chunked())) return refuse(*refusal);
        if (auto refused = running_->gate.refuse_early(request_)) {
            const bool all_read = parser_->is_done() || parser_->content_length().value_or(0) == 0;
            return answer(std::move(*refused), all_read && parser_->keep_alive());
        }
        stream_.expires_after(running_->limits.body_time);
        http::async_read(stream_, buffer_, *parser_, [self = shared_from_this()](Error error, std::size_t) {
            error ? self->fail(error) : self->all_read();
        });
    }

    void all_read() {
        request_.body = std::move(parser_->get().body());
        auto sent = running_->desks.with_one([&](PageDesk& desk) { return running_->gate.answer(desk, request_); });
        answer(std::move(sent), parser_->keep_alive());
    }

    void fail(Error error) {
        if (const auto refusal = refusal_of(error)) refuse(*refusal);
    }

    void refuse(const Refusal& refusal) {
        answer(PageGate::refusal(refusal.status, refusal.message, refusal.hint), false);
    }

    void answer(SentAnswer sent, bool keep_alive) {
        response_ = {};
        response_.result(static_cast<unsigned>(sent.status));
        for (const auto& [name, value] : sent.headers) response_.insert(name, value);
        response_.keep_alive(keep_alive && !running_->stops);
        if (sent.status != 304) response_.content_length(sent.body.size());
        if (request_.method != "HEAD") response_.body() = std::move(sent.body);
        stream_.expires_after(running_->limits.answer_time);
        http::async_write(stream_, response_, [self = shared_from_this()](Error error, std::size_t) {
            if (error) return;
            self->response_.keep_alive() ? self->read_header() : self->let_go();
        });
    }

    // Says that nothing more comes and takes what is still on its way, so that the answer is not lost with it.
    void let_go() {
        Error ignored;
        stream_.socket().shutdown(Tcp::socket::shutdown_send, ignored);
        stream_.expires_after(running_->limits.farewell);
        drain();
    }

    void drain() {
        stream_.async_read_some(asio::buffer(drained_), [self = shared_from_this()](Error error, std::size_t count) {
            self->drained_bytes_ += count;
            if (!error && self->drained_bytes_ < most_drained) self->drain();
        });
    }

    beast::tcp_stream stream_;
    std::string from_;
    std::shared_ptr<void> place_;
    std::shared_ptr<Running> running_;
    beast::flat_buffer buffer_;
    std::optional<http::request_parser<http::string_body>> parser_;
    RawRequest request_;
    http::response<http::string_body> response_;
    std::array<char, 8192> drained_{};
    std::size_t drained_bytes_ = 0;
};

ListenTrouble trouble_of(Error error) {
    if (error == asio::error::address_in_use) return ListenTrouble::port_in_use;
    if (error == asio::error::access_denied || error == asio::error::no_permission) return ListenTrouble::not_permitted;
    if (error == Error(EADDRNOTAVAIL, boost::system::system_category())) return ListenTrouble::no_such_address;
    return ListenTrouble::other;
}

}  // namespace

struct HttpServer::State {
    State(const ServerLimits& wanted, std::function<void(std::string_view)> reporter)
        : limits(wanted), report(std::move(reporter)), places(wanted.connections, wanted.connections_of_one_address) {}

    void accept(Tcp::acceptor& acceptor) {
        acceptor.async_accept(asio::make_strand(context), [&](Error error, Tcp::socket socket) {
            if (error == asio::error::operation_aborted || !acceptor.is_open()) return;
            if (error) return pause(acceptor);
            welcome(std::move(socket));
            accept(acceptor);
        });
    }

    // Out of handles, say: others give some back.
    void pause(Tcp::acceptor& acceptor) {
        auto timer = std::make_shared<asio::steady_timer>(door, std::chrono::milliseconds(100));
        timer->async_wait([&, timer](Error error) {
            if (!error && acceptor.is_open()) accept(acceptor);
        });
    }

    void welcome(Tcp::socket socket) {
        Error error;
        const auto peer = socket.remote_endpoint(error);
        if (error) return;
        const std::string from = peer.address().to_string();
        if (auto place = places.take(from)) {
            socket.set_option(Tcp::no_delay(true), error);  // else each answer waits 40 ms for an acknowledgement
            std::make_shared<Connection>(std::move(socket), from, std::move(place), running)->start();
            return;
        }
        socket.non_blocking(true, error);
        socket.write_some(asio::buffer(no_place), error);
    }

    void wait_for_line() {
        typed.async_wait(asio::posix::stream_descriptor::wait_read, [this](Error error) {
            if (error) return;
            std::array<char, 256> line{};
            if (::read(typed.native_handle(), line.data(), line.size()) <= 0) return;  // end of input
            line_typed();
            wait_for_line();
        });
    }

    // In the strand of the acceptors.
    void begin_to_stop() {
        if (running) running->stops = true;
        Error ignored;
        for (auto& acceptor : acceptors) acceptor.close(ignored);
        typed.close(ignored);
        if (places.taken() == 0) return context.stop();
        farewell.expires_after(limits.farewell);
        farewell.async_wait([this](Error) { context.stop(); });
    }

    void work() {
        while (!context.stopped()) {
            try {
                context.run();
                return;
            } catch (const std::exception& error) {
                report(error.what());
            }
        }
    }

    ServerLimits limits;
    std::function<void(std::string_view)> report;
    ConnectionPlaces places;
    asio::io_context context;
    asio::strand<asio::io_context::executor_type> door = asio::make_strand(context);
    std::vector<Tcp::acceptor> acceptors;
    std::shared_ptr<Running> running;
    std::function<void()> line_typed;
    asio::posix::stream_descriptor typed{door};
    asio::steady_timer farewell{door};
    asio::signal_set signals{door, SIGINT, SIGTERM};  // from the beginning: none is lost before run()
};

HttpServer::HttpServer(const ServerLimits& limits, std::function<void(std::string_view)> report)
    : state_(std::make_unique<State>(limits, std::move(report))) {}
HttpServer::~HttpServer() = default;

int HttpServer::listen(const std::string& address, int port) {
    Error error;
    const auto host = asio::ip::make_address(address, error);
    if (error) throw ListenRefused(ListenTrouble::no_such_address, "not an address in digits");
    Tcp::acceptor acceptor(state_->door);
    const Tcp::endpoint place(host, static_cast<std::uint16_t>(port));
    acceptor.open(place.protocol(), error);
    if (!error) acceptor.set_option(Tcp::acceptor::reuse_address(true), error);
    if (!error) acceptor.bind(place, error);
    if (!error) acceptor.listen(asio::socket_base::max_listen_connections, error);
    if (error) throw ListenRefused(trouble_of(error), error.message());
    const int opened = acceptor.local_endpoint().port();
    state_->acceptors.push_back(std::move(acceptor));
    return opened;
}

void HttpServer::on_typed_line(std::function<void()> done) {
    std::signal(SIGTTIN, SIG_IGN);  // in the background the terminal belongs to others: reading fails, and that is all
    state_->line_typed = std::move(done);
    state_->typed.assign(::dup(STDIN_FILENO));
    state_->wait_for_line();
}

void HttpServer::run(const PageGate& gate, const ShopPlace& place) {
    State& state = *state_;
    state.running = std::make_shared<Running>(gate, state.limits, place);
    state.signals.async_wait([&](Error error, int) {
        if (!error) state.begin_to_stop();
    });
    for (auto& acceptor : state.acceptors) state.accept(acceptor);
    std::vector<std::thread> others;
    for (int number = 1; number < state.limits.threads; ++number) others.emplace_back([&] { state.work(); });
    state.work();
    for (auto& other : others) other.join();
}

void HttpServer::stop() {
    asio::post(state_->door, [this] { state_->begin_to_stop(); });
}

}  // namespace tapbook
