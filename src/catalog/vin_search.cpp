// See vin_search.h.
#include "catalog/vin_search.h"

#include <algorithm>

namespace tapbook {
namespace {

constexpr std::string_view layout = "TBV1";
constexpr std::size_t place_bytes = 4, record_bytes = vin_length + place_bytes;
constexpr std::ptrdiff_t most_year_digits = 4;

bool is_digit(char letter) {
    return letter >= '0' && letter <= '9';
}

bool is_letter(char letter) {
    return (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z');
}

}  // namespace

std::optional<std::variant<Vin, VinRefusal>> vin_in(std::string_view words) {
    std::string plain;
    for (const char letter : words)
        if (letter != ' ' && letter != '-') plain += letter;
    if (plain.size() != static_cast<std::size_t>(vin_length)) return std::nullopt;
    if (!std::all_of(plain.begin(), plain.end(), [](char c) { return is_digit(c) || is_letter(c); }))
        return std::nullopt;
    const auto digit = std::find_if(plain.begin(), plain.end(), is_digit);
    if (plain.end() - digit <= most_year_digits && std::all_of(digit, plain.end(), is_digit)) return std::nullopt;
    return parse_vin(plain);
}

std::string suggested_pattern(const Vin& vin) {
    constexpr std::size_t describing = 8;
    return vin.text().substr(0, describing) + std::string(vin_length - describing, '?');
}

std::string pack_vin_patterns(std::span<const std::vector<std::string>> patterns_of_cars) {
    std::string packed(layout);
    for (std::size_t car = 0; car < patterns_of_cars.size(); ++car)
        for (const auto& pattern : patterns_of_cars[car]) {
            packed += pattern;
            for (std::size_t i = 0; i < place_bytes; ++i) packed += static_cast<char>((car >> (8 * i)) & 0xff);
        }
    return packed;
}

std::optional<std::vector<std::size_t>> cars_of_vin(std::string_view packed, const Vin& vin, std::size_t cars) {
    if (!packed.starts_with(layout) || (packed.size() - layout.size()) % record_bytes != 0) return std::nullopt;
    std::vector<std::size_t> found;
    for (packed.remove_prefix(layout.size()); !packed.empty(); packed.remove_prefix(record_bytes)) {
        std::size_t car = 0;
        for (std::size_t i = 0; i < place_bytes; ++i)
            car |= static_cast<std::size_t>(static_cast<unsigned char>(packed[vin_length + i])) << (8 * i);
        if (car >= cars) return std::nullopt;
        const auto pattern = packed.substr(0, vin_length);
        if (!std::equal(pattern.begin(), pattern.end(), vin.text().begin(),
                        [](char wanted, char given) { return wanted == '?' || wanted == given; }))
            continue;
        if (found.empty() || found.back() != car) found.push_back(car);
    }
    return found;
}

}  // namespace tapbook
