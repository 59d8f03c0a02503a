// Which commands are there, what do they take, and what runs them? One table feeds parsing, help, errors with the
// nearest word, the examples that the tests run, and later completion and the man page.
#pragma once

#include <concepts>
#include <filesystem>
#include <map>
#include <optional>
#include <set>
#include <span>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "report/report.h"

namespace tapbook {

// The program's exit codes; exit_meanings() says what each means.
enum class Exit {
    done = 0,
    answer_is_no = 1,
    wrong_usage = 2,
    input_refused = 3,
    not_permitted = 4,
    input_output = 5,
    damaged = 6,
    busy = 7,
    cancelled = 130
};

// The command line itself is wrong.
class UsageError : public std::runtime_error {
  public:
    explicit UsageError(const std::string& message, std::string hint = {})
        : std::runtime_error(message), hint_(std::move(hint)) {}
    const std::string& hint() const { return hint_; }

  private:
    std::string hint_;
};

// The question was understood and the answer is no: no such car, nothing fits.
class NoAnswer : public std::runtime_error {
  public:
    explicit NoAnswer(const std::string& message, std::string hint = {})
        : std::runtime_error(message), hint_(std::move(hint)) {}
    const std::string& hint() const { return hint_; }

  private:
    std::string hint_;
};

struct OptionSpec {
    std::string_view name;   // "--amp"
    std::string_view value;  // "AMPLIFIER"; empty for a yes/no option
    std::string_view help;
    WordList words = nullptr;  // when its value is one of an enum's words
};

// What was typed for one command. Values are text: numbers are read by number(), so "010" is ten and "13,8" is refused.
class Parsed {
  public:
    std::map<std::string, std::string, std::less<>> values;
    std::set<std::string, std::less<>> flags;
    std::vector<std::string> words;

    bool flag(std::string_view name) const { return flags.contains(name); }
    std::optional<std::string> text(std::string_view name) const;
    // The option's number times 10^digits, within [least, most] (in the same small unit). Throws UsageError.
    std::optional<std::int64_t> number(std::string_view name, int digits, std::int64_t least, std::int64_t most) const;
    std::int64_t need_number(std::string_view name, int digits, std::int64_t least, std::int64_t most) const;
    // The option's word out of an enum's table. Throws UsageError with the nearest.
    template <class Enum>
    std::optional<Enum> word(std::string_view name) const {
        const auto typed = text(name);
        if (!typed) return std::nullopt;
        if (const auto value = parse_word<Enum>(*typed)) return value;
        refuse_word(name, *typed, spellings<Enum>());
    }
    std::string joined_words() const;

  private:
    [[noreturn]] static void refuse_word(std::string_view name, std::string_view typed,
                                         const std::vector<std::string_view>& words);
};

// Where a command reads and writes. Output is collected and written once at the end.
struct Session {
    Screen screen;
    bool json = false;
    std::filesystem::path database;
    bool database_given = false;
    std::string today;
    std::string out;
    std::string remark;  // for standard error, beside the answer

    // The text or, with --json, the JSON.
    void answer(std::string text, std::string json_text) { out += json ? std::move(json_text) : std::move(text); }

