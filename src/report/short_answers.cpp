// find, meter, add and refused inputs, as text and JSON.
#include <fmt/format.h>

#include <algorithm>

#include "report/grade_moves.h"
#include "report/report.h"
#include "report/said.h"

namespace tapbook {
namespace {

std::string years(const VehicleName& car) {
    return car.first_year == car.last_year ? std::to_string(car.first_year)
                                           : fmt::format("{}-{}", car.first_year, car.last_year);
}

bool starts_character(char byte) {
    return (static_cast<unsigned char>(byte) & 0xc0) != 0x80;
}

// The part of a line that is shown around the byte `column` (from 0), and the columns before that byte in it.
struct Excerpt {
    std::string text;
    int before = 0;
};

Excerpt excerpt(std::string_view line, std::size_t column) {
    constexpr std::size_t most = 90, before_column = 60;
    std::size_t start = line.size() > most && column > before_column ? column - before_column : 0;
    while (start > 0 && !starts_character(line[start])) --start;
    std::size_t end = line.size() > most ? std::min(line.size(), start + most) : line.size();
    while (end > start && end < line.size() && !starts_character(line[end])) --end;
    const std::string before = (start > 0 ? "..." : "") + shown(line.substr(start, column - start));
    return {before + shown(line.substr(column, end - column)) + (end < line.size() ? "..." : ""), shown_width(before)};
}

}  // namespace

std::string find_text(std::span<const VehicleHit> hits, const Screen& screen, const std::optional<Vin>& vin) {
    Paper paper(screen);
    std::vector<std::string> names;
    int widest = 10;
    for (const auto& hit : hits) {
        names.push_back(shown(fmt::format("{} {} {}", hit.vehicle.make, hit.vehicle.model, hit.vehicle.body)));
        widest = std::max(widest, shown_width(names.back()));
    }
    for (std::size_t i = 0; i < hits.size(); ++i) {
        const auto& car = hits[i].vehicle;
        const int gap = std::max(0, std::min(widest, 44) - shown_width(names[i]));
        const std::string built = fmt::format("{:<9}", years(car)), path = shown(car.path);
        const std::string remark = hits[i].year_fits ? ""
                                   : vin             ? "  (not built in the VIN's model year)"
                                                     : "  (not in the year asked for)";
        const std::string all = fmt::format("{}{:{}}  {}  {}{}", names[i], "", gap, built, path, remark);
        if (shown_width(all) <= screen.width) {
            paper.raw(
                fmt::format("{}{:{}}  {}  {}{}", paper.strong(names[i]), "", gap, built, paper.quiet(path), remark));
        } else {
            paper.notice(names[i]);
            paper.line(2, "", years(car) + remark);
            paper.line(2, "", path);
        }
        if (!hits[i].also.empty()) paper.line(2, "", also_words(hits[i].also));
    }
    if (vin) paper.line(0, "VIN:", vin_remark(*vin));
    return paper.take();
}

std::string vin_remark(const Vin& vin) {
    const auto year = model_year(vin);
    const std::string built = year ? fmt::format("model year {}", *year) : std::string("its model year is not coded");
    switch (check_verdict(vin)) {
        case CheckVerdict::matches:
            return fmt::format("check digit matches; {}", built);
        case CheckVerdict::mismatch:
            return fmt::format(
                "check digit does not match: position 9 is {}, the others ask for {}: read the VIN again; {}",
                vin.at(9), check_digit(vin), built);
        case CheckVerdict::not_used:
            return fmt::format("no check digit in the maker's region; {}", built);
    }
    return built;
}

std::string find_json(std::span<const VehicleHit> hits, const std::optional<Vin>& vin) {
    Json json;
    json.begin_object().key("vehicles").begin_list();
    for (const auto& hit : hits) write_vehicle(json, hit.vehicle, hit.also);
    json.end_list();
    if (vin) {
        const CheckVerdict verdict = check_verdict(*vin);
        std::optional<bool> valid;
        if (verdict != CheckVerdict::not_used) valid = verdict == CheckVerdict::matches;
        json.key("vin").begin_object().member("valid", valid).member("check_digit", std::string(1, check_digit(*vin)));
        json.member("model_year", model_year(*vin)).end_object();
    }
    json.end_object();
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
    json.key("grades");
    write_moves(json, report.moves);
    json.end_object();
    return json_answer("add", json.take());
}

std::string complaints_text(std::span<const Complaint> complaints) {
    std::string out;
    for (const auto& complaint : complaints) {
        const auto& place = complaint.place;
        out += shown(place.file);
        if (place.line > 0) out += fmt::format(":{}", place.line);
        if (place.line > 0 && place.column > 0) out += fmt::format(":{}", place.column);
        out += ": ";
        out += shown(complaint.message);
        if (!complaint.hint.empty()) out += fmt::format("; {}", shown(complaint.hint));
        out += '\n';
        if (place.line_text.empty() || place.column < 1) continue;
        const std::string_view line = place.line_text;
        std::size_t column = std::min(static_cast<std::size_t>(place.column) - 1, line.size());
        while (column > 0 && column < line.size() && !starts_character(line[column])) --column;
        const Excerpt part = excerpt(line, column);
        out += fmt::format("    {}\n    {:{}}^\n", part.text, "", part.before);
    }
    return out;
}

}  // namespace tapbook
