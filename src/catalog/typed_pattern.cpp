// See typed_pattern.h.
#include "catalog/typed_pattern.h"

#include <algorithm>

namespace tapbook {

TypedPattern::TypedPattern(std::string_view typed) : size_(std::min(typed.size(), longest)) {
    for (std::size_t i = 0; i < size_; ++i) places_[static_cast<unsigned char>(typed[i])] |= std::uint64_t{1} << i;
}

// The column of the distance table below the name's last letter, as differences between its rows.
TypedPattern::Column TypedPattern::last_column(std::string_view name) const {
    const std::uint64_t top = std::uint64_t{1} << (size_ - 1);
    std::uint64_t up = ~std::uint64_t{0}, down = 0, equal = 0, places_before = 0;
    std::size_t last = size_;
    for (const char letter : name) {
        const std::uint64_t places = places_[static_cast<unsigned char>(letter)];
        const std::uint64_t swapped = ((~equal & places) << 1) & places_before;
        equal = (((places & up) + up) ^ up) | places | down | swapped;
        std::uint64_t right_up = down | ~(equal | up);
        std::uint64_t right_down = equal & up;
        if ((right_up & top) != 0) ++last;
        if ((right_down & top) != 0) --last;
        right_up = (right_up << 1) | 1;
        right_down <<= 1;
        up = right_down | ~(equal | right_up);
        down = right_up & equal;
        places_before = places;
    }
    return {up, down, last};
}

std::size_t TypedPattern::distance(std::string_view name) const {
    return last_column(name).last;
}

void TypedPattern::prefix_distances(std::string_view name, std::span<std::uint8_t> distances) const {
    const Column column = last_column(name);
    int distance = static_cast<int>(std::min<std::size_t>(name.size(), 255));
    distances[0] = static_cast<std::uint8_t>(distance);
    for (std::size_t i = 0; i < size_; ++i) {
        distance += static_cast<int>((column.up >> i) & 1) - static_cast<int>((column.down >> i) & 1);
        distances[i + 1] = static_cast<std::uint8_t>(std::clamp(distance, 0, 255));
    }
}

std::uint64_t letters_of(std::string_view folded) {
    std::uint64_t letters = 0;
    for (const char letter : folded) letters |= std::uint64_t{1} << (static_cast<unsigned char>(letter) & 63);
    return letters;
}

}  // namespace tapbook
