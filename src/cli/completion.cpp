// See completion.h.
#include "cli/completion.h"

#include <fmt/format.h>

#include <algorithm>

namespace tapbook {
namespace {

// What was typed, taken apart without complaint: a line that is being typed is seldom whole.
struct Line {
    const CommandSpec* command = nullptr;
    std::vector<std::string> words;       // after the command's name, without options and their values
    std::vector<std::string> options;     // given so far
    const OptionSpec* waiting = nullptr;  // the option whose value comes next
    std::optional<std::string> database, system;
};

const OptionSpec* option_of(const CommandSpec* command, std::string_view name) {
    const auto in = [&](std::span<const OptionSpec> options) -> const OptionSpec* {
        const auto found =
            std::find_if(options.begin(), options.end(), [&](const OptionSpec& option) { return option.name == name; });
        return found == options.end() ? nullptr : &*found;
    };
    const auto* own = command == nullptr ? nullptr : in(command->options);
    return own != nullptr ? own : in(common_options());
}

Line line_of(const std::vector<std::string>& before) {
    Line line;
    std::size_t next = 0;
    if (before.size() > 1) line.command = find_command(before[0] + " " + before[1]);
    if (line.command != nullptr) next = 2;
    if (line.command == nullptr && !before.empty()) line.command = find_command(before[0]);
    if (line.command != nullptr && next == 0) next = 1;
    for (; next < before.size(); ++next) {
        const std::string& word = before[next];
        if (line.waiting != nullptr) {
            if (line.waiting->name == "--db") line.database = word;
            if (line.waiting->name == "--system") line.system = word;
            line.waiting = nullptr;
        } else if (word.starts_with("-") && word.size() > 1) {
            line.options.push_back(word);
            const auto* option = option_of(line.command, word);
            if (option != nullptr && !option->value.empty()) line.waiting = option;
        } else {
            line.words.push_back(word);
        }
    }
    return line;
}

std::vector<std::string> split(std::string_view text, char at) {
    std::vector<std::string> parts;
    while (!text.empty()) {
        const auto end = std::min(text.find(at), text.size());
        std::string part(text.substr(0, end));
        part.erase(0, std::min(part.find_first_not_of(" ["), part.size()));
        part.erase(part.find_last_not_of(" ].") + 1);
        if (!part.empty()) parts.push_back(std::move(part));
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return parts;
}

class Completing {
  public:
    Completing(const Session& session, const std::vector<std::string>& before, const std::string& current)
        : session_(session), before_(before), current_(current), line_(line_of(before)) {}

    Completions run() {
        if (line_.waiting != nullptr)
            values_of(*line_.waiting);
        else if (line_.command == nullptr)
            names_of_commands();
        else if (current_.starts_with("-"))
            names_of_options();
        else
            words_of_command(*line_.command);
        return std::move(found_);
    }

  private:
    // Takes it when it continues what was typed and is one line.
    void offer(std::string value, std::string_view description = {}) {
        if (value.empty() || !value.starts_with(current_) || hidden_character(value) || !is_utf8(value)) return;
        const auto same = [&](const Completion& known) { return known.value == value; };
        if (std::any_of(found_.list.begin(), found_.list.end(), same)) return;
        found_.list.push_back({std::move(value), shown(description)});
    }

    void names_of_commands() {
        for (const auto& command : commands()) {
            if (command.group.empty()) continue;
            const auto space = command.name.find(' ');
            const std::string first(command.name.substr(0, space));
            if (before_.empty())
                offer(first, space == std::string_view::npos ? command.summary : "calculators that need no catalog");
            else if (before_.size() == 1 && before_[0] == first && space != std::string_view::npos)
                offer(std::string(command.name.substr(space + 1)), command.summary);
        }
        if (!before_.empty() || !current_.starts_with("-")) return;
        offer("--help", "all commands");
        offer("--version", "this program's version");
    }

    void names_of_options() {
        const auto each = [&](std::span<const OptionSpec> options) {
            for (const auto& option : options)
                if (std::find(line_.options.begin(), line_.options.end(), option.name) == line_.options.end())
                    offer(std::string(option.name), option.help);
        };
        each(line_.command->options);
        each(common_options());
        offer("--help", "this command's help");
    }

    void values_of(const OptionSpec& option) {
        if (option.words != nullptr)
            for (const auto word : option.words()) offer(std::string(word));
        else if (option.value.find('|') != std::string_view::npos)
            for (auto& word : split(option.value, '|')) offer(std::move(word));
        else
            things_called(option.value);
    }

    void words_of_command(const CommandSpec& command) {
        if (command.takes.find('|') == std::string_view::npos) {
            things_called(command.name == "calc colour"       ? "COLOUR"
                          : split(command.takes, ' ').empty() ? std::string_view()
                                                              : command.takes);
            return;
        }
        for (const auto& choice : split(command.takes, '|')) {
            const auto parts = split(choice, ' ');
            if (line_.words.empty())
                offer(parts.front());
            else if (parts.size() > 1 && parts.front() == line_.words.front() && line_.words.size() == 1)
                things_called(parts[1]);
        }
    }

    // What a word in capitals stands for, in the usage line or behind an option.
    void things_called(std::string_view what) {
        if (what == "VEHICLE" || what == "[VEHICLE]" || what == "[WORDS...]") cars();
        if (what == "CODE") systems();
        if (what == "TAP") taps();
        if (what == "AMPLIFIER") amplifiers();
        if (what == "ID") rules();
        if (what == "COLOUR") colours();
        if (what == "FILE") found_.files = true;
        if (what == "FOLDER") found_.folders = true;
    }

    Catalog catalog() const {
        Session place = session_;
        if (line_.database) place.database = *line_.database;
        if (line_.database) place.database_given = true;
        return Catalog::open(reading_place(place), Access::read, std::chrono::milliseconds(200));
    }

    static std::string name_of(const VehicleName& car) {
        return fmt::format("{} {} {}, {}-{}", car.make, car.model, car.body, car.first_year, car.last_year);
    }

    std::string words_so_far() const {
        std::string all;
        for (const auto& word : line_.words) all += (all.empty() ? "" : " ") + word;
        return all;
    }

    // Whole paths once a slash is typed; else the words that tell apart the cars that fit the words before.
    void cars() {
        const auto names = catalog().vehicle_names();
        const auto fitting = line_.words.empty() ? names : exact_vehicles(names, words_so_far());
        if (fitting.size() == 1 && !line_.words.empty() && current_.empty()) return names_of_options();
        const bool path = current_.find('/') != std::string::npos;
        for (const auto& car : fitting) {
            if (path) offer(car.path, name_of(car));
            if (path) continue;
            for (const auto& word : {slug_from(car.model), slug_from(car.make), slug_from(car.body)})
                if (std::find(line_.words.begin(), line_.words.end(), word) == line_.words.end())
                    offer(word, name_of(car));
        }
        if (found_.list.empty())
            for (const auto& car : fitting) offer(car.path, name_of(car));
    }

    // The one car that the words before name.
    std::optional<CarFacts> car() const {
        const Catalog open = catalog();
        const auto fitting = exact_vehicles(open.vehicle_names(), words_so_far());
        return fitting.size() == 1 ? std::optional(open.car(fitting.front().path, std::nullopt)) : std::nullopt;
    }

    void systems() {
        if (const auto facts = car())
            for (const auto& system : facts->systems) offer(system.code, system.entry.name);
    }

    void taps() {
        const auto facts = car();
        if (!facts) return;
        for (const auto& tap : facts->taps)
            if (!line_.system || tap.system == *line_.system)
                offer(std::string(path_tail(tap.code, vehicle_depth)), tap.tap.place);
    }

    void amplifiers() {
        for (const auto& amplifier : catalog().amplifiers())
            offer(amplifier.path, fmt::format("{} {}", amplifier.maker, amplifier.name));
    }

    void rules() {
        Session place = session_;
        if (line_.database) place.database = *line_.database;
        const RuleBook book = rules_beside(place.database, RuleCases::left_out);
        for (const auto& rule : book.rules()) offer(rule.id, rule.asks);
    }

    // The base, or the stripe behind the last slash.
    void colours() {
        const auto slash = current_.rfind('/');
        const std::string typed = slash == std::string::npos ? std::string() : current_.substr(0, slash + 1);
        for (const auto& base : words_of<BaseColour>())
            for (const auto& shade : words_of<Shade>()) {
                if (shade.value != Shade::plain && !has_shades(base.value)) continue;
                const Hue hue{base.value, shade.value};
                offer(typed + words(hue), code(hue));
                if (!current_.empty()) offer(typed + code(hue), words(hue));
            }
    }

    const Session& session_;
    const std::vector<std::string>& before_;
    const std::string& current_;
    Line line_;
    Completions found_;
};

}  // namespace

Completions completions(const Session& session, const std::vector<std::string>& before, const std::string& current) {
    try {
        return Completing(session, before, current).run();
    } catch (const std::exception&) {
        return {};
    }
}

}  // namespace tapbook
