// See job_reader.h.
#include "files/job_reader.h"

#include <fmt/format.h>

#include <algorithm>

#include "files/table_reader.h"

namespace tapbook {
namespace {

constexpr std::string_view every_rest = "rest";

std::string word_list(const std::vector<std::string_view>& words) {
    return fmt::format("{}", fmt::join(words, ", "));
}

// One item into `checks`; a complaint when it is none.
void read_item(std::string_view typed, const SourcePlace& place, JobChecks& checks, Complaints& complaints) {
    const auto equals = typed.find('=');
    const std::string_view name = typed.substr(0, equals);
    const std::string_view said = equals == std::string_view::npos ? std::string_view() : typed.substr(equals + 1);
    const auto colon = said.find(':');
    const auto answer = parse_word<CheckAnswer>(said.substr(0, colon));
    const std::string words(colon == std::string_view::npos ? std::string_view() : said.substr(colon + 1));
    auto items = spellings<CheckItem>();
    items.push_back(every_rest);
    const auto item = parse_word<CheckItem>(name);
    if (!item && name != every_rest) {
        const auto near = nearest(name, items);
        return complaints.add(
            place, fmt::format("the list has no item \"{}\"", shown(name)),
            near ? fmt::format("did you mean {}?", *near) : fmt::format("its items: {}", word_list(items)));
    }
    if (!answer)
        return complaints.add(
            place, fmt::format("{}: \"{}\" is no answer", name, shown(said)),
            fmt::format("write {}=ok, {}=bad:WORDS, or {}=none when this car has no such thing", name, name, name));
    if (hidden_character(words) || !is_utf8(words))
        return complaints.add(place, fmt::format("{}: the words hold a hidden character", name),
                              "write it in plain characters");
    if (*answer == CheckAnswer::bad && (words.empty() || !item))
        return complaints.add(place, fmt::format("{}: bad in what way?", name),
                              item ? fmt::format("write {}=bad:WORDS", name) : "name each bad item by itself");
    const bool twice = item ? std::any_of(checks.entries.begin(), checks.entries.end(),
                                          [&](const CheckEntry& entry) { return entry.item == *item; })
                            : checks.rest.has_value();
    if (twice) return complaints.add(place, fmt::format("{} is answered twice", name), "answer each item once");
    if (item)
        checks.entries.push_back({*item, *answer, nfc(words)});
    else
        checks.rest = *answer;
}

using K = FieldKind;
constexpr Field job_fields[] = {
    {"started", "started", K::day, 0, "", 0, 0, nullptr, true, "day it came"},
    {"closed", "closed", K::day, 0, "", 0, 0, nullptr, false, "day it left; without it the job is open"},
    {"year", "year", K::whole, 0, "", earliest_model_year, latest_model_year, nullptr, false, "the car's model year"},
    {"system", "system", K::slug, 0, "", 0, 0, nullptr, false, "its sound system's code"},
    {"customer", "customer", K::name, 0, "", 0, 0, nullptr, false, "the shop's own reference"},
    {"agreed", "agreed", K::name, 0, "", 0, 0, nullptr, false, "the customer's initials"},
    {"initials", "initials", K::name, 0, "", 0, 0, nullptr, false, "who works on it"},
    {"converter", "converter", K::slug, 0, "", 0, 0, nullptr, false, "planned converter, or direct"},
    {"amplifier", "amplifier", K::slug, 0, "", 0, 0, nullptr, false, "planned amplifier"},
    {"lowest_hz", "lowest_mhz", K::decimal, 3, "Hz", 1000, 20000000, nullptr, false, "lowest note played"},
    {"planned_minutes", "planned_minutes", K::whole, 0, "min", 0, 100000, nullptr, false, "to reach the tap"},
    {"minutes", "taken_minutes", K::whole, 0, "min", 0, 100000, nullptr, false, "what the job took"},
    {"outcome", "outcome", K::word, 0, "", 0, 0, spellings<JobOutcome>, false, "how it ended"},
    {"remarks", "remarks", K::text, 0, "", 0, 0, nullptr, false, "anything else"}};

class PastJobReader {
  public:
    explicit PastJobReader(Complaints& complaints) : complaints_(complaints) {}

