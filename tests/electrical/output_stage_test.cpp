// Whose minus may carry signal? The list of the path-to-chassis rule (the signal specification, section 4), drive by
// drive.
#include "electrical/output_stage.h"

#include <catch2/catch.hpp>

#include "electrical/electrical.h"

using namespace tapbook;

namespace {

bool driven(Drive drive, std::optional<bool> bridged = std::nullopt, Stage stage = Stage::unknown) {
    OutputStage output;
    output.drive = drive;
    output.split_is_bridged = bridged;
    output.common_stage = stage;
    return minus_is_driven(output);
}

}  // namespace

TEST_CASE("the minus is driven for bridges, differential lines and whatever is not known") {
    CHECK(driven(Drive::bridged));
    CHECK(driven(Drive::boosted_bridged));
    CHECK(driven(Drive::line_differential));
    CHECK(driven(Drive::unknown));
    CHECK(driven(Drive::boosted_split));
    CHECK(driven(Drive::boosted_split, true));
    CHECK(driven(Drive::common_return));
    CHECK(driven(Drive::common_return, {}, Stage::bridged));
    CHECK(minus_is_driven(OutputStage{}));
}

TEST_CASE("the minus is quiet where one conductor is ground") {
    CHECK_FALSE(driven(Drive::single_ended));
    CHECK_FALSE(driven(Drive::line_single_ended));
    CHECK_FALSE(driven(Drive::digital));
    CHECK_FALSE(driven(Drive::boosted_split, false));
    CHECK_FALSE(driven(Drive::common_return, {}, Stage::single_ended));
}

TEST_CASE("only the two line drives are line level") {
    for (const auto& named : words_of<Drive>()) {
        CHECK(is_line(named.value) == (named.word.substr(0, 4) == "line"));
        CHECK(is_boosted(named.value) == (named.word.substr(0, 7) == "boosted"));
    }
}
