// See readings_reader.h.
#include "files/readings_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "files/table_reader.h"

namespace tapbook {
namespace {

// Day, turn, year and initials are the job's own.
std::vector<Field> readable_fields() {
    constexpr std::array<std::string_view, 4> of_the_job = {"date", "turn", "year", "initials"};
    std::vector<Field> fields;
    for (const auto& row : note_fields()) {
        if (std::find(of_the_job.begin(), of_the_job.end(), row.field.name) != of_the_job.end()) continue;
        fields.push_back(row.field);
        fields.back().required = false;
    }
    return fields;
}

class ReadingsReader {
  public:
    ReadingsFile read(const TomlValue& root) {
        for (std::size_t i = 0; i < root.members.size(); ++i) {
            const auto& [key, value] = root.members[i];
            if (key == "job" && value.type == TomlValue::Type::table)
                read_job(value);
            else if (key == "reading" && value.type == TomlValue::Type::list)
                for (const auto& table : value.items) read_reading(table);
            else
                complaints_.add(root.member_places[i], fmt::format("unknown table \"{}\"", shown(key)),
                                "a file of readings holds one [job] and [[reading]] tables");
        }
        if (file_.code.empty() && complaints_.empty())
            complaints_.add(root.place, "it does not say which job the readings belong to",
                            "write [job] and under it code = \"CODE\", as the sheet has it");
        complaints_.throw_if_any();
        return std::move(file_);
    }

  private:
    void read_job(const TomlValue& table) {
        constexpr std::string_view own[] = {"code"};
        read_fields(table, {}, own, complaints_);
        file_.code = read_text(table, "code", true, complaints_);
        file_.code_place = place_of(table, "code");
    }

    void read_reading(const TomlValue& table) {
        static const std::vector<Field> fields = readable_fields();
        constexpr std::string_view own[] = {"at"};
        FileReading reading{read_text(table, "at", true, complaints_), read_fields(table, fields, own, complaints_),
                            place_of(table, "at")};
        if (table.members.size() == (table.find("at") == nullptr ? 0U : 1U))
            complaints_.add(reading.place, fmt::format("{} has no reading", shown(reading.at)),
                            "leave the table out, or write what was read");
        for (const auto& other : file_.readings)
            if (other.at == reading.at)
                complaints_.add(reading.place, fmt::format("{} stands twice", shown(reading.at)),
                                fmt::format("the first is on line {}", other.place.line));
        file_.readings.push_back(std::move(reading));
    }

    Complaints complaints_;
    ReadingsFile file_;
};

}  // namespace

ReadingsFile read_readings(std::string_view text, const std::string& file) {
    const TomlValue root = read_toml(text, file);
    return ReadingsReader().read(root);
}

}  // namespace tapbook
