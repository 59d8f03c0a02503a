// A pack: what it holds, and what taking it in did or would do.
#include <fmt/format.h>

#include <map>

#include "report/exchange_report.h"
#include "report/grade_moves.h"
#include "report/json.h"

namespace tapbook {
namespace {

constexpr std::size_t most_shown = 20;  // lines of one list; JSON has all

std::string counted(int number, std::string_view one, std::string_view many) {
    return fmt::format("{} {}", number, number == 1 ? one : many);
}

std::string plural_of(const std::string& kind) {
    static const std::map<std::string, std::string, std::less<>> plurals = {
        {"alias", "aliases"}, {"other", "of later kinds"}, {"key", "changes of key"}};
    const auto found = plurals.find(kind);
    return found == plurals.end() ? kind + "s" : found->second;
}

void write_kinds(Json& json, std::span<const KindCount> kinds) {
    json.key("kinds").begin_list();
    for (const auto& kind : kinds)
        json.begin_object()
            .member("kind", kind.kind)
            .key("new")
            .whole(kind.fresh)
            .key("here")
            .whole(kind.here)
            .end_object();
    json.end_list();
}

std::string shop_words(const TakeInReport& report) {
    const std::string name = report.shop_name.empty()
                                 ? report.shop.substr(0, 8)
                                 : fmt::format("{} ({})", report.shop_name, report.shop.substr(0, 8));
    if (report.is_own_shop) return fmt::format("{}, this shop", name);
    if (report.is_blocked_shop) return fmt::format("{}, blocked: what it wrote is kept and left out", name);
    return fmt::format("{}, {}", name,
                       report.is_known_shop ? "known" : "not known: counts with the other unknown ones as one");
}

// The list, or its first lines and how many are left.
template <class List, class Line>
void first_of(Paper& paper, const List& list, Line line) {
    std::size_t shown = 0;
    for (const auto& item : list) {
        if (shown++ == most_shown) {
            paper.line(2, "", fmt::format("... and {} more", list.size() - most_shown));
            return;
        }
        line(item);
    }
}

void unvouched_lines(Paper& paper, const TakeInReport& report) {
    if (report.unvouched > 0)
        paper.line(2, "unvouched",
                   fmt::format("{} of other shops: until their own shop's pack comes they count with the unknown ones",
                               counted(report.unvouched, "note", "notes")));
    if (report.fresh_vouched > 0)
        paper.line(2, "vouched for now",
                   counted(report.fresh_vouched, "record that was here", "records that were here"));
    if (report.waiting > 0)
        paper.line(
            2, "kept unread",
            fmt::format("{} of a kind that a later version knows", counted(report.waiting, "record", "records")));
}

// A stranger's aliases would lend one car's grades to another.
void alias_line(Paper& paper, const TakeInReport& report) {
    if (report.is_known_shop || report.is_own_shop || report.is_blocked_shop) return;
    for (const auto& kind : report.kinds)
        if (kind.kind == word_of(RecordKind::alias) && kind.fresh > 0)
            paper.line(2, "no effect yet",
                       fmt::format("what it calls the same counts once you know it: `tapbook shops know {}`",
                                   report.shop.substr(0, 8)));
}

}  // namespace

PackContents contents_of(Incoming pack) {
    PackContents contents;
    std::map<std::string, int> kinds, cars;
    RecordTokens tokens;
    for (const auto& packed : pack.records) {
        tokens.read(packed.line);
        const RecordHead head = head_of(tokens);
        ++kinds[head.kind ? std::string(head.type) : "other"];
        if (path_parts(head.path).size() >= vehicle_depth) ++cars[std::string(path_head(head.path, vehicle_depth))];
        if (head.shop != pack.shop) ++contents.of_other_shops;
    }
    for (const auto& [kind, count] : kinds) contents.kinds.push_back({kind, count, 0});
    for (const auto& [path, count] : cars) contents.cars.push_back({path, count});
    contents.pack = std::move(pack);
    return contents;
}

std::string pack_text(const PackContents& contents, const Screen& screen) {
    Paper paper(screen);
    const Incoming& pack = contents.pack;
    paper.heading(fmt::format("{}: a whole pack, {}", pack.file,
                              counted(static_cast<int>(pack.records.size()), "record", "records")));
    if (pack.practice) paper.notice("From a practice catalog: what it says is invented.");
    paper.line(2, "shop", pack.shop);
    paper.line(2, "key", fmt::format("fingerprint {}", fingerprint(pack.key)));
    for (const auto& kind : contents.kinds)
        paper.line(2, fmt::format("{}", kind.fresh), kind.fresh == 1 ? kind.kind : plural_of(kind.kind));
    if (contents.of_other_shops > 0)
        paper.line(2, "passed on",
                   counted(contents.of_other_shops, "record of another shop", "records of other shops"));
    first_of(paper, contents.cars,
             [&](const PackContents::Car& car) { paper.line(2, car.path, counted(car.records, "record", "records")); });
    paper.line(0, "", "Nothing was taken in: `tapbook pack import` does that, with --dry-run as a preview.");
    return paper.take();
}

std::string pack_json(const PackContents& contents) {
    const Incoming& pack = contents.pack;
    Json json;
    json.begin_object().member("file", pack.file).member("id", to_hex(pack.id)).member("shop", pack.shop);
    json.member("fingerprint", fingerprint(pack.key)).key("practice").flag(pack.practice);
    json.key("records").whole(static_cast<std::int64_t>(pack.records.size()));
    json.key("of_other_shops").whole(contents.of_other_shops);
    json.key("kinds").begin_list();
    for (const auto& kind : contents.kinds)
        json.begin_object().member("kind", kind.kind).key("records").whole(kind.fresh).end_object();
    json.end_list().key("cars").begin_list();
    for (const auto& car : contents.cars)
        json.begin_object().member("code", car.path).key("records").whole(car.records).end_object();
    json.end_list().end_object();
    return json_answer("pack.show", json.take());
}

std::string take_in_text(const TakeInReport& report, const Screen& screen) {
    Paper paper(screen);
    paper.line(0, "", fmt::format("{}: from {}", report.file, shop_words(report)));
    if (report.was_here) {
        paper.line(0, "", "This pack was taken in before. Nothing was changed.");
        return paper.take();
    }
    for (const auto& kind : report.kinds)
        paper.line(2, plural_of(kind.kind), fmt::format("{} new, {} already here", kind.fresh, kind.here));
    unvouched_lines(paper, report);
    alias_line(paper, report);
    first_of(paper, report.moves, [&](const AddReport::GradeMove& move) {
        paper.line(2, "grade", fmt::format("{}: {} -> {}", move.path, word_of(move.before), word_of(move.after)));
    });
    if (report.is_too_large_to_grade)
        paper.line(2, "grades", "not compared: more than 1000 places. Every question is answered from the new notes.");
    first_of(paper, report.concurrent, [&](const ConcurrentEdit& edit) {
        paper.line(2, "edited apart",
                   fmt::format("{} {}: {} shops wrote at once; look at it and save it again", word_of(edit.kind),
                               edit.path, edit.edits));
    });
    paper.line(0, "", report.written ? "Saved." : "Dry run: nothing was written.");
    return paper.take();
}

std::string take_in_json(const TakeInReport& report) {
    Json json;
    write_take_in(json, report);
    return json_answer("pack.import", json.take());
}

void write_take_in(Json& json, const TakeInReport& report) {
    json.begin_object().member("file", report.file).key("written").flag(report.written);
    json.key("taken_in_before").flag(report.was_here).key("shop").begin_object().member("id", report.shop);
    json.member("name", report.shop_name.empty() ? std::nullopt : std::optional(report.shop_name));
    json.key("own").flag(report.is_own_shop).key("known").flag(report.is_known_shop);
    json.key("blocked").flag(report.is_blocked_shop).end_object();
    json.key("new").whole(report.fresh()).key("here").whole(report.here());
    write_kinds(json, report.kinds);
    json.key("unvouched_notes").whole(report.unvouched).key("vouched_now").whole(report.fresh_vouched);
    json.key("kept_unread").whole(report.waiting).key("grades_compared").flag(!report.is_too_large_to_grade);
    json.key("grades");
    write_moves(json, report.moves);
    json.key("edited_apart").begin_list();
    for (const auto& edit : report.concurrent)
        json.begin_object()
            .member("kind", word_of(edit.kind))
            .member("code", edit.path)
            .key("edits")
            .whole(edit.edits)
            .end_object();
    json.end_list().end_object();
}

std::string pack_export_text(const PackExport& packs, const Screen& screen) {
    Paper paper(screen);
    for (const auto& file : packs.files)
        paper.line(
            0, packs.written ? "wrote" : "would write",
            fmt::format("{}: {}, {} bytes, signed", file.name, counted(file.records, "record", "records"), file.bytes));
    paper.line(
        0, "",
        packs.written ? "Hand it over as you like: a changed byte is noticed." : "Dry run: nothing was written.");
    return paper.take();
}

std::string pack_export_json(const PackExport& packs) {
    Json json;
    json.begin_object().key("written").flag(packs.written).key("files").begin_list();
    for (const auto& file : packs.files)
        json.begin_object()
            .member("name", file.name)
            .key("records")
            .whole(file.records)
            .key("bytes")
            .whole(static_cast<std::int64_t>(file.bytes))
            .end_object();
    json.end_list().end_object();
    return json_answer("pack.export", json.take());
}

}  // namespace tapbook
