// What a browser sends, decoded once and exactly; spellings that slip past checks elsewhere are refused. The good
// examples are those of the WHATWG URL standard and RFC 3986.
#include "page/form.h"

#include <rapidcheck/catch.h>
#include <catch2/catch.hpp>

#include "page/address.h"
#include "report/report.h"

namespace tapbook {
namespace {

using Pairs = std::vector<std::pair<std::string, std::string>>;

Pairs pairs_of(std::string_view sent) {
    return std::get<FormFields>(read_form(sent)).all();
}

std::string trouble_of(std::string_view sent) {
    const auto read = read_form(sent);
    const auto* trouble = std::get_if<FormTrouble>(&read);
    return trouble == nullptr ? "none" : trouble->message;
}

// Texts of characters that a form may hold, of one to four bytes each.
rc::Gen<std::string> arbitrary_text() {
    const auto character = rc::gen::elementOf(std::vector<std::string>{
        "a", "Z", "0",  " ",  "+", "%", "&",      "=",      ";",      "/",      "\\",         "\"",  "'",
        "<", ">", "\n", "\t", "#", "?", "\u00e9", "\u03a9", "\u20ac", "\u2028", "\U0001F50C", "%41", "%zz"});
    return rc::gen::map(rc::gen::container<std::vector<std::string>>(character),
                        [](const std::vector<std::string>& all) {
                            std::string text;
                            for (const auto& one : all) text += one;
                            return text;
                        });
}

rc::Gen<std::string> arbitrary_name() {
    return rc::gen::map(arbitrary_text(), [](std::string text) {
        std::erase_if(text, [](char c) { return c == '\n' || c == '\t'; });
        return text.size() <= 90 ? text : std::string("n");
    });
}

}  // namespace

TEST_CASE("a form is decoded as browsers write it") {
    CHECK(pairs_of("") == Pairs{});
    CHECK(pairs_of("a=1&b=2") == Pairs{{"a", "1"}, {"b", "2"}});
    CHECK(pairs_of("a=1&a=2&a=") == Pairs{{"a", "1"}, {"a", "2"}, {"a", ""}});
    CHECK(pairs_of("a") == Pairs{{"a", ""}});
    CHECK(pairs_of("=x") == Pairs{{"", "x"}});
    CHECK(pairs_of("&&a=1&&") == Pairs{{"a", "1"}});
    CHECK(pairs_of("a=b=c") == Pairs{{"a", "b=c"}});
    CHECK(pairs_of("a=x+y%2Bz%20") == Pairs{{"a", "x y+z "}});
    CHECK(pairs_of("a=%26%3d%C3%A9") == Pairs{{"a", "&=\u00e9"}});
    CHECK(pairs_of("a=%2541") == Pairs{{"a", "%41"}});  // once, not twice
    CHECK(pairs_of("a=1%0D%0A2%0D3%0A4") == Pairs{{"a", "1\n2\n3\n4"}});
}

TEST_CASE("a form that is not one is refused with the number of its field") {
    CHECK(trouble_of("a=%") == "field 1 holds a % without two hexadecimal digits");
    CHECK(trouble_of("a=1&b=%4") == "field 2 holds a % without two hexadecimal digits");
    CHECK(trouble_of("a=%zz") == "field 1 holds a % without two hexadecimal digits");
    CHECK(trouble_of("%g1=1") == "field 1 holds a % without two hexadecimal digits");
    for (const auto* bytes : {"%FF", "%C3", "%C0%AF", "%ED%A0%80", "%F4%90%80%80", "%80"})
        CHECK(trouble_of(std::string("a=") + bytes) == "field 1 is not UTF-8");
    for (const auto* byte : {"%00", "%07", "%1B", "%7F", "%08"})
        CHECK(trouble_of(std::string("a=") + byte) == "field 1 holds a control character");
    CHECK(trouble_of("a%0Ab=1") == "field 1 holds a control character");
    CHECK(trouble_of("a%09b=1") == "field 1 holds a control character");
}

TEST_CASE("each limit of a form holds one below, at and one above it") {
    const auto fields = [](std::size_t count) {
        std::string sent;
        for (std::size_t at = 0; at < count; ++at) sent += "a=1&";
        return sent;
    };
    CHECK(pairs_of(fields(most_form_fields - 1)).size() == most_form_fields - 1);
    CHECK(pairs_of(fields(most_form_fields)).size() == most_form_fields);
    CHECK(trouble_of(fields(most_form_fields + 1)) == "over 500 fields");
    for (const std::size_t size : {longest_field_name - 1, longest_field_name})
        CHECK(pairs_of(std::string(size, 'a') + "=1").front().first.size() == size);
    CHECK(trouble_of(std::string(longest_field_name + 1, 'a') + "=1") == "field 1 has a name over 100 bytes");
    for (const std::size_t size : {longest_field_text - 1, longest_field_text})
        CHECK(pairs_of("a=" + std::string(size, 'b')).front().second.size() == size);
    CHECK(trouble_of("a=" + std::string(longest_field_text + 1, 'b')) == "field 1 is over 65536 bytes");
}

TEST_CASE("whatever fields are sent are read back, in their order") {
    rc::prop("read_form(form_text(x)) is x", [] {
        const auto all = *rc::gen::container<Pairs>(rc::gen::pair(arbitrary_name(), arbitrary_text()));
        RC_PRE(all.size() <= most_form_fields);
        const std::string sent = form_text(FormFields(all));
        RC_ASSERT(pairs_of(sent) == all);
        for (const char c : sent) RC_ASSERT(c > ' ' && c < '\x7f');
    });
}

TEST_CASE("any bytes at all are read or refused, and what is read holds no control character") {
    rc::prop("read_form never fails otherwise", [](const std::string& bytes) {
        const auto read = read_form(bytes);
        if (const auto* trouble = std::get_if<FormTrouble>(&read)) {
            RC_ASSERT(!trouble->message.empty());
            return;
        }
        for (const auto& [name, text] : std::get<FormFields>(read).all()) {
            RC_ASSERT(is_utf8(name) && is_utf8(text));
            for (const char c : text) RC_ASSERT(c == '\n' || c == '\t' || static_cast<unsigned char>(c) >= 0x20);
        }
    });
}

TEST_CASE("an address is a path of this server, decoded once, and its query") {
    const auto segments = [](std::string_view target) { return read_address(target).value().segments; };
    CHECK(segments("/").empty());
    CHECK(segments("/car/a%20b/c") == std::vector<std::string>{"car", "a b", "c"});
    CHECK(segments("/a+b") == std::vector<std::string>{"a+b"});
    CHECK(segments("/caf%C3%A9") == std::vector<std::string>{"caf\u00e9"});
    CHECK(segments("/%2541") == std::vector<std::string>{"%41"});
    CHECK(read_address("/a?b=c?d").value().query == "b=c?d");
    CHECK(read_address("/a?").value().query.empty());
    CHECK(read_address("/?words=x").value().query == "words=x");
}

TEST_CASE("an address that leaves the path, or reads in two ways, is none") {
    for (const auto* target : {"",
                               "*",
                               "a",
                               "http://localhost:8080/",
                               "//",
                               "//evil.example/x",
                               "/a//b",
                               "/a/",
                               "/.",
                               "/..",
                               "/../etc/passwd",
                               "/a/../b",
                               "/a/./b",
                               "/%2e%2e/etc/passwd",
                               "/%2E%2e",
                               "/a/%2e",
                               "/..%2fetc",
                               "/a%2Fb",
                               "/a%5Cb",
                               "/a\\b",
                               "/..%5c..%5cwin.ini",
                               "/%00",
                               "/a%00.css",
                               "/a%0d%0aX:1",
                               "/a%7f",
                               "/%",
                               "/%4",
                               "/%zz",
                               "/%c0%ae%c0%ae/x",
                               "/%ff",
                               "/a b",
                               "/a\tb",
                               "/caf\xc3\xa9",
                               "/a#b",
                               "/a\r\nb",
                               "?a=1",
                               "/a/?b"}) {
        INFO(target);
        CHECK_FALSE(read_address(target).has_value());
    }
}

TEST_CASE("any text is one segment of an address, and comes back") {
    rc::prop("read_address(encoded(x)) is x", [] {
        std::string text = *arbitrary_text();
        std::erase_if(text, [](char c) { return c == '/' || c == '\\' || c == '\n' || c == '\t'; });
        RC_PRE(!text.empty() && text != "." && text != "..");
        const std::string target = "/x/" + encoded(text) + "?y=" + encoded(text);
        const auto address = read_address(target);
        RC_ASSERT(address.has_value());
        RC_ASSERT(address->segments == (std::vector<std::string>{"x", text}));
        RC_ASSERT(pairs_of(address->query).front().second == text);
    });
}

}  // namespace tapbook
