// See job_code.h.
#include "trade/job_code.h"

namespace tapbook {
namespace {

constexpr std::string_view characters = "ABCDEFGHJKLMNPQRSTUVWXYZ23456789";
static_assert(characters.size() == 32);

bool is_letter(char c) {
    return c >= 'A' && c <= 'Z';
}

}  // namespace

std::optional<std::string> job_code(const std::array<unsigned char, job_code_length>& bytes) {
    std::string code;
    bool has_letter = false;
    for (const unsigned char byte : bytes) {
        code += characters[byte & 31u];
        has_letter = has_letter || is_letter(code.back());
    }
    return has_letter ? std::optional(code) : std::nullopt;
}

std::optional<std::string> parse_job_code(std::string_view typed) {
    if (typed.size() != job_code_length) return std::nullopt;
    std::string code;
    bool has_letter = false;
    for (char c : typed) {
        if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
        if (characters.find(c) == std::string_view::npos) return std::nullopt;
        has_letter = has_letter || is_letter(c);
        code += c;
    }
    return has_letter ? std::optional(code) : std::nullopt;
}

}  // namespace tapbook
