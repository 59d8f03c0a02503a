// See own_names.h.
#include "page/own_names.h"

#include <fmt/format.h>

#include <algorithm>

namespace tapbook {
namespace {

constexpr int usual_port = 80;

char lower(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

std::string in_lower_case(std::string_view text) {
    std::string result(text);
    std::transform(result.begin(), result.end(), result.begin(), lower);
    return result;
}

bool is_label(std::string_view label) {
    const auto is_ours = [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-';
    };
    return !label.empty() && label.size() <= 63 && !label.starts_with('-') && !label.ends_with('-') &&
           std::all_of(label.begin(), label.end(), is_ours);
}

}  // namespace

OwnNames::OwnNames(const std::vector<std::string>& addresses, const std::vector<std::string>& names, int port) {
    std::vector<std::string> hosts = {"localhost"};
    for (const auto& address : addresses)
        hosts.push_back(address.find(':') == std::string::npos ? address : fmt::format("[{}]", address));
    hosts.insert(hosts.end(), names.begin(), names.end());
    for (const auto& host : hosts) {
        spellings_.push_back(fmt::format("{}:{}", in_lower_case(host), port));
        if (port == usual_port) spellings_.push_back(in_lower_case(host));
    }
}

bool OwnNames::accepts(std::string_view host) const {
    return std::find(spellings_.begin(), spellings_.end(), in_lower_case(host)) != spellings_.end();
}

bool is_own_origin(std::string_view origin, std::string_view host) {
    return in_lower_case(origin) == "http://" + in_lower_case(host);
}

bool is_host_name(std::string_view name) {
    if (name.empty() || name.size() > 253) return false;
    bool has_letter = false;
    while (true) {
        const auto point = std::min(name.find('.'), name.size());
        const std::string_view label = name.substr(0, point);
        if (!is_label(label)) return false;
        has_letter = std::any_of(label.begin(), label.end(), [](char c) { return lower(c) >= 'a' && lower(c) <= 'z'; });
        if (point == name.size()) return has_letter;  // the last label of an address in digits has none
        name.remove_prefix(point + 1);
    }
}

}  // namespace tapbook
