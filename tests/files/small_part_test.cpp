// What does a stock file say of parts that stand in no parts file? Read, refused and written back.
#include <catch2/catch.hpp>

#include "a_vehicle_file.h"
#include "files/batch_writer.h"

using namespace tapbook;

namespace {

std::string table_with(const std::string& lines) {
    return "[[stock]]\npart = \"one\"\n" + lines;
}

}  // namespace

TEST_CASE("a small part says what it is, what it is called, and how many a job takes") {
    const Batch batch = read_batch(
        table_with("small = \"main_cable\"\ncalled = \"main cable\"\nper_job = 5.25\ncable_size = \"1/0\"\non_hand = "
                   "12\npack = 25\n"),
        "stock.toml");
    REQUIRE(batch.terms.size() == 1);
    const Terms& terms = batch.terms[0].terms;
    CHECK(terms.on_hand == 12);
    CHECK(terms.pack == 25);
    REQUIRE(terms.small);
    CHECK(*terms.small == SmallTerms{SmallKind::main_cable, "main cable", 5250, {}, "1/0"});
}

TEST_CASE("what does not belong to a small part is refused with the way out") {
    const auto complaints = [](const std::string& lines) { return complaints_about(table_with(lines)); };
    using List = std::vector<std::string>;
    CHECK(complaints("small = \"fuse\"\ncalled = \"fuse 2 A\"\n").empty());
    CHECK(complaints("small = \"fuze\"\ncalled = \"fuse 2 A\"\n") ==
          List{"3:9 small does not know \"fuze\" | did you mean \"fuse\"?"});
    CHECK(complaints("small = \"fuse\"\n") == List{"1:1 called is missing | write what the shop calls it: called = "
                                                   "\"fuse 2 A\""});
    CHECK(complaints("per_job = 2\n") ==
          List{"3:11 per_job belongs to a small part | say what it is too: small = \"fuse\"; or leave this out"});
    CHECK(complaints("small = \"fuse\"\ncalled = \"x\"\nfuse_a = 30\n") ==
          List{"5:10 fuse_a belongs to a main_fuse | leave it out"});
    CHECK(complaints("small = \"main_fuse\"\ncalled = \"x\"\n") ==
          List{"1:1 fuse_a is missing | write the fuse's rating, so that the plans can ask for it"});
    CHECK(complaints("small = \"relay\"\ncalled = \"x\"\ncable_size = \"4\"\n") ==
          List{"5:14 cable_size belongs to main_cable | leave it out"});
    CHECK(complaints("small = \"main_cable\"\ncalled = \"x\"\n") ==
          List{"1:1 cable_size is missing | write the cable's size, so that the plans can ask for it"});
    CHECK(complaints("small = \"main_cable\"\ncalled = \"x\"\ncable_size = \"thick\"\n") ==
          List{"5:14 cable_size is no cable size | write 4, 1/0, 25mm2 or sae4"});
    CHECK(complaints("small = \"fuse\"\ncalled = \"x\"\nper_job = -1\n") ==
          List{"5:11 per_job is -1 | it must be 0 to 1000"});
    CHECK(complaints("small = \"fuse\"\ncalled = \"x\"\non_hand = -1\n") ==
          List{"5:11 on_hand is -1 | it must be 0 to 100000"});
}

TEST_CASE("a small part written as a file is read back as it was") {
    Extract extract;
    extract.batch.terms.push_back(
        {"main-fuse", {240, 6, 5, 3, {}, SmallTerms{SmallKind::main_fuse, "main fuse 60 A", 500, 60, ""}}, {}});
    extract.batch.terms.push_back({"lead", {{}, {}, {}, {}, {}, SmallTerms{SmallKind::lead, "lead", {}, {}, ""}}, {}});
    const WrittenFile file = write_batch(extract);
    const Batch read = read_batch(file.text, "again.toml");
    REQUIRE(read.terms.size() == 2);
    CHECK(read.terms[0].terms == extract.batch.terms[0].terms);
    CHECK(read.terms[1].terms == extract.batch.terms[1].terms);
}
