// What chance decides in invented catalogs, the same on every machine: a SplitMix64 sequence (Steele, Lea, Flood 2014)
// and draws from it. The standard's distributions differ between libraries.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>

namespace invented {

class Dice {
  public:
    explicit Dice(std::uint64_t seed) : state_(seed) {}

    // A sequence of its own for the thing with this number: what is invented of one car does not hang on the others.
    Dice branch(std::uint64_t number) const { return Dice(mixed(state_ ^ mixed(number + step))); }

    std::uint64_t next() {
        state_ += step;
        return mixed(state_);
    }

    // From 0 to count - 1. REQUIRES count > 0.
    std::size_t below(std::size_t count) { return static_cast<std::size_t>(next() % count); }
    int between(int least, int most) {
        return least + static_cast<int>(below(static_cast<std::size_t>(most - least + 1)));
    }
    bool percent(int chance) { return between(0, 99) < chance; }

    template <class T, std::size_t size>
    const T& one_of(const T (&choices)[size]) {
        return choices[below(size)];
    }
    template <class List>
    const auto& pick(const List& list) {
        return list[below(list.size())];
    }

    // From 0 up to 1.
    double fraction() { return static_cast<double>(next() >> 11) * 0x1p-53; }

  private:
    static constexpr std::uint64_t step = 0x9e3779b97f4a7c15;
    static constexpr std::uint64_t mixed(std::uint64_t z) {
        z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9;
        z = (z ^ (z >> 27)) * 0x94d049bb133111eb;
        return z ^ (z >> 31);
    }

    std::uint64_t state_;
};

}  // namespace invented
