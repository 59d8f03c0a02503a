// Are records of kinds that an earlier version did not know read once a version knows them? What such a version would
// have left behind is made here: the note lies among the records kept unread instead of in the ledger.
#include "exchange/shop_fixture.h"

using namespace tapbook;

TEST_CASE("what an earlier version kept unread is read as soon as a version knows its kind") {
    const Places places;
    Catalog one = places.shop("Bench Three"), other = places.shop("Quill Audio");
    one.add(one_car(), false, today);
    add_note(one, "WH", "AB 1");
    take(other, pack_of(one));
    const Grade before = grade_at(other);
    const auto records = records_of(other);
    const auto line = *std::find_if(records.begin(), records.end(), [](const std::string& record) {
        return text_field(read_record_line(record), "type") == "note";
    });
    {  // as a version that knew no notes would have left it
        sqlite::Database database(other.file(), sqlite::Open::read_write);
        database.execute("DELETE FROM note; DELETE FROM subject");
        auto keep = database.prepare(
            "INSERT INTO other_record (id, type, shop, path, vouched, line) VALUES (?1, 'note', ?2, ?3, 1, ?4)");
        const RecordId id = record_id(line);
        const std::string shop = [&] {
            std::string bytes(16, '\0');
            RecordId read{};
            from_hex(one.own_shop().id, read);
            std::copy(read.begin(), read.end(), bytes.begin());
            return bytes;
        }();
        keep.bind_all(sqlite::BlobView{std::string_view(reinterpret_cast<const char*>(id.data()), id.size())},
                      sqlite::BlobView{shop}, tap_path, line);
        keep.run();
    }
    CHECK(grade_at(other) == Grade::blank);
    CHECK(records_of(other) == records);
    CHECK(other.check(CheckDepth::full).sound());
    const RebuildReport preview = other.rebuild(true);
    CHECK(preview.read_now == 1);
    CHECK(grade_at(other) == Grade::blank);
    CHECK(other.rebuild(false).read_now == 1);
    CHECK(grade_at(other) == before);
    CHECK(records_of(other) == records);
    CHECK(count_in(other, "other_record") == 0);
    CHECK(other.check(CheckDepth::full).sound());
    CHECK(other.rebuild(false).read_now == 0);
}
