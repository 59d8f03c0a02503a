// Is this output still the one that somebody has read and accepted? Approved texts lie in tests/approved/NAME.txt and
// change only through tools/approve.py.
#pragma once

#include <catch2/catch.hpp>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <optional>
#include <string>

namespace tapbook::approval {

inline std::optional<std::string> content(const std::filesystem::path& file) {
    std::ifstream stream(file, std::ios::binary);
    if (!stream) return std::nullopt;
    return std::string(std::istreambuf_iterator<char>(stream), {});
}

// Where received texts go: the folder named by TAPBOOK_RECEIVED, else the current one.
inline std::filesystem::path received_folder() {
    const char* named = std::getenv("TAPBOOK_RECEIVED");
    return named == nullptr || *named == '\0' ? std::filesystem::current_path() : std::filesystem::path(named);
}

// Fails, and leaves NAME.received.txt behind, when `text` is not byte for byte tests/approved/NAME.txt.
inline void approve(const std::string& name, const std::string& text) {
    const auto approved = content(std::filesystem::path(TAPBOOK_SOURCE) / "tests" / "approved" / (name + ".txt"));
    const auto received = received_folder() / (name + ".received.txt");
    if (approved == text) {
        std::filesystem::remove(received);
        SUCCEED(name);
        return;
    }
    std::ofstream(received, std::ios::binary) << text;
    INFO(name << (approved ? " differs from its approved text" : " has no approved text yet"));
    INFO("received: " << received.string());
    INFO("read it with tools/approve.py --show BUILD and accept it with tools/approve.py BUILD");
    const bool is_as_approved = approved == text;
    CHECK(is_as_approved);  // not REQUIRE: one run shall leave all received texts behind
}

}  // namespace tapbook::approval
