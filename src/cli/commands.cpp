// The table of commands: see command.h.
#include "cli/command.h"
#include "cli/command_tables.h"

namespace tapbook {
namespace {

const OptionSpec common[] = {
    {"--db", "FILE", "the catalog; else TAPBOOK_DB, else the place `tapbook where` prints"},
    {"--json", "", "one JSON object instead of text"},
    {"--help", "", "this help; -h works anywhere"},
};

}  // namespace

std::span<const CommandSpec> commands() {
    static const std::vector<CommandSpec> all = [] {
        std::vector<CommandSpec> list;
        for (const auto part : {car_commands(), job_commands(), office_commands(), sheet_commands(), feed_commands(),
                                share_commands(), shelf_commands(), look_after_commands(), bench_commands()})
            list.insert(list.end(), part.begin(), part.end());
        return list;
    }();
    return all;
}
std::span<const OptionSpec> common_options() {
    return std::span(common).first(2);
}

const CommandSpec* find_command(std::string_view name) {
    for (const auto& command : commands())
        if (command.name == name) return &command;
    return nullptr;
}

}  // namespace tapbook
