// What do the checks of single tables share? A place to put what they find, and the ids that were really there. For the
// files of this folder only.
#pragma once

#include "catalog/check_report.h"
#include "catalog/state.h"

namespace tapbook {

// Collects damage by kind, so that a thousand broken notes are one line with a count.
class Findings {
  public:
    explicit Findings(CheckReport& report) : report_(report) {}

    // One fact of the kind `what`; `example` is shown for the first few.
    void fact(const std::string& what, const std::string& example);
    // Damage to the file itself.
    void structure(const std::string& what, const std::string& example);

    CheckReport& report() { return report_; }

  private:
    Damage& of(const std::string& what);
    CheckReport& report_;
};

// What the checks of the rows need to know, and hand on to each other.
struct RowCheck {
    sqlite::Database& database;
    Findings& findings;
    bool practice = false;
    std::string own_shop;           // 32 hexadecimal digits
    Progress progress;              // by notes
    std::vector<RecordId> present;  // ids of all records that are there and are what was written
    std::vector<RecordId> broken;   // ids under which something lies that was not written so
};

void check_notes(RowCheck& check);
void check_entries(RowCheck& check);
void check_subjects(RowCheck& check);
void check_withdrawals(RowCheck& check);
void check_actions(RowCheck& check);  // REQUIRES: the records were checked before
void check_terms(RowCheck& check);
void check_stock(RowCheck& check);
void check_jobs(RowCheck& check);  // REQUIRES: the records were checked before
void check_shops(RowCheck& check);
void check_exchange(RowCheck& check);

// Are the record's line and id the ones it was stored under? Adds `id` to present or broken and tells the findings.
// `what` is "notes" or an entry's kind, `example` names the record.
void check_record(RowCheck& check, const Values& record, std::string_view id_bytes, const std::string& what,
                  const std::string& example);

// Every stored cell of `fields`, starting at `column`, is exactly what writing the values again gives; so is the rest
// after them. False tells the findings nothing.
bool cells_are_exact(const sqlite::Statement& rows, int column, std::span<const Field> fields,
                     std::span<const std::string_view> kept, CellStyle style, const Values& values);

// The values in the cells of `fields` from `column` on, and the rest after them. Throws RecordRefused when the rest is
// no record line.
Values values_in_cells(const sqlite::Statement& rows, int column, std::span<const Field> fields, CellStyle style);

// The cell as bytes or whole number; empty or absent for any other kind.
std::string bytes_of_cell(const sqlite::Value& cell);
std::string text_of_cell(const sqlite::Value& cell);
std::optional<std::int64_t> number_of_cell(const sqlite::Value& cell);

}  // namespace tapbook
