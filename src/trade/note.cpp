// See note.h.
#include "trade/note.h"

#include "trade/fields_read.h"
#include "trade/note_from.h"

namespace tapbook {
namespace {

// A record's fields as note_from() asks for them.
class RecordFields {
  public:
    explicit RecordFields(const Values& values) : values_(values) {}

    template <FieldName name>
    std::string text() const {
        return text_field(values_, name.view());
    }
    template <FieldName name>
    std::optional<int> whole() const {
        return whole_field(values_, name.view());
    }
    template <FieldName name>
    std::optional<bool> flag() const {
        return flag_field(values_, name.view());
    }
    template <FieldName name, class Enum>
    std::optional<Enum> word() const {
        return word_field<Enum>(values_, name.view());
    }
    template <FieldName name>
    std::optional<WireColour> colour() const {
        return wire_colour_from_code(text_field(values_, name.view()));
    }
    template <FieldName name, class Unit>
    auto quantity(Unit unit) const {
        return quantity_field(values_, name.view(), unit);
    }
    template <FieldName name>
    std::string day() const {
        return text<name>();
    }

  private:
    const Values& values_;
};

bool is_live(DcVolts volts) {
    return volts >= dc_volts(6);
}

}  // namespace

Note note_of(const Values& values, const RecordId& id) {
    Note note = note_from(RecordFields(values));
    note.id = id;
    note.kind = word_field<NoteKind>(values, "kind").value_or(NoteKind::pair);
    note.path = text_field(values, "path");
    note.shop = text_field(values, "shop");
    note.car = text_field(values, "car");
    return note;
}

std::optional<SwitchedClass> switched_class(const Note& note) {
    if (!note.key_off || !note.accessory || !note.run) return std::nullopt;
    const bool off = is_live(*note.key_off), accessory = is_live(*note.accessory), run = is_live(*note.run);
    if (off) return accessory && run ? SwitchedClass::constant : SwitchedClass::other;
    if (accessory) return run ? SwitchedClass::accessory : SwitchedClass::other;
    if (!run) return SwitchedClass::other;
    return note.crank && is_live(*note.crank) ? SwitchedClass::with_crank : SwitchedClass::ignition;
}

}  // namespace tapbook
