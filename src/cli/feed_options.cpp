// Amplifiers and sizes as they are typed: WATTS:CLASS:METRES:SIZE behind a block, options for a single one.
#include "cli/feed_options.h"

#include <fmt/format.h>

namespace tapbook {
namespace {

constexpr std::int64_t most_milliamps = 5'000'000;
constexpr std::int64_t most_milliwatts = 20'000'000;

// The part of a word, as a number of thousandths.
std::int64_t number_of_word(const std::string& word, std::string_view part, std::string_view what, std::int64_t most) {
    const auto read = scaled(part, 3);
    const std::string range = fmt::format("it must be 0.001 to {}", unscaled(most, 3));
    if (const auto* not_one = std::get_if<NotANumber>(&read))
        throw UsageError(fmt::format("{}: {} \"{}\" {}", shown(word), what, shown(part), not_one->reason), range);
    const auto result = std::get<std::int64_t>(read);
    if (result < 1 || result > most)
        throw UsageError(fmt::format("{}: {} {} is out of range", shown(word), what, shown(part)), range);
    return result;
}

std::vector<std::string> parts_of(const std::string& word) {
    std::vector<std::string> parts(1);
    for (const char one : word) {
        if (one == ':')
            parts.emplace_back();
        else
            parts.back() += one;
    }
    return parts;
}

TypedAmplifier amplifier_of_word(const std::string& word, DcVolts supply, bool constant) {
    const auto parts = parts_of(word);
    if (parts.size() != 4)
        throw UsageError(fmt::format("\"{}\" is no WATTS:CLASS:METRES:SIZE", shown(word)), "for example 500:d:1:8");
    AskedAmplifier asked;
    asked.output = milliwatts(number_of_word(word, parts[0], "watts", most_milliwatts));
    asked.amplifier_class = parse_word<AmplifierClass>(parts[1]);
    if (!asked.amplifier_class)
        throw UsageError(fmt::format("{}: \"{}\" is no class", shown(word), shown(parts[1])), "ab or d");
    FedAmplifier fed = fed_amplifier(asked, supply, constant);
    const Metres length = millimetres(number_of_word(word, parts[2], "metres", 100'000));
    fed.branch = FeedCable{typed_size(word, parts[3]), length};
    return {asked, fed};
}

TypedAmplifier amplifier_of_options(const Parsed& parsed, DcVolts supply) {
    const auto current = parsed.number("--amps", 3, 1, most_milliamps);
    const auto output = parsed.number("--watts", 3, 1, most_milliwatts);
    const auto efficiency = parsed.number("--efficiency", 3, 10, 1000);
    if (current.has_value() == output.has_value())
        throw UsageError("give either --watts or --amps, or amplifiers as WATTS:CLASS:METRES:SIZE",
                         "for example --watts 900 --class d");
    AskedAmplifier asked{std::nullopt, parsed.word<AmplifierClass>("--class"), std::nullopt};
    if (current) {
        if (efficiency || parsed.flag("--constant-current"))
            throw UsageError("--efficiency and --constant-current belong to --watts", "leave them out beside --amps");
        return {asked, {milliamps(*current), std::nullopt, std::nullopt}};
    }
    if (!asked.amplifier_class && !efficiency)
        throw UsageError("--watts needs --class or --efficiency", "for example --watts 900 --class d");
    asked.output = milliwatts(*output);
    if (efficiency) asked.efficiency = thousandths(*efficiency);
    return {asked, fed_amplifier(asked, supply, parsed.flag("--constant-current"))};
}

}  // namespace

CableSize typed_size(std::string_view option, const std::string& typed) {
    const auto size = parse_cable_size(typed);
    if (!size)
        throw UsageError(fmt::format("{}: \"{}\" is no size", shown(option), shown(typed)),
                         "write 4 or 1/0 for AWG, 25mm2 for metric cable, sae4 for cable marked SAE");
    if (!cable_ampacity(*size, {}))
        throw NoAnswer(
            fmt::format("{} is thinner than 18 AWG (0.823 mm2), where the published table begins", size_words(*size)),
            "take 18 AWG, 1 mm2 or thicker for a supply cable");
    return *size;
}

std::vector<TypedAmplifier> typed_amplifiers(const Parsed& parsed, DcVolts supply) {
    if (parsed.words.empty()) return {amplifier_of_options(parsed, supply)};
    for (const auto option : {"--watts", "--amps", "--class", "--efficiency"})
        if (parsed.text(option))
            throw UsageError(fmt::format("{} beside amplifiers as words", option),
                             "each word says it all: WATTS:CLASS:METRES:SIZE, like 500:d:1:8");
    std::vector<TypedAmplifier> list;
    for (const auto& word : parsed.words)
        list.push_back(amplifier_of_word(word, supply, parsed.flag("--constant-current")));
    return list;
}

}  // namespace tapbook
