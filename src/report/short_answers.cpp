// find, meter, add and refused inputs, as text and JSON.
#include <fmt/format.h>

#include <algorithm>

#include "report/report.h"

namespace tapbook {
namespace {

std::string years(const VehicleName& car) {
    return car.first_year == car.last_year ? std::to_string(car.first_year)
                                           : fmt::format("{}-{}", car.first_year, car.last_year);
}

std::string capped(std::string text, std::size_t width) {
    if (text.size() > width) text = text.substr(0, width - 3) + "...";
    return text;
}

}  // namespace

std::string find_text(std::span<const VehicleHit> hits, const Screen& screen) {
    Paper paper(screen);
    std::size_t width = 10;
    for (const auto& hit : hits)
        width = std::max(width, hit.vehicle.make.size() + hit.vehicle.model.size() + hit.vehicle.body.size() + 2);
    for (const auto& hit : hits) {
        const auto& car = hit.vehicle;
        const std::string name = fmt::format("{:<{}}", fmt::format("{} {} {}", car.make, car.model, car.body),
                                             std::min<std::size_t>(width, 44));
        paper.raw(fmt::format("{}  {:<9}  {}{}", paper.strong(shown(name)), years(car), paper.quiet(car.path),
                              hit.year_fits ? "" : "  (not in the year asked for)"));
    }
    return paper.take();
}

std::string find_json(std::span<const VehicleHit> hits) {
    Json json;
    json.begin_object().key("vehicles").begin_list();
    for (const auto& hit : hits) {
        const auto& car = hit.vehicle;
        json.begin_object()
            .member("code", car.path)
            .member("make", car.make)
            .member("model", car.model)
            .member("body", car.body);
        json.member("first_year", std::optional(car.first_year))
            .member("last_year", std::optional(car.last_year))
            .end_object();
    }
    json.end_list().end_object();
    return json_answer("find", json.take());
}

std::string meter_text(const MeterVerdict& verdict, const Screen& screen) {
    Paper paper(screen);
    std::string reads(word_of(verdict.reads_as));
    std::replace(reads.begin(), reads.end(), '_', ' ');
    paper.heading(fmt::format("reads as: {}{}", reads, verdict.stop ? "   STOP: do not connect anything" : ""));
    for (const auto sentence : verdict.says()) paper.line(2, "-", sentence);
    return paper.take();
}

std::string meter_json(const MeterVerdict& verdict) {
    Json json;
    json.begin_object()
        .member("reads_as", word_of(verdict.reads_as))
        .key("stop")
        .flag(verdict.stop)
        .key("says")
        .begin_list();
    for (const auto sentence : verdict.says()) json.text(sentence);
    json.end_list().member("rule", std::optional(verdict.rule)).end_object();
    return json_answer("meter", json.take());
}

std::string add_text(const AddReport& report, std::string_view file, const Screen& screen) {
    Paper paper(screen);
    for (const auto& text : report.lines) paper.line(2, "", text);
    for (const auto& move : report.moves)
        paper.line(2, "grade", fmt::format("{}: {} -> {}", move.path, word_of(move.before), word_of(move.after)));
    const auto part = [](int count, std::string_view one, std::string_view many) {
        return fmt::format("{} {}", count, count == 1 ? one : many);
    };
    paper.line(0, "",
               fmt::format("{}: {} new, {} changed, {} already here; {} new, {} already here{}", file,
                           part(report.entries_new, "entry", "entries"), report.entries_changed, report.entries_here,
                           part(report.notes_new, "note", "notes"), report.notes_here,
                           report.terms_changed + report.terms_here > 0
                               ? fmt::format("; terms of {} set", part(report.terms_changed, "part", "parts"))
                               : ""));
    paper.line(0, "", report.written ? "Saved." : "Dry run: nothing was written.");
    return paper.take();
}

std::string add_json(const AddReport& report, std::string_view file) {
    const auto count = [](int number) { return std::optional(number); };
    Json json;
    json.begin_object().member("file", file).key("written").flag(report.written);
    json.key("entries")
        .begin_object()
        .member("new", count(report.entries_new))
        .member("changed", count(report.entries_changed))
        .member("already_here", count(report.entries_here))
        .end_object();
    json.key("notes")
        .begin_object()
        .member("new", count(report.notes_new))
        .member("already_here", count(report.notes_here))
        .end_object();
    json.key("terms")
        .begin_object()
        .member("set", count(report.terms_changed))
        .member("already_here", count(report.terms_here))
        .end_object();
    json.key("grades").begin_list();
    for (const auto& move : report.moves)
        json.begin_object()
            .member("code", move.path)
            .member("before", word_of(move.before))
            .member("after", word_of(move.after))
            .end_object();
    json.end_list().end_object();
    return json_answer("add", json.take());
}

std::string complaints_text(std::span<const Complaint> complaints) {
    std::string out;
    for (const auto& complaint : complaints) {
        const auto& place = complaint.place;
        out += place.line > 0 ? fmt::format("{}:{}:{}: ", shown(place.file), place.line, place.column)
                              : fmt::format("{}: ", shown(place.file));
        out += shown(complaint.message);
        if (!complaint.hint.empty()) out += fmt::format("; {}", shown(complaint.hint));
        out += '\n';
        if (place.line_text.empty() || place.column < 1) continue;
        const auto column = static_cast<std::size_t>(place.column) - 1;
        const std::string_view text = place.line_text;
        const std::string before = shown(text.substr(0, std::min(column, text.size())));
        out += fmt::format("    {}\n", capped(shown(text), 400));
        if (column <= text.size()) out += fmt::format("    {:{}}^\n", "", shown_width(before));
    }
    return out;
}

}  // namespace tapbook
