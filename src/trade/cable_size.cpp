// See cable_size.h. The three spellings are tried in turn; none of them can be mistaken for another.
#include "trade/cable_size.h"

#include <fmt/format.h>

#include <cmath>

#include "trade/decimal.h"

namespace tapbook {
namespace {

constexpr std::string_view metric_unit = "mm2";
constexpr std::string_view sae_mark = "sae";
constexpr std::int64_t most_thousandths = 1'000'000;

std::optional<CableSize> metric_size(std::string_view typed) {
    if (!typed.ends_with(metric_unit)) return std::nullopt;
    const auto number = typed.substr(0, typed.size() - metric_unit.size());
    if (number.starts_with('+')) return std::nullopt;
    const auto read = scaled(number, 3);
    const auto* area = std::get_if<std::int64_t>(&read);
    if (area == nullptr || *area < 1 || *area > most_thousandths) return std::nullopt;
    return thousandths_of_square_millimetre(*area);
}

struct SizeText {
    std::string operator()(Awg size) const { return awg_text(size); }
    std::string operator()(SquareMillimetres area) const {
        const auto thousandths = std::llround(area.in(thousandths_of_square_millimetre));
        return fmt::format("{}{}", unscaled(thousandths, 3), metric_unit);
    }
    std::string operator()(const SaeSize& size) const { return fmt::format("{}{}", sae_mark, size.marked); }
};

}  // namespace

std::optional<CableSize> parse_cable_size(std::string_view typed) {
    if (typed.starts_with(sae_mark)) {
        const SaeSize* size = find_sae_size(typed.substr(sae_mark.size()));
        return size == nullptr ? std::nullopt : std::optional<CableSize>(*size);
    }
    if (const auto gauge = parse_awg(typed)) return *gauge;
    return metric_size(typed);
}

std::string cable_size_text(const CableSize& size) {
    return std::visit(SizeText{}, size);
}

}  // namespace tapbook
