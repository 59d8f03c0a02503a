// See local_fields.h.
#include "files/local_fields.h"

#include <algorithm>

namespace tapbook {
namespace {

using K = FieldKind;

constexpr Field stock[] = {
    {"cost", "cost_cents", K::decimal, 2, "", 0, 100000000, nullptr, false, "what one costs the shop"},
    {"lead_days", "lead_days", K::whole, 0, "days", 0, 3650, nullptr, false, "from order to delivery"},
    {"pack", "pack", K::whole, 0, "", 1, 10000, nullptr, false, "how many come in one pack"},
    {"on_hand", "on_hand", K::whole, 0, "", 0, 100000, nullptr, false, "how many lie on the shelf"},
    {"on_order", "on_order", K::whole, 0, "", 0, 100000, nullptr, false, "how many are ordered"},
    {"small", "small_kind", K::word, 0, "", 0, 0, spellings<SmallKind>, false,
     "what it is, of a part that stands in no parts file"},
    {"called", "small_name", K::name, 0, "", 0, 0, nullptr, false, "what the shop calls a small part"},
    {"per_job", "small_per_job", K::decimal, 3, "", 0, 1000000, nullptr, false,
     "how many of a small part one job takes; of cable: metres"},
    {"fuse_a", "small_fuse_amps", K::whole, 0, "A", 1, 1000, nullptr, false, "the rating of a main fuse"},
    {"cable_size", "small_cable_size", K::name, 0, "", 0, 0, nullptr, false,
     "the size of main cable: 4, 1/0, 25mm2, sae4"}};

constexpr Field shop[] = {{"name", "name", K::name, 0, "", 0, 0, nullptr, true, "what the shop is called"},
                          {"place", "place", K::name, 0, "", 0, 0, nullptr, false, "where it is"}};

}  // namespace

std::span<const Field> stock_fields() {
    return stock;
}
std::span<const Field> terms_fields() {
    const auto small = std::find_if(std::begin(stock), std::end(stock),
                                    [](const Field& field) { return field.stored.starts_with("small_"); });
    return {std::begin(stock), small};
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
    if (!terms.small) return values;
    values["small_kind"] = std::string(word_of(terms.small->kind));
    values["small_name"] = terms.small->name;
    put("small_per_job", terms.small->per_job_thousandths);
    put("small_fuse_amps", terms.small->fuse_amps);
    if (!terms.small->cable_size.empty()) values["small_cable_size"] = terms.small->cable_size;
    return values;
}

Terms terms_of(const Values& values) {
    Terms terms;
    if (const auto* cents = find_value<std::int64_t>(values, "cost_cents")) terms.cost_cents = *cents;
    terms.lead_days = whole_field(values, "lead_days");
    terms.pack = whole_field(values, "pack");
    terms.on_hand = whole_field(values, "on_hand");
    terms.on_order = whole_field(values, "on_order");
    if (const auto kind = word_field<SmallKind>(values, "small_kind")) {
        const auto size = parse_cable_size(text_field(values, "small_cable_size"));
        terms.small = SmallTerms{*kind, text_field(values, "small_name"), whole_field(values, "small_per_job"),
                                 whole_field(values, "small_fuse_amps"), size ? cable_size_text(*size) : ""};
    }
    return terms;
}

std::vector<FieldTrouble> trouble_of_stock(const Values& values) {
    std::vector<FieldTrouble> troubles;
    const auto need = [&](bool good, std::string_view key, std::string_view message, std::string_view hint) {
        if (!good) troubles.push_back({std::string(key), std::string(message), std::string(hint)});
    };
    const auto has = [&](std::string_view stored) { return values.contains(stored); };
    const auto kind = word_field<SmallKind>(values, "small_kind");
    if (!kind) {
        for (const Field& field : stock)
            if (field.stored != "small_kind" && field.stored.starts_with("small_"))
                need(!has(field.stored), field.name, "belongs to a small part",
                     "say what it is too: small = \"fuse\"; or leave this out");
        return troubles;
    }
    need(has("small_name"), "called", "is missing", "write what the shop calls it: called = \"fuse 2 A\"");
    need(has("small_fuse_amps") == (kind == SmallKind::main_fuse), "fuse_a",
         has("small_fuse_amps") ? "belongs to a main_fuse" : "is missing",
         has("small_fuse_amps") ? "leave it out" : "write the fuse's rating, so that the plans can ask for it");
    need(has("small_cable_size") == (kind == SmallKind::main_cable), "cable_size",
         has("small_cable_size") ? "belongs to main_cable" : "is missing",
         has("small_cable_size") ? "leave it out" : "write the cable's size, so that the plans can ask for it");
    need(!has("small_cable_size") || parse_cable_size(text_field(values, "small_cable_size")).has_value(), "cable_size",
         "is no cable size", "write 4, 1/0, 25mm2 or sae4");
    return troubles;
}

}  // namespace tapbook
