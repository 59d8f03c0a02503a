// How does a number keep its unit and its kind? Each kind (RMS, peak, d.c. volts, ohms, a level, a gain ...) is a type
// of its own; the unit is spoken on the way in, `rms_volts(9.4)`, and on the way out, `q.in(rms_volts)`. Kinds do not
// mix. A level is a point, a gain is a difference: two points subtract to a difference and never add.
#pragma once

#include <compare>
#include <concepts>
#include <type_traits>

namespace tapbook {

template <class Tag>
class Quantity;

template <class Number>
concept PlainNumber = std::is_arithmetic_v<Number> && !std::same_as<Number, bool>;

// A unit is numerator/denominator of the kind's base unit. Calling it makes a quantity: exact for whole numbers up to
// 2^53, since value * numerator / denominator rounds once.
template <class Tag, long numerator = 1, long denominator = 1>
struct Unit {
    template <PlainNumber Number>
    constexpr Quantity<Tag> operator()(Number value) const;
};

struct RatioTag;

// Points (levels, temperatures) name the kind of their difference; all other kinds have none.
template <class Tag>
concept PointTag = requires {
    typename Tag::Difference;
};

// One value of one kind. There is no default: what is not known is an absent optional, never a zero.
template <class Tag>
class Quantity {
  public:
    Quantity() = delete;

    template <long numerator, long denominator>
    constexpr double in(Unit<Tag, numerator, denominator>) const {
        return value_ * static_cast<double>(denominator) / static_cast<double>(numerator);
    }

    friend constexpr auto operator<=>(const Quantity&, const Quantity&) = default;

    friend constexpr Quantity operator+(Quantity a, Quantity b) requires(!PointTag<Tag>) {
        return Quantity(a.value_ + b.value_);
    }
    friend constexpr Quantity operator-(Quantity a, Quantity b) requires(!PointTag<Tag>) {
        return Quantity(a.value_ - b.value_);
    }
    friend constexpr Quantity operator-(Quantity a) requires(!PointTag<Tag>) { return Quantity(-a.value_); }
    friend constexpr Quantity operator*(Quantity a, double times) requires(!PointTag<Tag>) {
        return Quantity(a.value_ * times);
    }
    friend constexpr Quantity operator*(double times, Quantity a) requires(!PointTag<Tag>) { return a * times; }
    friend constexpr Quantity operator/(Quantity a, double parts) requires(!PointTag<Tag>) {
        return Quantity(a.value_ / parts);
    }
    // Two of a kind divide to a plain ratio.
    friend constexpr Quantity<RatioTag> operator/(Quantity a, Quantity b) requires(!PointTag<Tag>) {
        return Unit<RatioTag>{}(a.value_ / b.value_);
    }

  private:
    constexpr explicit Quantity(double value) : value_(value) {}
    template <class, long, long>
    friend struct Unit;

    double value_;
};

template <class Tag, long numerator, long denominator>
template <PlainNumber Number>
constexpr Quantity<Tag> Unit<Tag, numerator, denominator>::operator()(Number value) const {
    return Quantity<Tag>(static_cast<double>(value) * static_cast<double>(numerator) /
                         static_cast<double>(denominator));
}

// Any kind that is not a point is stretched by a ratio.
template <class Tag>
requires(!PointTag<Tag> && !std::same_as<Tag, RatioTag>) constexpr Quantity<Tag> operator*(Quantity<Tag> a,
                                                                                           Quantity<RatioTag> times) {
    return a * times.in(Unit<RatioTag>{});
}
template <class Tag>
requires(!PointTag<Tag> && !std::same_as<Tag, RatioTag>) constexpr Quantity<Tag> operator/(Quantity<Tag> a,
                                                                                           Quantity<RatioTag> parts) {
    return a / parts.in(Unit<RatioTag>{});
}

// Points: point - point = difference, point +- difference = point.
template <PointTag Tag>
constexpr Quantity<typename Tag::Difference> operator-(Quantity<Tag> a, Quantity<Tag> b) {
    return Unit<typename Tag::Difference>{}(a.in(Unit<Tag>{}) - b.in(Unit<Tag>{}));
}
template <PointTag Tag>
constexpr Quantity<Tag> operator+(Quantity<Tag> a, Quantity<typename Tag::Difference> b) {
    return Unit<Tag>{}(a.in(Unit<Tag>{}) + b.in(Unit<typename Tag::Difference>{}));
}
template <PointTag Tag>
constexpr Quantity<Tag> operator-(Quantity<Tag> a, Quantity<typename Tag::Difference> b) {
    return a + (-b);
}

}  // namespace tapbook
