// The bytes of each value behind a mark of its kind, so that no two different rows give one text.
#include "rules/tap_key.h"

#include <cstring>
#include <set>

namespace tapbook {
namespace {

template <class Number>
void append_bytes(char kind, const Number& number, std::string& key) {
    char bytes[sizeof number];
    std::memcpy(bytes, &number, sizeof number);
    key += kind;
    key.append(bytes, sizeof number);
}

template <class Quantity, class Unit>
void append_quantity(const std::optional<Quantity>& quantity, Unit unit, std::string& key) {
    if (quantity)
        append_bytes('q', quantity->in(unit), key);
    else
        key += '0';
}

void append_signal(const TapSignal& signal, std::string& key) {
    for (const auto* range : {&signal.clean, &signal.clipped})
        for (const auto* end : {&range->low, &range->likely, &range->high}) append_quantity(*end, rms_volts, key);
    for (const auto* end : {&signal.dc_each.low, &signal.dc_each.likely, &signal.dc_each.high, &signal.common_mode_high,
                            &signal.dc_difference_high})
        append_quantity(*end, dc_volts, key);
    key += signal.minus_is_driven ? '1' : '2';
}

}  // namespace

void append_value(const sqlite::Value& value, std::string& key) {
    if (const auto* whole = std::get_if<std::int64_t>(&value)) return append_bytes('i', *whole, key);
    if (const auto* real = std::get_if<double>(&value)) return append_bytes('r', *real, key);
    if (const auto* text = std::get_if<std::string>(&value)) {
        append_bytes('t', text->size(), key);
        key += *text;
        return;
    }
    key += '0';
}

TapKeys::TapKeys(const RuleBook& rules, bool has_amplifier) {
    std::set<const Column*> read;
    for (std::size_t i = 0; i < rules.rules().size(); ++i) {
        if (rules.rules()[i].off || !rules.is_about(i).empty()) continue;
        if (rules.needs_amplifier(i) && !has_amplifier) continue;
        for (const auto& name : rules.reads(i))
            if (const Column* column = find_column(name); column != nullptr && is_of_tap(column->relation))
                read.insert(column);
    }
    columns_.assign(read.begin(), read.end());
}

void TapKeys::append(const Candidate& candidate, std::string& key) const {
    for (const Column* column : columns_) append_value(column->get(candidate), key);
    append_signal(candidate.signal, key);
    append_quantity(candidate.tap.circuit.output.output_impedance, ohms, key);
    key += '|';
}

}  // namespace tapbook
