// Which finished pages may be sent again as they are? Those that were asked for in the same words by the same reader on
// the same day, as long as nothing was written since. Bounded: the page that was not asked for the longest goes first.
#pragma once

#include <cstddef>
#include <list>
#include <optional>
#include <string>
#include <unordered_map>

#include "page/request.h"

namespace tapbook {

inline constexpr std::size_t most_finished_bytes = 4 * 1024 * 1024;

// Whatever the page of this request can depend on beside the catalog and the rules: address, words, day, reader.
std::string question_of(const PageRequest& request);

// May the answer be sent to the next who asks the same? Not when it holds the hidden token of a form, leads elsewhere,
// or changes the session.
bool may_be_sent_again(const PageRequest& request, const PageAnswer& answer);

// Not to be shared between threads.
class FinishedPages {
  public:
    explicit FinishedPages(std::size_t most_bytes = most_finished_bytes) : most_bytes_(most_bytes) {}

    // Forgets all pages unless `state` is the one of the last call.
    void begin(const std::string& state);

    // The page that was kept under this question since begin() saw another state; nullptr without one. Valid until the
    // next call of another member.
    const PageAnswer* find(const std::string& question);

    // A page that alone takes more than a quarter of all room is not kept. REQUIRES: may_be_sent_again(), and made
    // after begin() saw the state that is still the newest known.
    void keep(const std::string& question, const PageAnswer& answer);

    std::size_t bytes() const { return bytes_; }
    std::size_t count() const { return pages_.size(); }

  private:
    struct Kept {
        std::string question;
        PageAnswer answer;
    };
    static std::size_t size_of(const Kept& kept);

    std::size_t most_bytes_, bytes_ = 0;
    std::string state_;
    std::list<Kept> pages_;  // asked for last first
    std::unordered_map<std::string, std::list<Kept>::iterator> by_question_;
};

}  // namespace tapbook