    PastJob read(const TomlValue& table) {
        constexpr std::string_view own[] = {"code", "vehicle", "car", "tap", "came", "left", "actions", "reading"};
        PastJob past;
        past.place = place_of(table, "code");
        const Values values = read_fields(table, job_fields, own, complaints_);
        ShopJob& job = past.job;
        const std::string code = read_text(table, "code", true, complaints_);
        job.code = parse_job_code(code).value_or("");
        if (job.code.empty() && !code.empty())
            complaints_.add(past.place, fmt::format("\"{}\" is no job's code", shown(code)),
                            "six letters and digits, at least one letter, none of them 0, O, 1 or I");
        job.vehicle = read_text(table, "vehicle", true, complaints_);
        past.car_words = read_text(table, "car", false, complaints_);
        job.started = text_field(values, "started");
        job.closed = text_field(values, "closed");
        job.state = job.closed.empty() ? JobState::open : JobState::closed;
        job.year = whole_field(values, "year");
        job.system = values.contains("system") ? text_field(values, "system") : std::string(unrecorded_system);
        job.customer = text_field(values, "customer");
        job.agreed = text_field(values, "agreed");
        job.initials = text_field(values, "initials");
        job.plan.converter = text_field(values, "converter");
        job.plan.amplifier = text_field(values, "amplifier");
        if (const auto* lowest = find_value<std::int64_t>(values, "lowest_mhz")) job.plan.lowest_mhz = *lowest;
        job.plan.minutes = whole_field(values, "planned_minutes");
        job.taken_minutes = whole_field(values, "taken_minutes");
        job.outcome = word_field<JobOutcome>(values, "outcome");
        job.remarks = text_field(values, "remarks");
        if (const std::string tap = read_text(table, "tap", false, complaints_); !tap.empty())
            job.plan.tap = below_system(job, tap);
        read_lists(table, job);
        for (const auto& words : texts(table, "actions"))
            job.actions.push_back({static_cast<int>(job.actions.size()) + 1, words, job.started, job.closed});
        if (const auto* readings = table.find("reading"))
            for (const auto& reading : readings->items) read_reading(reading, job);
        std::sort(job.visits.begin(), job.visits.end(),
                  [](const JobVisit& a, const JobVisit& b) { return a.path < b.path; });
        return past;
    }

  private:
    static std::string below_system(const ShopJob& job, std::string_view place) {
        return path_join(path_join(job.vehicle, job.system), place);
    }

    std::vector<std::string> texts(const TomlValue& table, std::string_view key) {
        std::vector<std::string> list;
        const auto* value = table.find(key);
        if (value == nullptr) return list;
        for (const auto& item : value->items) list.push_back(item.text);
        if (value->type != TomlValue::Type::list)
            complaints_.add(value->place, fmt::format("{} must be a list of texts", key));
        return list;
    }

    void read_lists(const TomlValue& table, ShopJob& job) {
        for (const auto list : {CheckList::came, CheckList::left}) {
            const auto key = word_of(list);
            JobChecks checks;
            for (const auto& item : texts(table, key)) read_item(item, place_of(table, key), checks, complaints_);
            fill_checks(job, list, checks);
        }
    }

    void read_reading(const TomlValue& table, ShopJob& job) {
        constexpr std::string_view own[] = {"at"};
        const std::string at = read_text(table, "at", true, complaints_);
        const NoteKind kind = table.find("wire") != nullptr ? NoteKind::switched : NoteKind::pair;
        std::vector<Field> fields;
        for (const auto& row : note_fields()) {
            if (!applies_to(row, kind)) continue;
            fields.push_back(row.field);
            fields.back().required = false;
        }
        const int turn = static_cast<int>(job.visits.size()) + 1;
        job.visits.push_back({below_system(job, at), kind, job.started, turn,
                              read_fields(table, fields, own, complaints_), std::nullopt});
    }

    Complaints& complaints_;
};

}  // namespace

JobChecks read_checks(std::span<const std::string> typed, const SourcePlace& place) {
    Complaints complaints;
    JobChecks checks;
    for (const auto& item : typed) read_item(item, place, checks, complaints);
    complaints.throw_if_any();
    return checks;
}

std::vector<PastJob> read_past_jobs(std::string_view text, const std::string& file) {
    const TomlValue root = read_toml(text, file);
    Complaints complaints;
    std::vector<PastJob> jobs;
    for (std::size_t i = 0; i < root.members.size(); ++i) {
        const auto& [key, value] = root.members[i];
        if (key != "job" || value.type != TomlValue::Type::list) {
            complaints.add(root.member_places[i], fmt::format("unknown table \"{}\"", shown(key)),
                           "a file of jobs holds [[job]] tables only");
            continue;
        }
        for (const auto& table : value.items) jobs.push_back(PastJobReader(complaints).read(table));
    }
    complaints.throw_if_any();
    return jobs;
}

}  // namespace tapbook
