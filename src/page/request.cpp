// See request.h.
#include "page/request.h"

#include <algorithm>

namespace tapbook {

std::optional<std::string> FormFields::text(std::string_view name) const {
    const auto found = std::find_if(fields_.begin(), fields_.end(), [&](const auto& one) { return one.first == name; });
    if (found == fields_.end()) return std::nullopt;
    return found->second;
}

std::vector<std::string> FormFields::texts(std::string_view name) const {
    std::vector<std::string> list;
    for (const auto& [key, text] : fields_)
        if (key == name) list.push_back(text);
    return list;
}

std::string PageRequest::kept_text(std::string_view name) const {
    for (const auto& [key, text] : kept)
        if (key == name) return text;
    return {};
}

PageAnswer see_other(std::string address) {
    PageAnswer answer;
    answer.status = 303;
    answer.location = std::move(address);
    return answer;
}

}  // namespace tapbook
