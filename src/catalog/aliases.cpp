// Which paths name the same thing? Two shops may call one car or one place differently. An alias says so of two paths,
// without direction; whatever is joined by aliases is one class, named by its smallest path.
#include <fmt/format.h>

#include "catalog/adding.h"
#include "catalog/alias_classes.h"

namespace tapbook {
namespace {

[[noreturn]] void refuse(const std::string& why, const std::string& way_out) {
    throw InputRefused({Complaint{{}, why, way_out}});
}

}  // namespace

Values alias_record(const AliasFields& fields, bool practice) {
    Values record = {{"type", std::string("alias")},
                     {"first", fields.first},
                     {"second", fields.second},
                     {"shop", fields.shop},
                     {"date", fields.date}};
    if (practice) record["practice"] = true;
    return record;
}

AliasReport Catalog::add_alias(const std::string& one, const std::string& other, const std::string& today,
                               bool dry_run) {
    if (one == other) refuse(fmt::format("{} twice", one), "name the two paths that are the same thing");
    if (path_parts(one).size() != path_parts(other).size())
        refuse("one of the two is a car, the other a place in one",
               "name two cars, two sound systems or two tap points by their whole paths");
    const auto work = [&] {
        AliasReport report{std::min(one, other), std::max(one, other), {}, false, false};
        const AliasClasses before = alias_classes(state_->database);
        report.was_here = before.name_of(one) == before.name_of(other);
        if (!report.was_here) {
            const Values record = alias_record({report.first, report.second, state_->own.id, today}, state_->practice);
            const RecordId id = record_id(record_line(record));
            auto insert = state_->database.prepare(
                "INSERT INTO alias (id, first, second, shop, vouched, date) VALUES (?1, ?2, ?3, ?4, 1, ?5)");
            insert.bind_all(sqlite::BlobView{as_bytes(id)}, report.first, report.second,
                            shop_number(state_->database, bytes_of_hex(state_->own.id)), today);
            insert.run();
        }
        report.name = alias_classes(state_->database).name_of(one);
        return report;
    };
    return in_one_transaction(*state_, work, [&](const AliasReport& report) { return !report.was_here && !dry_run; });
}

}  // namespace tapbook
