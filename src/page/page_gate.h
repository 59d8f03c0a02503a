// Is this request let in, and what is sent back? Everything that is decided about a request without a socket: whose
// name it calls, which route it means, whether it may write; then the page, with the headers that every answer carries.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "page/own_names.h"
#include "page/page_desk.h"
#include "page/pairing.h"
#include "page/route.h"
#include "page/session.h"

namespace tapbook {

// A request as it came, syntax of HTTP/1.1 checked.
struct RawRequest {
    std::string method, target;
    std::vector<std::pair<std::string, std::string>> headers;
    std::string body;
    std::string from;  // the address it came from, for the log

    // Every value of a header, names in any case.
    std::vector<std::string_view> values(std::string_view name) const;
    // Its value, "" without it or with several.
    std::string_view value(std::string_view name) const;
};

struct SentAnswer {
    int status = 200;
    std::vector<std::pair<std::string, std::string>> headers;
    std::string body;  // left out by the server for HEAD, but counted
};

inline constexpr std::string_view phone_cookie = "tapbook_phone", visitor_cookie = "tapbook_visitor";

// Safe to use from several threads, each with its own desk. What is given must outlive it.
class PageGate {
  public:
    // `log` gets one line for each request that was let in to write, and for each that was refused as forged.
    PageGate(const ShopPlace& place, OwnNames names, PageClock clock, std::function<void(std::string_view)> log);

    // What can be refused before the body is read; absent when the body is wanted.
    std::optional<SentAnswer> refuse_early(const RawRequest& request) const;

    SentAnswer answer(PageDesk& desk, const RawRequest& request) const;

    // The page for a request that is no HTTP, too long or too slow.
    static SentAnswer refusal(int status, std::string_view message, std::string_view hint);

  private:
    struct LetIn;
    LetIn let_in(const RawRequest& request) const;
    void check_forgery(const RawRequest& request) const;
    void check_form(const RawRequest& request, LetIn& guest) const;
    SentAnswer sent(PageDesk& desk, const RawRequest& request, LetIn& guest) const;
    void write_log(const RawRequest& request, const LetIn& guest, int status) const;

    const ShopPlace& place_;
    OwnNames names_;
    PageClock clock_;
    std::function<void(std::string_view)> log_;
    FormTokens tokens_;
};

}  // namespace tapbook
