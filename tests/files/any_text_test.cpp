// Does a reader that meets any text at all either take it or refuse it with places inside the text? Vehicle files with
// a few bytes changed, taken out, doubled or put in; and deep nesting.
#include <rapidcheck.h>

#include <algorithm>

#include "a_vehicle_file.h"

using namespace tapbook;

namespace {

// The vehicle file with up to four small damages.
std::string damaged() {
    std::string text = vehicle_file;
    for (int left = *rc::gen::inRange(1, 5); left > 0; --left) {
        const auto at = *rc::gen::inRange<std::size_t>(0, text.size());
        const auto piece = *rc::gen::element<std::string>(
            "\"", "[", "]", "=", "\n", "{", "}", "'", "\\", "#", ",", ".", "-", "9", "e", " ", "日", "\"\"\"", "'''",
            "\xff", "\r", "inf", "0x1", "[[note]]\n", "2021-06-03", "\\u0000", "\\uD800", "true", "vehicle.");
        switch (*rc::gen::inRange(0, 3)) {
            case 0:
                text.replace(at, 1, piece);
                break;
            case 1:
                text.insert(at, piece);
                break;
            default:  // a number, not our enum
                text.erase(at, *rc::gen::inRange<std::size_t>(1, 20));
        }
        if (text.empty()) break;
    }
    return text;
}

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines(1);
    for (const char c : text) {
        if (c == '\n')
            lines.emplace_back();
        else
            lines.back().push_back(c);
    }
    return lines;
}

// Is the place the whole file, or a byte of one of its lines (or just behind it)?
bool is_inside(const SourcePlace& place, const std::vector<std::string>& lines) {
    if (place.line == 0) return place.column == 0;
    if (place.line < 1 || place.line > static_cast<int>(lines.size())) return false;
    const auto& line = lines[static_cast<std::size_t>(place.line) - 1];
    return place.column >= 1 && place.column <= static_cast<int>(line.size()) + 1 &&
           line.starts_with(place.line_text) && is_utf8(place.line_text);
}

}  // namespace

TEST_CASE("a damaged file is taken or refused, and every complaint has a message and a place inside the file") {
    REQUIRE(rc::check([] {
        const std::string text = damaged();
        try {
            const Batch batch = read_batch(text, "car.toml");
            for (const auto& entry : batch.entries) RC_ASSERT(!text_field(entry.values, "path").empty());
        } catch (const InputRefused& refused) {
            const auto lines = lines_of(text);
            RC_ASSERT(!refused.complaints().empty());
            RC_ASSERT(refused.complaints().size() <= 20);
            for (const auto& complaint : refused.complaints()) {
                RC_ASSERT(complaint.place.file == "car.toml");
                RC_ASSERT(is_inside(complaint.place, lines));
                RC_ASSERT(!complaint.message.empty());
                RC_ASSERT(is_utf8(complaint.message + complaint.hint));
            }
        }
    }));
}

TEST_CASE("every path of a file that is taken consists of slugs") {
    REQUIRE(rc::check([] {
        try {
            const Batch batch = read_batch(damaged(), "car.toml");
            const auto good = [](const Values& values) {
                const std::string path = text_field(values, "path");
                const auto parts = path_parts(path);
                return !parts.empty() && std::all_of(parts.begin(), parts.end(), is_slug);
            };
            for (const auto& entry : batch.entries) RC_ASSERT(good(entry.values));
            for (const auto& note : batch.notes) RC_ASSERT(good(note.values));
        } catch (const InputRefused&) {
            RC_SUCCEED("refused");
        }
    }));
}

TEST_CASE("deep nesting is refused, not followed to the end of the stack") {
    const auto keys = [](int levels) {
        std::string key = "a";
        for (int i = 1; i < levels; ++i) key += ".a";
        return key;
    };
    CHECK(complaints_about("x = " + std::string(100000, '[')).size() == 1);
    CHECK(complaints_about("\n" + keys(502) + " = 1\n") ==
          std::vector<std::string>{
              "2:1 holds more than 500 points outside quotes | break the line; a key has no points"});
    CHECK(complaints_about("[" + keys(100000) + "]\n").size() == 1);
    CHECK(complaints_about("x = {" + keys(100000) + " = 1}\n").size() == 1);
    // at the limit it is read, and has a complaint about its key only
    CHECK(complaints_about(keys(501) + " = 1\n").at(0).find("1:1 unknown table \"a\"") == 0);
    CHECK(complaints_about(with(vehicle_file, "ac_v = 7.5", "remarks = \"" + std::string(3000, '.') + "\"")).empty());
}
