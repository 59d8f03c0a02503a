// See local_fields.h.
#include "files/local_fields.h"

namespace tapbook {
namespace {

using K = FieldKind;

constexpr Field stock[] = {
    {"cost", "cost_cents", K::decimal, 2, "", 0, 100000000, nullptr, false, "what one costs the shop"},
    {"lead_days", "lead_days", K::whole, 0, "days", 0, 3650, nullptr, false, "from order to delivery"},
    {"pack", "pack", K::whole, 0, "", 1, 10000, nullptr, false, "how many come in one pack"},
    {"on_hand", "on_hand", K::whole, 0, "", 0, 100000, nullptr, false, "how many lie on the shelf"},
    {"on_order", "on_order", K::whole, 0, "", 0, 100000, nullptr, false, "how many are ordered"}};

constexpr Field shop[] = {{"name", "name", K::name, 0, "", 0, 0, nullptr, true, "what the shop is called"},
                          {"place", "place", K::name, 0, "", 0, 0, nullptr, false, "where it is"}};

}  // namespace

std::span<const Field> stock_fields() {
    return stock;
}
std::span<const Field> shop_fields() {
    return shop;
}

Values values_of(const Terms& terms) {
    Values values;
    const auto put = [&](std::string_view key, const auto& number) {
        if (number) values[std::string(key)] = std::int64_t{*number};
    };
    put("cost_cents", terms.cost_cents);
    put("lead_days", terms.lead_days);
    put("pack", terms.pack);
    put("on_hand", terms.on_hand);
    put("on_order", terms.on_order);
    return values;
}

Terms terms_of(const Values& values) {
    Terms terms;
    if (const auto* cents = find_value<std::int64_t>(values, "cost_cents")) terms.cost_cents = *cents;
    terms.lead_days = whole_field(values, "lead_days");
    terms.pack = whole_field(values, "pack");
    terms.on_hand = whole_field(values, "on_hand");
    terms.on_order = whole_field(values, "on_order");
    return terms;
}

}  // namespace tapbook
