// See path.h.
#include "trade/path.h"

#include <fmt/format.h>

#include <algorithm>

#include "trade/text.h"

namespace tapbook {
namespace {

bool is_slug_character(char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-';
}

}  // namespace

bool is_slug(std::string_view text) {
    return !text.empty() && text.size() <= 40 && std::all_of(text.begin(), text.end(), is_slug_character);
}

std::optional<std::string> slug_complaint(std::string_view text) {
    if (is_slug(text)) return std::nullopt;
    if (text.size() > 40) return "is longer than 40 characters";
    const std::string better = slug_from(text);
    if (better.empty()) return "must be small letters, digits and hyphens";
    return fmt::format("must be small letters, digits and hyphens: write \"{}\"", better);
}

std::string slug_from(std::string_view text) {
    std::string slug;
    for (const char c : folded(text)) {
        if (is_slug_character(c))
            slug += c;
        else if (c == ' ' && !slug.empty() && slug.back() != '-')
            slug += '-';
    }
    if (slug.size() > 40) slug.resize(40);
    while (!slug.empty() && slug.back() == '-') slug.pop_back();
    return slug;
}

std::vector<std::string_view> path_parts(std::string_view path) {
    std::vector<std::string_view> parts;
    if (path.empty()) return parts;
    for (auto slash = path.find('/'); slash != std::string_view::npos; slash = path.find('/')) {
        parts.push_back(path.substr(0, slash));
        path.remove_prefix(slash + 1);
    }
    parts.push_back(path);  // empty after a slash at the end
    return parts;
}

std::string path_join(std::string_view path, std::string_view slug) {
    return fmt::format("{}/{}", path, slug);
}

std::string_view path_head(std::string_view path, std::size_t depth) {
    std::size_t at = 0;
    for (std::size_t i = 0; i < depth; ++i) {
        at = path.find('/', at);
        if (at == std::string_view::npos) return path;
        ++at;
    }
    return at == 0 ? std::string_view{} : path.substr(0, at - 1);
}

std::string_view path_tail(std::string_view path, std::size_t depth) {
    const auto head = path_head(path, depth);
    return head.size() == path.size() ? std::string_view{} : path.substr(head.empty() ? 0 : head.size() + 1);
}

bool is_tail_run(std::string_view path, std::string_view words) {
    std::string run(words);
    std::replace(run.begin(), run.end(), ' ', '/');
    if (run.empty() || run.size() > path.size()) return false;
    if (path.substr(path.size() - run.size()) != run) return false;
    return run.size() == path.size() || path[path.size() - run.size() - 1] == '/';
}

}  // namespace tapbook
