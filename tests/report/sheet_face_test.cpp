// Does the drawing of a sheet mark the two cavities on the connector's face, and only where that is known?
#include <catch2/catch.hpp>

#include "report/drawing_layout.h"
#include "report/sheet_words.h"
#include "sheet_plans.h"

using namespace tapbook;

namespace {

// The plain sheet; its pair sits in cavities 3 and 4.
Sheet with_face(std::optional<int> cavities, std::optional<int> rows, std::optional<ViewFace> face) {
    Sheet sheet = sheets::plain();
    TapPoint& tap = sheet.plan.tap.tap.tap;
    tap.cavities = cavities;
    tap.cavity_rows = rows;
    tap.view_face = face;
    return sheet;
}

}  // namespace

TEST_CASE("plus and minus are marked on the face at the cavities of the notes") {
    const InstallDrawing drawing = drawing_of(with_face(16, 2, ViewFace::wire_side));
    CHECK(drawing.connector.rows == 2);
    CHECK(drawing.connector.columns == 8);
    CHECK(drawing.connector.seen_from == "wire side");
    CHECK(drawing.pairs.front().positive.place == DrawnCavity{1, 3});
    CHECK(drawing.pairs.front().negative.place == DrawnCavity{1, 4});
    int plus = 0, minus = 0, all = 0;
    for (const auto& cavity : lay_out(drawing, DrawingPage::a4).cavities) {
        ++all;
        if (cavity.mark == CavityMark::positive && cavity.place == DrawnCavity{1, 3}) ++plus;
        if (cavity.mark == CavityMark::negative && cavity.place == DrawnCavity{1, 4}) ++minus;
    }
    CHECK(all == 16);
    CHECK(plus == 1);
    CHECK(minus == 1);
}

TEST_CASE("no face is drawn without its side, its rows or its count") {
    for (const auto& sheet :
         {with_face(16, 2, {}), with_face(16, {}, ViewFace::wire_side), with_face({}, 2, ViewFace::wire_side)})
        CHECK(drawing_of(sheet).connector.rows == 0);
}

TEST_CASE("from which side the face is seen stands whole in the narrowest connector box") {
    for (const auto& name : words_of<ViewFace>()) {
        Sheet sheet = with_face(16, 2, name.value);
        const DrawingLayout layout = lay_out(drawing_of(sheet), DrawingPage::letter);
        bool whole = false;
        for (const auto& text : layout.texts) whole = whole || text.text == "view: " + spaced(name.word);
        CHECK(whole);
    }
}
