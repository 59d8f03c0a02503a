// What is said about a text that is no TOML, no text or not in order as a whole? And do the places hold: order, number
// of complaints, and the column in bytes.
#include "a_vehicle_file.h"

using namespace tapbook;

namespace {

using Lines = std::vector<std::string>;

std::vector<Complaint> refused(const std::string& text) {
    try {
        read_batch(text, "car.toml");
    } catch (const InputRefused& error) {
        return error.complaints();
    }
    return {};
}

Complaint only_complaint(const std::string& text) {
    const auto complaints = refused(text);
    REQUIRE(complaints.size() == 1);
    return complaints.front();
}

constexpr const char* toml_hint = "check quotes, brackets and commas on this line and the one before";

}  // namespace

TEST_CASE("what is not TOML is refused at its line, whose text is shown") {
    struct Bad {
        std::string from, to;
        int line;
    };
    for (const auto& bad :
         {Bad{"\"sedan\"", "sedan", 4}, Bad{"\"sedan\"", "\"sedan", 4}, Bad{"body = ", "body ", 4},
          Bad{"\"sedan\"", "", 4}, Bad{"[\"battery_in_cabin\"]", "[\"a\" \"b\"]", 11}, Bad{"[vehicle]", "[vehicle", 1},
          Bad{"last_year", "first_year", 6}, Bad{"battery_ah = 70", "battery_ah = 13,8", 10}, Bad{"2012", "010", 5},
          Bad{"= 70", "= 7 0", 10}, Bad{"= 70", "= 0x", 10}, Bad{"= 70", "= 70 Ah", 10}, Bad{"[vehicle]", "[=]", 1},
          Bad{"[vehicle]", "[日本]", 1}, Bad{"[vehicle]", "[]", 1}, Bad{"2021-06-03", "2021-6-3", 34},
          Bad{"2021-06-03", "2021-02-30", 34}}) {
        INFO(bad.from << " -> " << bad.to);
        const auto complaint = only_complaint(with(vehicle_file, bad.from, bad.to));
        CHECK(complaint.place.file == "car.toml");
        CHECK(complaint.place.line == bad.line);
        CHECK(complaint.place.column >= 1);
        CHECK_THAT(complaint.message, Catch::StartsWith("not TOML: "));
        CHECK(complaint.hint == toml_hint);
        CHECK_FALSE(complaint.place.line_text.empty());
    }
}

TEST_CASE("numbers spelled in another base, with an exponent or with marks between are refused, not converted") {
    const Lines spelled = {"0x46", "0o106", "0b1000110", "7e1", "7_0", "inf", "nan"};
    for (const auto& number : spelled) {
        INFO(number);
        CHECK(complaint_when("battery_ah = 70", "battery_ah = " + number) ==
              "10:14 battery_ah " + number + " is not a number: write digits with at most one point, like 13.8");
    }
}

TEST_CASE("a file that is not text is refused as a whole") {
    const Lines whole = {"0:0 is not text (UTF-8) | give a TOML text file, as shown in the README"};
    CHECK(complaints_about(with(vehicle_file, "sedan",
                                "s\xe9"
                                "dan")) == whole);  // Latin-1
    CHECK(complaints_about(with(vehicle_file, "sedan", "\xed\xa0\x80")) == whole);
    CHECK(complaints_about(with(vehicle_file, "sedan", std::string("a\0b", 3))) == whole);
    CHECK(complaints_about(std::string("\0", 1)) == whole);
}

TEST_CASE("a byte order mark is refused with the way out") {
    CHECK(complaints_about("\xEF\xBB\xBF" + vehicle_file) ==
          Lines{"1:1 starts with a byte order mark | save it as plain UTF-8"});
}

TEST_CASE("an empty file holds nothing to add") {
    const Lines nothing = {"0:0 holds nothing to add | see the README for a vehicle file and a parts file"};
    for (const char* text : {"", "\n\n", "# only a comment\n", "   \t\n"}) CHECK(complaints_about(text) == nothing);
}

TEST_CASE("a file beyond 8 MiB is refused, one of 8 MiB is read") {
    const std::size_t most = 8 * 1024 * 1024;
    const std::string filled = vehicle_file + "#" + std::string(most - vehicle_file.size() - 2, 'x') + "\n";
    REQUIRE(filled.size() == most);
    CHECK(complaints_about(filled).empty());
    CHECK(complaints_about(filled + "\n") == Lines{"0:0 is larger than 8 MiB | split it: one vehicle per file"});
}

TEST_CASE("of a huge line only its start is shown, and that is whole characters") {
    const std::string huge =
        with(vehicle_file, "body = \"sedan\"", "body = 4 # " + std::string(300, 'x') + std::string(100000, 'y'));
    CHECK(only_complaint(huge).place.line_text.size() <= 240);
    for (int shift = 0; shift < 3; ++shift) {
        std::string wide = "body = 4 # " + std::string(static_cast<std::size_t>(shift), 'x');
        for (int i = 0; i < 300; ++i) wide += "日";
        const auto shown_text = only_complaint(with(vehicle_file, "body = \"sedan\"", wide)).place.line_text;
        CHECK(is_utf8(shown_text));
        CHECK(shown_text.size() > 230);
    }
}

