// See route.h.
#include "page/route.h"

#include "page/pages.h"

#include <algorithm>

namespace tapbook {
namespace {

std::vector<std::string_view> pieces(std::string_view pattern) {
    std::vector<std::string_view> list;
    pattern.remove_prefix(1);
    while (!pattern.empty()) {
        const auto slash = std::min(pattern.find('/'), pattern.size());
        list.push_back(pattern.substr(0, slash));
        pattern.remove_prefix(std::min(slash + 1, pattern.size()));
    }
    return list;
}

constexpr std::string_view one = "{}", rest = "{...}";

// What the holes caught; absent when the segments do not fit the pattern.
std::optional<std::vector<std::string>> caught_by(std::string_view pattern, std::span<const std::string> segments) {
    const auto wanted = pieces(pattern);
    std::vector<std::string> caught;
    for (std::size_t at = 0; at < wanted.size(); ++at) {
        if (at >= segments.size()) return std::nullopt;
        if (wanted[at] == rest) {
            std::string joined = segments[at];
            for (const auto& segment : segments.subspan(at + 1)) joined += "/" + segment;
            caught.push_back(std::move(joined));
            return caught;
        }
        if (wanted[at] == one)
            caught.push_back(segments[at]);
        else if (wanted[at] != segments[at])
            return std::nullopt;
    }
    if (segments.size() != wanted.size()) return std::nullopt;
    return caught;
}

// Does `a` win over `b` where both fit: the first segment in which they differ is written out, or is one hole beside a
// rest?
bool is_closer(std::string_view a, std::string_view b) {
    const auto rank = [](std::string_view piece) { return piece == rest ? 2 : piece == one ? 1 : 0; };
    const auto first = pieces(a), second = pieces(b);
    for (std::size_t at = 0; at < std::min(first.size(), second.size()); ++at)
        if (rank(first[at]) != rank(second[at])) return rank(first[at]) < rank(second[at]);
    return first.size() > second.size();
}

}  // namespace

std::span<const Route> routes() {
    static const std::vector<Route> all = [] {
        std::vector<Route> list;
        for (const auto part : {asset_routes(), pairing_routes(), find_routes(), car_routes(), advice_routes(),
                                changes_routes(), job_routes(), job_start_routes(), job_plan_routes(), reading_routes(),
                                job_list_routes(), job_close_routes(), note_routes(), sheet_routes(), shelf_routes(),
                                shelf_count_routes(), shelf_booking_routes(), why_routes()})
            list.insert(list.end(), part.begin(), part.end());
        return list;
    }();
    return all;
}

RouteFound find_route(PageMethod method, std::span<const std::string> segments) {
    RouteFound found;
    for (const auto& route : routes()) {
        if (route.method != method || (found.route != nullptr && !is_closer(route.pattern, found.route->pattern)))
            continue;
        if (auto caught = caught_by(route.pattern, segments)) found = {&route, std::move(*caught)};
    }
    return found;
}

}  // namespace tapbook
