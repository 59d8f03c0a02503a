// The manual page tapbook(1) in man(7) macros, written from the command table: what help shows, in one document. The
// build runs `tapbook manual` and installs what it prints.
#include <fmt/format.h>

#include "cli/command.h"

namespace tapbook {
namespace {

struct Described {
    std::string_view name, words;
};

constexpr Described surroundings[] = {
    {"TAPBOOK_DB", "The catalog, when --db is not given."},
    {"TAPBOOK_TODAY", "The day that is written into records, like 2026-05-02, instead of the clock's."},
    {"XDG_DATA_HOME", "Where the catalog lies otherwise: tapbook/catalog.sqlite below it, or below ~/.local/share."},
    {"NO_COLOR",
     "When set and not empty: no colours. There are none either where the output is no terminal or TERM is "
     "dumb."},
    {"COLUMNS", "The width of the screen; text is never wider than 100 columns."},
};

constexpr Described files[] = {
    {"catalog.sqlite",
     "The catalog: one SQLite file with everything the shop knows and its signing key. Only its owner "
     "may read it."},
    {"practice.sqlite", "The practice shop that `tapbook demo` makes; everything in it is invented."},
    {"catalog.rules.toml", "The shop's own rules, beside its catalog; they replace shipped rules of the same id."},
};

// Text as troff takes it: no backslash, leading point or apostrophe, hyphen or grave accent means anything else.
std::string roff(std::string_view text) {
    std::string out;
    if (!text.empty() && (text.front() == '.' || text.front() == '\'')) out += "\\&";
    for (const char c : text) {
        if (c == '\\')
            out += "\\e";
        else if (c == '-')
            out += "\\-";
        else if (c == '\'')
            out += "\\(aq";
        else if (c == '`')
            out += "\\(ga";
        else if (c == '~')
            out += "\\(ti";
        else if (c == '^')
            out += "\\(ha";
        else
            out += c;
    }
    return out;
}

// A macro's argument: in quotes, which troff doubles inside.
std::string argument(std::string_view text) {
    std::string out = "\"";
    for (const char c : roff(text)) out += c == '"' ? std::string("\\(dq") : std::string(1, c);
    return out + "\"";
}

std::string sentence(std::string_view words) {
    std::string text(words);
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
    return roff(text) + (text.ends_with('.') ? "\n" : ".\n");
}

void describe(std::string& page, std::string_view section, std::span<const Described> list) {
    page += fmt::format(".SH {}\n", section);
    for (const auto& item : list) page += fmt::format(".TP\n.B {}\n{}", roff(item.name), sentence(item.words));
}

void options(std::string& page, std::span<const OptionSpec> list) {
    for (const auto& option : list) {
        page += option.value.empty() ? fmt::format(".TP\n.B {}\n", roff(option.name))
                                     : fmt::format(".TP\n.BI {} \" \" {}\n", roff(option.name), argument(option.value));
        page += sentence(option.help);
    }
}

void example(std::string& page, std::string_view line) {
    page += fmt::format(".PP\n.nf\n.RS\n{}\n.RE\n.fi\n", roff(line));
}

void command_section(std::string& page, const CommandSpec& command) {
    page += fmt::format(".SS {}\n", argument(fmt::format("tapbook {}{}{}", command.name,
                                                         command.takes.empty() ? "" : " ", command.takes)));
    page += sentence(command.summary);
    options(page, command.options);
    for (const auto& line : examples_of(command.name)) example(page, line);
}

std::string names(bool grouped) {
    std::string page;
    std::string_view group;
    for (const auto& command : commands()) {
        if (command.group.empty()) continue;
        if (grouped && command.group != group) page += fmt::format(".TP\n.B {}\n", roff(command.group));
        page += fmt::format("{}{}", group == command.group ? ", " : "", roff(command.name));
        const auto* next = &command + 1;
        group = command.group;
        const bool last = next == commands().data() + commands().size() || next->group != group;
        if (last) page += "\n";
    }
    return page;
}

std::string manual_page() {
    std::string page = fmt::format(".TH TAPBOOK 1 \"\" \"tapbook {}\" \"User commands\"\n", TAPBOOK_VERSION);
    page += ".SH NAME\ntapbook \\- where to tap a factory sound system, and which converter fits\n";
    page +=
        ".SH SYNOPSIS\n.B tapbook\n.I COMMAND\n[\\fIWORDS\\fR] [\\fIOPTIONS\\fR]\n.PP\n.B tapbook\n.I COMMAND\n"
        ".B \\-\\-help\n";
    page +=
        ".SH DESCRIPTION\nA customer keeps the factory radio and wants an amplifier. The signal is tapped from the "
        "speaker wiring and converted.\ntapbook says, before a panel comes off, where to tap, which two "
        "conductors, which one is positive and how sure that is,\nwhat on the way can hurt somebody, which "
        "converter fits this tap and by how much, and why the others do not.\nWhat was found goes back in as "
        "notes.\n.PP\nNumbers are written with a point, never a comma. What is left out is not known; it is never "
        "taken as zero.\n.PP\nThe commands, by where one stands:\n";
    page += names(true);
    page +=
        ".SH SAFETY\nNo grade removes \\(lqmeter before you cut\\(rq. The cautions that tapbook prints are the usual "
        "ones.\nThe vehicle's own instructions, local codes and licensed practice come first.\n";
    page += ".SH COMMANDS\n";
    for (const auto& command : commands())
        if (!command.group.empty()) command_section(page, command);
    page += ".SH OPTIONS OF EVERY COMMAND\n";
    options(page, common_options());
    page += fmt::format(".TP\n.BR {} \", \" {}\nHelp for that command, examples first.\n", roff("-h"), roff("--help"));
    page += ".SH EXIT STATUS\n";
    for (const auto& [exit, words] : exit_meanings())
        page += fmt::format(".TP\n.B {}\n{}", static_cast<int>(exit), sentence(words));
    describe(page, "ENVIRONMENT", surroundings);
    describe(page, "FILES", files);
    page += ".PP\n.B tapbook where\nprints where they are on this machine.\n";
    page += ".SH EXAMPLES\nOn the practice shop:\n";
    example(page, "tapbook demo");
    for (const auto& line : examples_of("try")) example(page, line);
    page += ".SH SEE ALSO\n.BR sqlite3 (1)\n";
    return page;
}

}  // namespace

Exit run_manual(Session& session, const Parsed&) {
    session.out += manual_page();
    return Exit::done;
}

}  // namespace tapbook
