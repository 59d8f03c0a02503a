// The help: examples first, then options, all from the command table.
#include <fmt/format.h>

#include <algorithm>

#include "cli/command.h"
#include "embedded.h"

namespace tapbook {
namespace {

constexpr ExitMeaning meanings[] = {{Exit::done, "done"},
                                    {Exit::answer_is_no, "the answer is no"},
                                    {Exit::wrong_usage, "wrong usage"},
                                    {Exit::input_refused, "input refused and nothing changed"},
                                    {Exit::not_permitted, "needs permission"},
                                    {Exit::input_output, "disk or I/O"},
                                    {Exit::damaged, "damage found"},
                                    {Exit::busy, "busy"},
                                    {Exit::cancelled, "cancelled"}};

std::string exit_codes() {
    std::string text = "Exit codes: ";
    for (const auto& [exit, words] : meanings) {
        if (exit != Exit::done) text += exit == Exit::input_output ? ",\n" : ", ";
        text += fmt::format("{} {}", static_cast<int>(exit), words);
    }
    return text + ".\n";
}

std::string option_words(const OptionSpec& option) {
    return fmt::format("{}{}{}", option.name, option.value.empty() ? "" : " ", option.value);
}

void append_options(std::string& text, std::span<const OptionSpec> options) {
    for (const auto& option : options) text += fmt::format("  {:<22} {}\n", option_words(option), option.help);
}

}  // namespace

std::span<const ExitMeaning> exit_meanings() {
    return meanings;
}

std::vector<std::string> examples_of(std::string_view command) {
    std::vector<std::string> examples;
    if (const auto* spec = find_command(command)) examples.assign(spec->examples.begin(), spec->examples.end());
    const std::string wanted = fmt::format("{}: ", command);
    for (const auto& text : embedded_texts()) {
        if (text.name != "data/examples.txt") continue;
        for (std::string_view rest = text.text; !rest.empty();) {
            const auto end = std::min(rest.find('\n'), rest.size());
            const std::string_view line = rest.substr(0, end);
            if (line.starts_with(wanted)) examples.emplace_back(line.substr(wanted.size()));
            rest.remove_prefix(std::min(end + 1, rest.size()));
        }
    }
    return examples;
}

std::string short_help_text() {
    std::string text = "tapbook: where to tap a factory sound system, which converter fits, and how sure that is.\n\n";
    for (const auto& example : examples_of("start")) text += fmt::format("  {}\n", example);
    return text + "\ntapbook --help lists all commands.\n";
}

std::string help_text() {
    std::string text = short_help_text() + "\n";
    std::string_view group;
    for (const auto& command : commands()) {
        if (command.group.empty()) continue;
        if (command.group != group) text += fmt::format("{}{}\n", group.empty() ? "" : "\n", command.group);
        group = command.group;
        text += fmt::format("  {:<13} {}\n", command.name, command.summary);
    }
    text += "\nWith every command\n";
    append_options(text, common_options());
    text += "  -h                     help for that command\n";
    return text + "\n" + exit_codes();
}

std::string help_text(const CommandSpec& command) {
    std::string text = fmt::format("tapbook {}: {}\n\n", command.name, command.summary);
    for (const auto& example : examples_of(command.name)) text += fmt::format("  {}\n", example);
    text += fmt::format("\nusage: tapbook {}{}{} [OPTIONS]\n", command.name, command.takes.empty() ? "" : " ",
                        command.takes);
    append_options(text, command.options);
    append_options(text, common_options());
    return text;
}

}  // namespace tapbook
