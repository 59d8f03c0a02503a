// Does each enumeration read back exactly the words it prints, and refuse everything else?
#include "electrical/named.h"

#include <catch2/catch.hpp>
#include <string>

#include "electrical/electrical.h"

using namespace tapbook;

TEMPLATE_TEST_CASE("every word is printed and read back by one table without gaps", "", Drive, Stage, RatingKind,
                   Adding, Topology, Reference, Negatives, OutputShield, ConverterTurnOn, AmplifierUse, AmplifierShield,
                   AmplifierClass, MissingCondition, SignalSource, Why, ReadsAs, MeterSentence, Metal) {
    CHECK(table_is_sound<TestType>());
    for (const auto& named : words_of<TestType>()) {
        CHECK(word_of(named.value) == named.word);
        CHECK(parse_word<TestType>(named.word) == named.value);
    }
}

// The words of the signal specification, sections 1 to 5, which files and JSON use.
TEST_CASE("drives are spelled as in the table of drives") {
    CHECK(parse_word<Drive>("bridged") == Drive::bridged);
    CHECK(parse_word<Drive>("boosted_split") == Drive::boosted_split);
    CHECK(parse_word<Drive>("line_differential") == Drive::line_differential);
    CHECK(parse_word<Drive>("common_return") == Drive::common_return);
    CHECK(parse_word<Topology>("active_speaker_level") == Topology::active_speaker_level);
    CHECK(parse_word<RatingKind>("at_10_percent") == RatingKind::at_10_percent);
    CHECK(parse_word<ConverterTurnOn>("half_supply") == ConverterTurnOn::half_supply);
    CHECK(parse_word<Metal>("cca") == Metal::copper_clad);
}

TEST_CASE("a word that is nearly right is refused") {
    const std::string bad[] = {
        "",      "Bridged",       " bridged",      "bridged ", "bridge",  "btl",          "half",        "boosted",
        "split", "boosted-split", "boosted split", "line",     "BRIDGED", "single-ended", "singleended", "unknown?",
        "0",     "digital\n"};
    for (const std::string& word : bad) CHECK_FALSE(parse_word<Drive>(word));
    CHECK_FALSE(parse_word<Drive>(std::string_view("bridged\0", 8)));
}

TEST_CASE("topologies are declared from the simplest to the most involved") {
    CHECK(Topology::direct < Topology::transformer);
    CHECK(Topology::transformer < Topology::resistive);
    CHECK(Topology::resistive < Topology::active_line_level);
    CHECK(Topology::active_line_level < Topology::active_speaker_level);
}
