// How is a note or a reading written on a page? One table of boxes for each kind of place, read back by the same rules
// as the command line; what is wrong stands beside its box and nothing typed is lost.
#pragma once

#include <map>
#include <string>

#include "files/files.h"
#include "page/page_html.h"

namespace tapbook {

struct NoteForm {
    NoteKind kind = NoteKind::pair;
    std::map<std::string, std::string, std::less<>> typed;       // by the names people write: "ac_v"
    std::map<std::string, std::string, std::less<>> complaints;  // the same
};

// What was typed, by the boxes that this kind has.
NoteForm typed_note_form(NoteKind kind, const FormFields& form);

// The boxes filled with what a job has read before.
NoteForm note_form_of(NoteKind kind, const Values& values);

// The fields of the note; complaints in the form for what cannot be read.
Values read_note_form(NoteForm& form);

// The boxes: what is asked of everybody first, the rest behind "more".
void write_note_form(Html& html, const NoteForm& form);

// The text of a check of the whole note, put beside the box it is about.
void put_complaint(NoteForm& form, const EntryComplaint& complaint);

// Which kind of note is written at that place of the car. `path` is whole; the names of all systems are lent to cars
// whose system is not recorded. Absent when there is no such place.
std::optional<NoteKind> kind_at(const CarFacts& car, std::string_view path);

// The next place of the same system in the order of reaching them, of those not in `done`; absent at the end. Whole
// path.
std::optional<std::string> next_place(const CarFacts& car, std::string_view path, const std::vector<std::string>& done);

}  // namespace tapbook