    // The same from two functions, of which only the one that is wanted is called: a long answer is rendered once.
    template <std::invocable Text, std::invocable JsonText>
    void answer(Text text, JsonText json_text) {
        out += json ? json_text() : text();
    }
};

struct CommandSpec {
    std::string_view name;   // "find", "calc swing"
    std::string_view group;  // "": for the program's own scripts, in no list
    std::string_view takes;  // "VEHICLE", "[WORDS...]", ""
    int least_words, most_words;
    std::string_view summary;
    std::vector<OptionSpec> options;
    std::vector<std::string_view> examples;  // that need no car; the others come with the practice shop (examples_of)
    Exit (*run)(Session&, const Parsed&);
};

// All commands in the order of the help.
std::span<const CommandSpec> commands();
const CommandSpec* find_command(std::string_view name);
std::span<const OptionSpec> common_options();

// Examples of a command: its own, and those on the practice shop that travel with its data. Also "start" and "try".
std::vector<std::string> examples_of(std::string_view command);

// Every exit code in words, for the help and the manual page.
struct ExitMeaning {
    Exit exit;
    std::string_view words;
};
std::span<const ExitMeaning> exit_meanings();

std::string help_text();
std::string help_text(const CommandSpec& command);
std::string short_help_text();

// The commands' own functions.
Exit run_init(Session&, const Parsed&);
Exit run_demo(Session&, const Parsed&);
Exit run_add(Session&, const Parsed&);
Exit run_export(Session&, const Parsed&);
Exit run_check(Session&, const Parsed&);
Exit run_completion(Session&, const Parsed&);
Exit run_manual(Session&, const Parsed&);
Exit run_find(Session&, const Parsed&);
Exit run_taps(Session&, const Parsed&);
Exit run_advise(Session&, const Parsed&);
Exit run_meter(Session&, const Parsed&);
Exit run_gain(Session&, const Parsed&);
Exit run_note(Session&, const Parsed&);
Exit run_undo(Session&, const Parsed&);
Exit run_job_start(Session&, const Parsed&);
Exit run_job_came(Session&, const Parsed&);
Exit run_job_plan(Session&, const Parsed&);
Exit run_job_reading(Session&, const Parsed&);
Exit run_job_action(Session&, const Parsed&);
Exit run_job_left(Session&, const Parsed&);
Exit run_job_close(Session&, const Parsed&);
Exit run_job_open(Session&, const Parsed&);
Exit run_job_list(Session&, const Parsed&);
Exit run_job_show(Session&, const Parsed&);
Exit run_shops(Session&, const Parsed&);
Exit run_shops_key(Session&, const Parsed&);  // by run_shops
Exit run_exchange(Session&, const Parsed&);
Exit run_pack_export(Session&, const Parsed&);
Exit run_pack_show(Session&, const Parsed&);
Exit run_pack_import(Session&, const Parsed&);
Exit run_alias(Session&, const Parsed&);
Exit run_rules(Session&, const Parsed&);
Exit run_backup(Session&, const Parsed&);
Exit run_restore(Session&, const Parsed&);
Exit run_rebuild(Session&, const Parsed&);
Exit run_audit(Session&, const Parsed&);
Exit run_where(Session&, const Parsed&);
Exit run_serve(Session&, const Parsed&);
Exit run_feed(Session&, const Parsed&);
Exit run_sheet(Session&, const Parsed&);
Exit run_shelf(Session&, const Parsed&);
Exit run_shelf_count(Session&, const Parsed&);
Exit run_calc_swing(Session&, const Parsed&);
Exit run_calc_level(Session&, const Parsed&);
Exit run_calc_wire(Session&, const Parsed&);
Exit run_calc_fuse(Session&, const Parsed&);
Exit run_calc_holdup(Session&, const Parsed&);
Exit run_calc_corner(Session&, const Parsed&);
Exit run_calc_terminal(Session&, const Parsed&);
Exit run_calc_cavity(Session&, const Parsed&);
Exit run_calc_colour(Session&, const Parsed&);
Exit run_calc_vin(Session&, const Parsed&);

// The day: TAPBOOK_TODAY, else the clock's. Throws UsageError.
std::string today_text();

// Fills a Session from the environment: TAPBOOK_DB, TAPBOOK_TODAY, XDG_DATA_HOME, NO_COLOR, TERM, COLORTERM, COLUMNS.
Session session_from_environment();

// Where a question is answered from: the catalog; the practice shop when nobody named a place and there is no catalog
// yet (its answers say practice). Writing never falls back.
std::filesystem::path reading_place(const Session& session);

struct FileToWrite {
    std::filesystem::path place;
    std::string_view text;
};
enum class Existing { refuse, replace };

// Writes the files and makes the folders they need; all or, when one is there already, none. Throws CatalogError
// (already_there, not_permitted, input_output).
void write_files(std::span<const FileToWrite> files, Existing existing);

// The file's text, "-" for standard input. Throws CatalogError (not_permitted, input_output) or InputRefused for a
// folder.
std::string read_file(const std::string& name);

// The rules shipped with the program, overridden by those beside the catalog (NAME.rules.toml).
RuleBook rules_beside(const std::filesystem::path& database, RuleCases cases_of_shipped = RuleCases::read);

}  // namespace tapbook
