// Which headers keep a browser from doing more with a page than it should? Every answer carries them.
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "page/request.h"

namespace tapbook {

using AnswerHeaders = std::vector<std::pair<std::string, std::string>>;

// Type, policy and cache of an answer. REQUIRES: inline_texts are ours.
AnswerHeaders answer_headers(const PageAnswer& answer);

// The content security policy (W3C, level 3): nothing from elsewhere, nothing inline but what is named by its hash.
std::string content_policy(const std::vector<std::string>& inline_texts);

// A cookie that scripts cannot read and that no other site's links or forms bring along; "" as value takes it away.
std::string cookie_header(std::string_view name, std::string_view value);

// The value of a cookie in a Cookie header; "" when it is not there, or there twice.
std::string cookie_value(std::string_view header, std::string_view name);

}  // namespace tapbook
