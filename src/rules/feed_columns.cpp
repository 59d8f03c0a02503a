// The columns of the main cable: what it loses, what protects it, and what the charging system has left for the
// amplifier's average.
#include "rules/column_values.h"

namespace tapbook {
namespace {

using C = const Candidate&;
using sqlite::Value;

template <class Give>
Value of(C c, Give give) {
    if (c.feed == nullptr) return std::monostate{};
    return give(*c.feed);
}

using Facts = const FeedFacts&;

// At the likely return; absent when the amplifier finds no volts there.
const std::optional<FedAt>& likely(Facts facts) {
    return facts.report.answer.amplifiers.front().at.likely;
}

template <class Part>
std::optional<Part> spare_part(Facts facts, Part AmpsRange::*part) {
    if (!facts.report.spare) return std::nullopt;
    return facts.report.spare->reserve.*part;
}

std::optional<ReserveVerdict> reserve_verdict(Facts facts) {
    return facts.report.spare ? facts.report.spare->verdict : std::nullopt;
}

constexpr Column table[] = {
    {"feed", "length_m", "REAL", "m", "the length of the main cable",
     [](C c) { return of(c, [](Facts f) { return cell::real(std::optional(f.length), metres); }); }},
    {"feed", "size", "TEXT", "text", "the size of the main cable",
     [](C c) { return of(c, [](Facts f) { return cell::text(cable_size_text(f.report.feed.main.size)); }); }},
    {"feed", "area_mm2", "REAL", "mm2", "the cross-section of the main cable",
     [](C c) {
         return of(c, [](Facts f) {
             return cell::real(std::optional(cross_section(f.report.feed.main.size)), square_millimetres);
         });
     }},
    {"feed", "size_origin", "TEXT", "word", "how the cable's size came about",
     [](C c) { return of(c, [](Facts f) { return cell::word(std::optional(f.report.origin)); }); }},
    {"feed", "metal", "TEXT", "word", "the metal of the main cable",
     [](C c) { return of(c, [](Facts f) { return cell::word(std::optional(f.report.feed.conditions.metal)); }); }},
    {"feed", "insulation", "TEXT", "word", "the temperature the cable's insulation is rated for",
     [](C c) { return of(c, [](Facts f) { return cell::word(f.report.feed.conditions.insulation); }); }},
    {"feed", "place", "TEXT", "word", "where the cable passes",
     [](C c) { return of(c, [](Facts f) { return cell::word(std::optional(f.report.feed.conditions.place)); }); }},
    {"feed", "current_a", "REAL", "A", "the full current of the amplifier",
     [](C c) { return of(c, [](Facts f) { return cell::real(std::optional(f.report.answer.total), amps); }); }},
    {"feed", "finds_volts", "INTEGER", "yes/no", "whether the amplifier finds any steady volts at full power",
     [](C c) { return of(c, [](Facts f) { return cell::flag(likely(f).has_value()); }); }},
    {"feed", "volts", "REAL", "V d.c.", "the volts left at the amplifier at full power",
     [](C c) {
         return of(c,
                   [](Facts f) { return likely(f) ? cell::real(std::optional(likely(f)->volts), dc_volts) : Value{}; });
     }},
    {"feed", "drop_percent", "REAL", "%", "the share of the supply lost at full power",
     [](C c) {
         return of(c,
                   [](Facts f) { return likely(f) ? cell::real(std::optional(likely(f)->drop), percent) : Value{}; });
     }},
    {"feed", "grade", "TEXT", "word", "how good the cable is",
     [](C c) { return of(c, [](Facts f) { return cell::word(std::optional(f.report.answer.grade)); }); }},
    {"feed", "ampacity_a", "REAL", "A", "the current the cable may carry",
     [](C c) {
         return of(c, [](Facts f) {
             const auto& fuse = f.report.answer.main_fuse.fuse;
             return fuse ? cell::real(std::optional(fuse->cable.allowed), amps) : Value{};
         });
     }},
    {"feed", "fuse_a", "REAL", "A", "the fuse of the main cable",
     [](C c) {
         return of(c, [](Facts f) {
             const auto& fuse = f.report.answer.main_fuse.fuse;
             return fuse ? cell::real(fuse->rating, amps) : Value{};
         });
     }},
    {"feed", "fused", "INTEGER", "yes/no", "whether a listed fuse protects the cable and carries the load",
     [](C c) { return of(c, [](Facts f) { return cell::flag(f.report.answer.fused); }); }},
    {"feed", "may_blow", "INTEGER", "yes/no",
     "whether the fuse may blow when the amplifier is less efficient than usual",
     [](C c) { return of(c, [](Facts f) { return cell::flag(f.report.answer.main_fuse.may_blow); }); }},
    {"feed", "average_a", "REAL", "A", "the average current of music",
     [](C c) {
         return of(c, [](Facts f) {
             return f.report.average ? cell::real(std::optional(f.report.average->current), amps) : Value{};
         });
     }},
    {"feed", "reserve", "TEXT", "word", "whether the charging system carries the average at idle",
     [](C c) { return of(c, [](Facts f) { return cell::word(reserve_verdict(f)); }); }},
    {"feed", "reserve_low_a", "REAL", "A", "the least the charging system has left at idle",
     [](C c) { return of(c, [](Facts f) { return cell::real(spare_part(f, &AmpsRange::low), amps); }); }},
    {"feed", "reserve_high_a", "REAL", "A", "the most the charging system has left at idle",
     [](C c) { return of(c, [](Facts f) { return cell::real(spare_part(f, &AmpsRange::high), amps); }); }},
};

}  // namespace

std::span<const Column> feed_columns() {
    return table;
}

}  // namespace tapbook
