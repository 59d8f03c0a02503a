// Which sets of columns occur? Open addressing with linear probing, at most half full.
#include "shelf/mask_set.h"

#include <algorithm>

namespace tapbook {

namespace {

// Mixes word after word (multiply and fold, the odd constant is 2^64 over the golden ratio).
std::uint64_t hash_of(std::span<const MaskSet::Word> mask) {
    std::uint64_t hash = 0;
    for (const MaskSet::Word word : mask) {
        hash = (hash ^ word) * 0x9E3779B97F4A7C15u;
        hash ^= hash >> 29;
    }
    return hash;
}

}  // namespace

MaskSet::MaskSet(std::size_t bits) : words_((bits + 63) / 64), slots_(256) {}

std::size_t MaskSet::slot_of(std::span<const Word> mask) const {
    std::size_t slot = hash_of(mask) & (slots_.size() - 1);
    while (slots_[slot] != 0 && !std::ranges::equal(this->mask(slots_[slot] - 1), mask))
        slot = (slot + 1) & (slots_.size() - 1);
    return slot;
}

void MaskSet::add(std::span<const Word> mask, std::int64_t weight) {
    const std::size_t slot = slot_of(mask);
    if (slots_[slot] != 0) {
        weights_[slots_[slot] - 1] += weight;
        return;
    }
    masks_.insert(masks_.end(), mask.begin(), mask.end());
    weights_.push_back(weight);
    slots_[slot] = static_cast<std::uint32_t>(weights_.size());
    if (weights_.size() * 2 > slots_.size()) grow();
}

void MaskSet::grow() {
    slots_.assign(slots_.size() * 2, 0);
    for (std::size_t i = 0; i < size(); ++i) slots_[slot_of(mask(i))] = static_cast<std::uint32_t>(i + 1);
}

}  // namespace tapbook
