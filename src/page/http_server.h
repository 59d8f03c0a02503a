// How do requests get from the network to the gate and back? HTTP/1.1 over TCP with every limit and time-out of a
// server that expects bad neighbours: nobody can hold it up, fill its memory or keep others out.
#pragma once

#include <chrono>
#include <cstddef>
#include <functional>
#include <memory>
#include <stdexcept>
#include <string>

#include "page/page_gate.h"

namespace tapbook {

struct ServerLimits {
    std::size_t header_bytes = 32 * 1024, body_bytes = 2 * 1024 * 1024;
    // For a whole header (also the wait for the next one), a whole body, and for taking an answer.
    std::chrono::milliseconds header_time{10'000}, body_time{10'000}, answer_time{10'000};
    // How long answers under way may take when the server stops.
    std::chrono::milliseconds farewell{500};
    int connections = 64, connections_of_one_address = 8;
    int threads = 2;
};

enum class ListenTrouble { port_in_use, no_such_address, not_permitted, other };

class ListenRefused : public std::runtime_error {
  public:
    ListenRefused(ListenTrouble trouble, const std::string& message) : std::runtime_error(message), trouble_(trouble) {}
    ListenTrouble trouble() const { return trouble_; }

  private:
    ListenTrouble trouble_;
};

class HttpServer {
  public:
    // `report` gets a line for what went wrong outside any request.
    HttpServer(const ServerLimits& limits, std::function<void(std::string_view)> report);
    ~HttpServer();
    HttpServer(const HttpServer&) = delete;
    HttpServer& operator=(const HttpServer&) = delete;

    // Opens a port of one own address, given in digits; 0 for any free port. The port that was opened. Throws
    // ListenRefused.
    int listen(const std::string& address, int port);

    // Calls `done` whenever a line was typed at the terminal, until the server stops.
    void on_typed_line(std::function<void()> done);

    // Answers until SIGINT, SIGTERM or stop(); answers under way are still sent. REQUIRES: listen() was called.
    void run(const PageGate& gate, const ShopPlace& place);

    // From any thread.
    void stop();

  private:
    struct State;
    std::unique_ptr<State> state_;
};

}  // namespace tapbook
