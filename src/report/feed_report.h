// How is a feed said, as text and as JSON?
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "electrical/electrical.h"
#include "report/screen.h"

namespace tapbook {

// "4 AWG", "25 mm2", "SAE 4".
std::string size_words(const CableSize& size);

std::string feed_text(const FeedReport& report, const Screen& screen);
std::string feed_json(const FeedReport& report);

// Places that carry no ground wire, for both.
std::span<const std::string_view> forbidden_grounds();

}  // namespace tapbook
