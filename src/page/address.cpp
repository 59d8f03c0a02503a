// See address.h.
#include "page/address.h"

#include <fmt/format.h>

namespace tapbook {
namespace {

bool is_plain(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' || c == '.' ||
           c == '_' || c == '~';
}

std::string encoded_but(std::string_view text, std::string_view kept) {
    std::string out;
    for (const char c : text) {
        if (is_plain(c) || kept.find(c) != std::string_view::npos)
            out += c;
        else
            out += fmt::format("%{:02X}", static_cast<unsigned char>(c));
    }
    return out;
}

}  // namespace

std::string encoded(std::string_view text) {
    return encoded_but(text, "");
}

std::string encoded_path(std::string_view path) {
    return encoded_but(path, "/");
}

std::string address(std::string_view path, std::initializer_list<std::pair<std::string_view, std::string>> query) {
    std::string out(path);
    char mark = '?';
    for (const auto& [name, text] : query) {
        if (text.empty()) continue;
        out += fmt::format("{}{}={}", mark, name, encoded(text));
        mark = '&';
    }
    return out;
}

std::string car_address(std::string_view vehicle, std::optional<int> year, std::string_view system) {
    return address("/car/" + encoded_path(vehicle),
                   {{"year", year ? std::to_string(*year) : std::string()}, {"system", std::string(system)}});
}

std::string job_address(std::string_view code, std::string_view part) {
    return fmt::format("/job/{}{}{}", encoded(code), part.empty() ? "" : "/", part);
}

}  // namespace tapbook
