// See parse.h. The only file that includes CLI11.
#include "cli/parse.h"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>

namespace tapbook {
namespace {

bool wants_help(const std::vector<std::string>& words) {
    for (const auto& word : words) {
        if (word == "--") return false;
        if (word == "-h" || word == "--help") return true;
    }
    return false;
}

// "swing, level, wire": the second words of the commands whose first word is `first`; empty when there are none.
std::string second_words(const std::string& first) {
    std::string list;
    for (const auto& command : commands())
        if (command.name.starts_with(first + " "))
            list += fmt::format("{}{}", list.empty() ? "" : ", ", command.name.substr(first.size() + 1));
    return list;
}

[[noreturn]] void refuse_command(const std::vector<std::string>& words) {
    if (words[0].starts_with("-"))
        throw UsageError(fmt::format("the command comes first, before \"{}\"", shown(words[0])),
                         "tapbook --help lists all commands");
    const auto family = second_words(words[0]);
    if (words.size() == 1 && !family.empty()) throw UsageError(fmt::format("{} needs to know what", words[0]), family);
    const std::string typed = words.size() > 1 && !family.empty() ? words[0] + " " + words[1] : words[0];
    std::vector<std::string_view> names;
    for (const auto& command : commands())
        if (!command.group.empty()) names.push_back(command.name);
    const auto near = nearest(typed, names);
    if (!near && !family.empty())
        throw UsageError(fmt::format("there is no command \"{}\"", shown(typed)), fmt::format("there are: {}", family));
    throw UsageError(fmt::format("there is no command \"{}\"", shown(typed)),
                     near ? fmt::format("did you mean `tapbook {}`?", *near) : "tapbook --help lists all commands");
}

// The command named by the first words that are no options: "calc swing" before "calc". A command that takes no words
// but has a family ("shelf", "shelf count") is not taken for a mistyped one of it.
const CommandSpec* command_of(std::vector<std::string>& words) {
    if (words.empty()) return nullptr;
    if (words.size() > 1)
        if (const auto* two = find_command(words[0] + " " + words[1])) {
            words.erase(words.begin(), words.begin() + 2);
            return two;
        }
    const auto* one = find_command(words[0]);
    if (one == nullptr) return nullptr;
    const bool has_second = words.size() > 1 && !words[1].empty() && !words[1].starts_with("-");
    if (has_second && one->most_words == 0 && !second_words(words[0]).empty()) refuse_command(words);
    words.erase(words.begin());
    return one;
}

[[noreturn]] void refuse_option(const CommandSpec& command, const std::string& typed) {
    std::vector<std::string_view> names;
    for (const auto& option : command.options) names.push_back(option.name);
    for (const auto& option : common_options()) names.push_back(option.name);
    const auto near = nearest(typed.substr(0, typed.find('=')), names);
    throw UsageError(fmt::format("{} has no option {}", command.name, shown(typed)),
                     near ? fmt::format("did you mean {}?", *near)
                          : fmt::format("tapbook {} --help lists its options", command.name));
}

std::string usage_of(const CommandSpec& command) {
    return fmt::format("usage: tapbook {}{}{} [OPTIONS]", command.name, command.takes.empty() ? "" : " ",
                       command.takes);
}

bool takes_value(const CommandSpec& command, std::string_view name) {
    const auto is_it = [&](const OptionSpec& option) { return option.name == name && !option.value.empty(); };
    return std::ranges::any_of(command.options, is_it) || std::ranges::any_of(common_options(), is_it);
}

bool is_option(const CommandSpec& command, std::string_view word) {
    const auto name = word.substr(0, word.find('='));
    const auto is_it = [&](const OptionSpec& option) { return option.name == name; };
    return std::ranges::any_of(command.options, is_it) || std::ranges::any_of(common_options(), is_it);
}

// Every option that takes a value has one, in the next word or behind "=", and no other has: nothing is taken from the
// option after it, and an empty text is no value. Each value is given once.
void check_values(const CommandSpec& command, const std::vector<std::string>& words) {
    std::set<std::string_view> seen;
    for (std::size_t i = 0; i < words.size() && words[i] != "--"; ++i) {
        const std::string_view word = words[i];
        const auto equals = word.find('=');
        const auto name = word.substr(0, equals);
        const bool joined = equals != std::string_view::npos;
        if (!takes_value(command, name)) {
            if (joined && is_option(command, name))
                throw UsageError(fmt::format("{}: {} takes no value", command.name, name), usage_of(command));
            continue;
        }
        if (!joined) ++i;
        const bool there =
            joined ? equals + 1 < word.size() : i < words.size() && !words[i].empty() && !is_option(command, words[i]);
        if (!there) throw UsageError(fmt::format("{} needs a value", name), usage_of(command));
        if (!seen.insert(name).second)
            throw UsageError(fmt::format("{} is given twice", name), "keep the one that is meant");
    }
}

void check_words(const CommandSpec& command, const Parsed& parsed) {
    const auto count = static_cast<int>(parsed.words.size());
    if (command.most_words == 1 && count == 1 && parsed.words[0].empty())
        throw UsageError(fmt::format("{} was given an empty word", command.name), usage_of(command));
    if (count < command.least_words)
        throw UsageError(fmt::format("{} needs {}", command.name, command.takes), usage_of(command));
    if (command.most_words >= 0 && count > command.most_words)
        throw UsageError(fmt::format("\"{}\" is one word too many for {}",
                                     shown(parsed.words[static_cast<std::size_t>(command.most_words)]), command.name),
                         usage_of(command));
}

}  // namespace

Invocation parse_command_line(const std::vector<std::string>& all_words) {
    std::vector<std::string> words = all_words;
    Invocation invocation;
    invocation.help = wants_help(words);
    invocation.version = !words.empty() && words[0] == "--version";
    if (words.empty() || invocation.version) return invocation;
    if (invocation.help) {
        invocation.command = command_of(words);
        return invocation;
    }
    invocation.command = command_of(words);
    if (invocation.command == nullptr) refuse_command(words);
    const CommandSpec& command = *invocation.command;
    check_values(command, words);

    CLI::App app;
    app.set_help_flag();
    app.allow_extras();
    std::map<std::string, std::string> values;
    std::map<std::string, bool> flags;
    const auto add = [&](const OptionSpec& option) {
        const std::string name(option.name);
        if (option.value.empty())
            app.add_flag(name, flags[name]);
        else
            app.add_option(name, values[name]);
    };
    for (const auto& option : command.options) add(option);
    for (const auto& option : common_options()) add(option);
    app.add_option("words", invocation.parsed.words);
    std::reverse(words.begin(), words.end());
    try {
        app.parse(words);
    } catch (const CLI::ArgumentMismatch& error) {
        const std::string_view what = error.what();
        throw UsageError(fmt::format("{} needs a value", what.substr(0, what.find(':'))), usage_of(command));
    } catch (const CLI::ParseError& error) {
        throw UsageError(fmt::format("{}: {}", command.name, error.what()), usage_of(command));
    }
    for (const auto& extra : app.remaining())
        if (extra.starts_with("-") && extra.size() > 1 && extra != "--") refuse_option(command, extra);
    for (const auto& [name, value] : values)
        if (app.count(name) > 0) invocation.parsed.values[name] = value;
    for (const auto& [name, on] : flags)
        if (on) invocation.parsed.flags.insert(name);
    check_words(command, invocation.parsed);
    return invocation;
}

}  // namespace tapbook
