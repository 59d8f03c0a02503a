// See load_text.h. A reader with one function for each line of the grammar:
//     load   = branch { "+" branch }       in series: ohms add
//     branch = part { "//" part }          side by side: conductances add
//     part   = ohms | "(" load ")"
// Blanks between the signs say nothing.
#include "trade/load_text.h"

#include <fmt/format.h>

#include "trade/decimal.h"
#include "trade/text.h"

namespace tapbook {
namespace {

constexpr std::int64_t least_milliohms = 100, most_milliohms = 1'000'000;
constexpr int most_coils = 32, most_depth = 8;

class LoadReader {
  public:
    explicit LoadReader(std::string_view text) : text_(text) {}

    std::variant<Ohms, LoadTrouble> read() {
        const auto sum = load();
        if (sum && next() == ')') fail("no \"(\" belongs to this \")\"");
        if (sum && !trouble_ && at_ < text_.size()) fail("\"+\" or \"//\" is missing here");
        if (trouble_) return *trouble_;
        return *sum;
    }

  private:
    // The next sign after blanks; NUL at the end. A NUL in the text is part of a word that is no number.
    char next() {
        while (at_ < text_.size() && text_[at_] == ' ') ++at_;
        return at_ < text_.size() ? text_[at_] : '\0';
    }

    std::optional<Ohms> fail(std::string message) { return fail(at_, std::move(message)); }
    std::optional<Ohms> fail(std::size_t offset, std::string message) {
        if (!trouble_) trouble_ = LoadTrouble{offset, std::move(message)};
        return std::nullopt;
    }

    std::optional<Ohms> load() {
        auto sum = branch();
        while (sum && next() == '+') {
            ++at_;
            const auto more = branch();
            if (!more) return std::nullopt;
            sum = *sum + *more;
        }
        return sum;
    }

    std::optional<Ohms> branch() {
        auto whole = part();
        while (whole && next() == '/') {
            if (!text_.substr(at_).starts_with("//"))
                return fail("a single \"/\": coils side by side are written 4//4");
            at_ += 2;
            const auto beside = part();
            if (!beside) return std::nullopt;
            whole = *whole * (*beside / (*whole + *beside));
        }
        return whole;
    }

    std::optional<Ohms> part() {
        if (next() != '(') return coil();
        if (depth_ == most_depth) return fail(fmt::format("more than {} parentheses deep", most_depth));
        ++depth_;
        ++at_;
        const auto inside = load();
        if (!inside) return std::nullopt;
        if (next() != ')')
            return fail(at_ < text_.size() ? "\"+\", \"//\" or \")\" is missing here" : "\")\" is missing");
        ++at_;
        --depth_;
        return inside;
    }

    std::optional<Ohms> coil() {
        next();
        const std::size_t begin = at_;
        at_ = std::min(text_.find_first_of(" +/()", begin), text_.size());
        const auto word = text_.substr(begin, at_ - begin);
        if (word.empty()) return fail(begin, "ohms are missing here");
        const auto read = scaled(word, 3);
        const auto* number = std::get_if<std::int64_t>(&read);
        if (number == nullptr) return fail(begin, not_a_coil(word, std::get<NotANumber>(read)));
        if (*number < least_milliohms || *number > most_milliohms)
            return fail(begin, fmt::format("{} ohm: a voice coil has 0.1 to 1000 ohm", word));
        if (++coils_ > most_coils) return fail(begin, fmt::format("more than {} voice coils", most_coils));
        return milliohms(*number);
    }

    static std::string not_a_coil(std::string_view word, const NotANumber& why) {
        if (why.reason.starts_with("is not a number")) return fmt::format("\"{}\" is no number of ohms", shown(word));
        return fmt::format("\"{}\" {}", shown(word), why.reason);
    }

    std::string_view text_;
    std::size_t at_ = 0;
    int coils_ = 0, depth_ = 0;
    std::optional<LoadTrouble> trouble_;
};

}  // namespace

std::variant<Ohms, LoadTrouble> parse_load(std::string_view typed) {
    return LoadReader(typed).read();
}

}  // namespace tapbook