TEST_CASE("the column counts bytes and stands at the value, also after characters of several bytes") {
    const std::string text = with(vehicle_file, "body = \"sedan\"\n", "") + R"(
[[system]]
code = "zwei"
name = "größer"
tells = ["Ångfall 日本 🔧", 7]
)";
    const auto complaint = refused(with(text, "model", "body = \"sedan\"\nmodel")).at(0);
    REQUIRE(complaint.place.column >= 1);
    const auto rest = complaint.place.line_text.substr(static_cast<std::size_t>(complaint.place.column) - 1);
    CHECK(rest == "7]");
    // tells = [" is 10 bytes, Å 2, "ngfall " 7, two characters of 3, blank, one of 4, `", ` 3: the 7 is byte 34
    CHECK(complaint.place.column == 10 + 2 + 7 + 6 + 1 + 4 + 3 + 1);
}

TEST_CASE("lines end with LF or CR LF, and the text shown ends before them") {
    std::string windows;
    for (const char c : with(vehicle_file, "body = \"sedan\"", "body = 4"))
        windows += c == '\n' ? std::string("\r\n") : std::string(1, c);
    const auto complaint = only_complaint(windows);
    CHECK(complaint.place.line == 4);
    CHECK(complaint.place.line_text == "body = 4");
}

TEST_CASE("complaints come in the order of the file, whatever found them") {
    std::string text = with(vehicle_file, "last_year = 2016", "last_year = 2011");  // found after the fields
    text = with(text, "battery_sensor = true", "battery_sensor = 1");
    text = with(text, "[[tap]]", "[[tapp]]");  // found first
    text = with(text, "watts = 18", "watts = 50");
    text = with(text, "\"metered\"", "\"guessed\"");
    std::vector<int> lines;
    for (const auto& complaint : refused(text)) lines.push_back(complaint.place.line);
    CHECK(lines == std::vector<int>{6, 9, 22, 26, 35});
}

TEST_CASE("more than twenty complaints are cut after the twentieth") {
    std::string text = vehicle_file;
    for (int i = 0; i < 25; ++i) text += "[[system]]\ncode = \"s" + std::to_string(i) + "\"\nname = 1\n";
    const auto complaints = refused(text);
    REQUIRE(complaints.size() == 20);
    CHECK(complaints.front().place.line == 41);
    CHECK(complaints.back().place.line == 41 + 19 * 3);
}

TEST_CASE("tables are written as a vehicle file has them") {
    CHECK(complaints_about("vehicle = 3\n") ==
          Lines{"1:11 vehicle must be written as [vehicle] | one vehicle per file"});
    CHECK(complaints_about("[[vehicle]]\nmake = \"x\"\n").size() == 1);
    CHECK(complaints_about("[[tap]]\nat = \"base/front-left\"\ncode = \"x\"\nplace = \"y\"\n")
              .at(0)
              .find("[[tap]] without a [vehicle] | a vehicle file starts with one [vehicle] table") !=
          std::string::npos);
    CHECK(complaints_about("converter = 3\n") == Lines{"1:13 converter must be written as [[converter]]"});
    CHECK(complaints_about("[converter]\ncode = \"x\"\n").at(0).find("converter must be written as [[converter]]") !=
          std::string::npos);
    CHECK(complaints_about("converter = [1]\n") == Lines{"1:14 converter must be written as [[converter]]"});
}

TEST_CASE("a place in the car is named by slugs joined with slashes and nothing else") {
    for (const std::string bad : {"base/front left", "Base/front-left", "base", "base/front-left/radio-plug",
                                  "base/front-left/", "/front-left", "base//front-left", "base/front-left "}) {
        INFO(bad);
        CHECK_THAT(complaint_when("at = \"base/front-left\"\n", "at = \"" + bad + "\"\n"),
                   Catch::EndsWith("is not system/circuit"));
    }
    for (const std::string bad :
         {"base/front-left", "base/", "base/front-left/radio-plug/", "/front-left/radio-plug", "base//radio-plug",
          "base/Front/x y", "unrecorded/front left/radio plug", "unrecorded/../x", "a/b/c/d"}) {
        INFO(bad);
        CHECK_THAT(complaint_when("at = \"base/front-left/radio-plug\"", "at = \"" + bad + "\""),
                   Catch::EndsWith("is neither system nor system/circuit/tap"));
    }
}

TEST_CASE("a code is a slug, and the system's code unrecorded is kept") {
    CHECK(complaint_when("code = \"radio-plug\"", "code = \"Radio Plug\"") ==
          "28:8 code \"Radio Plug\" must be small letters, digits and hyphens: write \"radio-plug\"");
    CHECK(
        complaints_about(with(vehicle_file, "code = \"base\"", "code = \"unrecorded\"")) ==
        Lines{"14:8 \"unrecorded\" is kept for notes on cars whose system was not written down | choose another code"});
}
