// See note_options.h.
#include "cli/note_options.h"

#include <fmt/format.h>

#include <algorithm>

namespace tapbook {
namespace {

constexpr std::string_view method_field = "method", year_field = "year";

// Option and help of one field; the texts live as long as the program, since options are views.
struct FieldOption {
    const NoteField* field;
    std::string option, value, help;
};

std::string option_name(const Field& field) {
    std::string name(field.name);
    if (field.unit.starts_with("V") && name.ends_with("_v")) name.resize(name.size() - 2);
    std::replace(name.begin(), name.end(), '_', '-');
    return "--" + name;
}

std::string value_name(const Field& field) {
    switch (field.kind) {
        case FieldKind::name:
        case FieldKind::text:
        case FieldKind::slug:
            return "TEXT";
        case FieldKind::word:
            return "WORD";
        case FieldKind::colour:
            return "COLOUR";
        case FieldKind::whole:
        case FieldKind::decimal:
            return field.unit == "V RMS" ? "V" : field.unit.empty() ? "N" : std::string(field.unit);
        case FieldKind::flag:
            return "yes|no";
        case FieldKind::names:
        case FieldKind::word_list:
        case FieldKind::loads:
            return "WORD,...";
        case FieldKind::day:
            break;
    }
    return "DAY";
}

std::string help_of(const Field& field) {
    std::string help(field.meaning);
    if (field.words == nullptr) return help;
    std::string list;
    for (const auto word : field.words()) list += fmt::format("{}{}", list.empty() ? "" : ", ", word);
    return fmt::format("{}: {}", help, list);
}

const std::vector<FieldOption>& field_options() {
    static const std::vector<FieldOption> options = [] {
        std::vector<FieldOption> list;
        for (const auto& row : note_fields()) {
            if (row.field.name == method_field) continue;
            const bool is_year = row.field.name == year_field;
            list.push_back({&row, option_name(row.field), is_year ? "YEAR" : value_name(row.field),
                            help_of(row.field) + (is_year ? ", two or four digits" : "")});
        }
        return list;
    }();
    return options;
}

struct MethodFlag {
    Method method;
    std::string option, help;
};

std::string method_help(Method method) {
    switch (method) {
        case Method::scoped:
            return "how: tone sent, seen on a scope";
        case Method::metered:
            return "how: metered";
        case Method::seen:
            return "how: colour seen at the plug, not measured";
        case Method::copied:
            break;
    }
    return "how: from a sheet or memory; say which with --source";
}

const std::vector<MethodFlag>& method_flags() {
    static const std::vector<MethodFlag> flags = [] {
        std::vector<MethodFlag> list;
        for (const auto& named : words_of<Method>())
            list.push_back({named.value, fmt::format("--{}", named.word), method_help(named.value)});
        return list;
    }();
    return flags;
}

std::string method_list() {
    std::string list;
    for (const auto& flag : method_flags()) list += (list.empty() ? "" : ", ") + flag.option;
    return list;
}

}  // namespace

std::vector<OptionSpec> note_field_options() {
    std::vector<OptionSpec> options;
    for (const auto& flag : method_flags()) options.push_back({flag.option, "", flag.help});
    for (const auto& option : field_options()) options.push_back({option.option, option.value, option.help});
    return options;
}

std::vector<OptionSpec> note_options() {
    std::vector<OptionSpec> options = {{"--system", "CODE", "sound system, as listed by taps"}};
    const auto fields = note_field_options();
    options.insert(options.end(), fields.begin(), fields.end());
    options.insert(options.end(),
                   {{"--car", "PLATE", "plate or VIN: only a salted token is stored, so that cars can be told apart"},
                    {"--why", "", "show the sum behind the grades instead"},
                    {"--reason", "WORD", "of note withdraw: typo, wrong-car, metered-again, asked-to"},
                    {"--sure", "", "save it although a check asks \"are you sure\""},
                    {"--dry-run", "", "show what would happen and write nothing"}});
    return options;
}

std::vector<TypedField> typed_note_fields(const Parsed& parsed, MethodSaid method) {
    std::vector<TypedField> typed;
    for (const auto& flag : method_flags())
        if (parsed.flag(flag.option))
            typed.push_back({find_note_field(method_field), flag.option, std::string(word_of(flag.method))});
    if (typed.empty() && method == MethodSaid::once)
        throw UsageError(fmt::format("how was it found? Say one of {}", method_list()));
    if (typed.size() > 1)
        throw UsageError(fmt::format("{} and {}: say one of them", typed[0].option, typed[1].option),
                         "the stronger one, when both were done");
    for (const auto& option : field_options())
        if (const auto text = parsed.text(option.option); text && option.field->field.name != year_field) {
            if (!is_utf8(*text)) throw UsageError(fmt::format("{}: write it in plain characters", option.option));
            typed.push_back({option.field, option.option, *text});
        }
    return typed;
}

std::string note_option_of(std::string_view field) {
    if (field == method_field) return method_list();
    const auto* row = find_note_field(field);
    return row == nullptr ? fmt::format("--{}", field) : option_name(row->field);
}

}  // namespace tapbook
