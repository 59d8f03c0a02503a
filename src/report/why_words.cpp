// See why_words.h: the sum behind each grade as a person adds it up, value by value, shop by shop.
#include "report/why_words.h"

#include <fmt/format.h>

namespace tapbook {
namespace {

std::string counted(int number, std::string_view noun) {
    return fmt::format("{} {}{}", number, noun, number == 1 ? "" : "s");
}

std::string shop_words(const WhyAnswer& answer, const std::string& shop) {
    const auto name = answer.shop_names.find(shop);
    const std::string words =
        name == answer.shop_names.end() ? fmt::format("shop {}", shop.substr(0, 8)) : name->second;
    return shop == answer.own_shop ? fmt::format("{} (this shop)", words) : words;
}

std::string share_words(const ShopShare& share) {
    std::string text = fmt::format("{} {}", share.best_method, share.best);
    if (share.cars > 1) text += fmt::format(", {} +{}", counted(share.cars - 1, "further car"), share.cars - 1);
    if (share.cars > 1 || share.capped) text += fmt::format(" = {}", share.points);
    return share.capped ? text + " (a shop never gives more than 5)" : text;
}

std::string year_test_words(Question question, const YearTestSum& test) {
    return fmt::format("\"{} until {}, {} from {}\" explains {} more than one value; {:.2f} + 3 are needed: {}",
                       value_words(question, test.best.old_value), test.best.last_old_year,
                       value_words(question, test.best.new_value), test.best.first_new_year,
                       counted(test.best.gain, "point"), test.penalty, test.splits ? "split by year" : "no split");
}

}  // namespace

std::string why_standing_words(const WhyQuestion& why) {
    return why.line.empty() ? std::string(word_of(why.sum.standing.grade)) : why.line;
}

std::string why_year_words(const WhyQuestion& why) {
    return why.asked_year_line.empty() ? std::string(word_of(why.asked_year->grade)) : why.asked_year_line;
}

std::string why_value_words(Question question, const ValueSum& value) {
    return fmt::format("{}: {}", value_words(question, value.value), counted(value.points, "point"));
}

std::vector<std::string> why_shares(const WhyAnswer& answer, const ValueSum& value) {
    std::vector<std::string> list;
    for (const auto& share : value.shops) {
        const std::string who = share.shop.empty()
                                    ? share.shops == 1
                                          ? std::string("1 shop not on your list")
                                          : fmt::format("{} shops not on your list, counted as one", share.shops)
                                    : shop_words(answer, share.shop);
        list.push_back(fmt::format("{}: {}", who, share_words(share)));
    }
    if (value.paper_sources > 0)
        list.push_back(fmt::format("paper from {}: {}{}", counted(value.paper_sources, "source"), value.paper_points,
                                   value.paper_capped ? " (never more than 2)" : ""));
    return list;
}

std::vector<WhyDemand> why_demands(const WhyQuestion& why) {
    const Reckoning& sum = why.sum;
    if (sum.standing.claims.empty()) return {};
    const Claim& leading = sum.standing.claims.front();
    std::vector<WhyDemand> list = {
        {"lead", fmt::format("{} over the next value (6 proves)", counted(sum.lead, "point"))},
        {"share", fmt::format("{} of {} (4/5 proves: {})", leading.points, counted(sum.all_points, "point"),
                              sum.has_share ? "yes" : "no")},
        {"behind",
         fmt::format("{} at {}, {} (2, 2 and 2 prove)", counted(leading.cars, "car"),
                     counted(leading.known_shops, "known shop"), counted(leading.measured_cars, "car") + " measured")}};
    if (leading.first_year)
        list.push_back({"years", fmt::format("{} seen; another year counts one grade lower",
                                             words(ModelYears{*leading.first_year, *leading.last_year}))});
    if (sum.year_test) list.push_back({"change", year_test_words(why.question, *sum.year_test)});
    return list;
}

std::string why_note_words(const WhyAnswer& answer, const WhyNote& note) {
    std::string text;
    if (note.fate != NoteFate::counts)
        text = fmt::format("{}{}{}: ", word_of(note.fate), note.fate_words.empty() ? "" : " - ", note.fate_words);
    return text + fmt::format("{}; {}; {}{}{}{}", note.says, note.method, shop_words(answer, note.shop),
                              note.initials.empty() ? "" : ", " + note.initials,
                              note.year ? fmt::format("; model year {}", *note.year) : "; model year not noted",
                              note.is_told_apart ? "" : "; car not told apart");
}

}  // namespace tapbook
