// What do bad neighbours do? A server on a free port of this machine with short time-outs, and clients that send bytes.
#pragma once

#include <arpa/inet.h>
#include <netinet/in.h>
#include <sys/socket.h>
#include <sys/time.h>
#include <unistd.h>

#include <cstring>
#include <string>
#include <thread>

#include "a_server.h"

namespace tapbook {

// Bytes to a port of this machine and back; never waits longer than five seconds.
class Client {
  public:
    explicit Client(int port) : handle_(::socket(AF_INET, SOCK_STREAM, 0)) {
        sockaddr_in place{};
        place.sin_family = AF_INET;
        place.sin_port = htons(static_cast<std::uint16_t>(port));
        place.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
        const timeval patience{5, 0};
        ::setsockopt(handle_, SOL_SOCKET, SO_RCVTIMEO, &patience, sizeof patience);
        ::setsockopt(handle_, SOL_SOCKET, SO_SNDTIMEO, &patience, sizeof patience);
        if (::connect(handle_, reinterpret_cast<const sockaddr*>(&place), sizeof place) != 0) close();
    }
    ~Client() { close(); }
    Client(Client&& other) noexcept : handle_(std::exchange(other.handle_, -1)) {}
    Client& operator=(Client&&) = delete;

    // Sends all; false when the other side has closed.
    bool send(std::string_view bytes) {
        while (!bytes.empty()) {
            const auto count = ::send(handle_, bytes.data(), bytes.size(), MSG_NOSIGNAL);
            if (count <= 0) return false;
            bytes.remove_prefix(static_cast<std::size_t>(count));
        }
        return true;
    }

    // All that comes until the other side closes; closed() tells whether it did within the five seconds.
    std::string rest() {
        std::string all;
        while (receive(all)) {
        }
        return all;
    }

    // One answer with its body, as its Content-Length says; what there is when the other side closes first.
    std::string answer() {
        std::string all = std::exchange(kept_, {});
        while (true) {
            const auto head = all.find("\r\n\r\n");
            if (head != std::string::npos) {
                const auto at = all.find("Content-Length: ");
                const std::size_t wanted = head + 4 + (at < head ? std::stoul(all.substr(at + 16)) : 0);
                if (all.size() >= wanted) {
                    kept_ = all.substr(wanted);
                    return all.substr(0, wanted);
                }
            }
            if (!receive(all)) return all;
        }
    }

    bool closed() const { return closed_; }
    void close() {
        if (handle_ >= 0) ::close(handle_);
        handle_ = -1;
    }

  private:
    bool receive(std::string& all) {
        char buffer[4096];
        const auto count = ::recv(handle_, buffer, sizeof buffer, 0);
        closed_ = count == 0 || (count < 0 && errno == ECONNRESET);
        if (count > 0) all.append(buffer, static_cast<std::size_t>(count));
        return count > 0;
    }

    int handle_;
    bool closed_ = false;
    std::string kept_;
};

inline ServerLimits short_limits() {
    ServerLimits limits;
    limits.header_bytes = 4096;
    limits.body_bytes = 8192;
    limits.header_time = limits.body_time = limits.answer_time = std::chrono::seconds(3);
    limits.farewell = std::chrono::milliseconds(100);
    return limits;
}

// For what is to be cut.
inline ServerLimits hasty_limits() {
    ServerLimits limits = short_limits();
    limits.header_time = limits.body_time = limits.answer_time = std::chrono::milliseconds(400);
    return limits;
}

// Runs until it goes.
class RunningServer {
  public:
    explicit RunningServer(const ServerLimits& limits = short_limits())
        : http_(limits, [](std::string_view) {}), port_(http_.listen("127.0.0.1", 0)), thread_([this] { run(); }) {}
    ~RunningServer() { stop(); }

    // Returns when the server has ended.
    void stop() {
        if (!thread_.joinable()) return;
        http_.stop();
        thread_.join();
    }

    int port() const { return port_; }
    Client client() const { return Client(port_); }
    AServer& server() { return server_; }
    // A line "Host: ..." that is right here.
    std::string host() const { return "Host: 127.0.0.1:" + std::to_string(port_) + "\r\n"; }
    std::string get(const std::string& target, const std::string& headers = {}) const {
        return "GET " + target + " HTTP/1.1\r\n" + host() + headers + "\r\n";
    }
    std::string post(const std::string& target, const std::string& headers, const std::string& body) const {
        return "POST " + target + " HTTP/1.1\r\n" + host() + "Origin: http://127.0.0.1:" + std::to_string(port_) +
               "\r\nContent-Type: application/x-www-form-urlencoded\r\n" + headers + "\r\n" + body;
    }

  private:
    void run() {
        const PageGate gate(server_.place, OwnNames({"127.0.0.1"}, {}, port_), server_.clock, [](std::string_view) {});
        http_.run(gate, server_.place);
    }

    AServer server_;
    HttpServer http_;
    int port_;
    std::thread thread_;
};

inline int status_of(const std::string& answer) {
    return answer.starts_with("HTTP/1.1 ") ? std::stoi(answer.substr(9, 3)) : 0;
}

inline int answers_in(const std::string& bytes) {
    int count = 0;
    for (auto at = bytes.find("HTTP/1.1 "); at != std::string::npos; at = bytes.find("HTTP/1.1 ", at + 1)) ++count;
    return count;
}

}  // namespace tapbook
