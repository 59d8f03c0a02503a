// How does a question about coverage travel to the solver, and the answer back? (model_text.h shows both forms.)
#include "solver/model_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <set>

#include "solver/text_lines.h"

namespace tapbook {

namespace {

constexpr std::string_view question_form = "cover 1", answer_form = "answer 1";

std::string_view seek_word(CoverModel::Seek seek) {
    return seek == CoverModel::Seek::most_covered ? "most_covered" : "fewest_columns";
}

CoverModel::Seek seek_from(const TextLine& line) {
    want_one(line);
    for (const auto seek : {CoverModel::Seek::most_covered, CoverModel::Seek::fewest_columns})
        if (line.words[1] == seek_word(seek)) return seek;
    refuse_line(line, fmt::format("\"{}\" cannot be sought", line.words[1].substr(0, 40)));
}

std::uint32_t column_at(const TextLine& line, std::size_t i, const CoverModel& model) {
    if (model.costs.empty()) refuse_line(line, "there are no columns yet");
    return static_cast<std::uint32_t>(whole(line, i, static_cast<std::int64_t>(model.costs.size()) - 1));
}

CoverModel::Row row_from(const TextLine& line, const CoverModel& model) {
    CoverModel::Row row{.weight = whole(line, 1), .columns = {}};
    for (std::size_t i = 2; i < line.words.size(); ++i) row.columns.push_back(column_at(line, i, model));
    return row;
}

void take_line(const TextLine& line, CoverQuestion& question) {
    CoverModel& model = question.model;
    const std::string_view what = line.words.front();
    if (what == "row")
        model.rows.push_back(row_from(line, model));
    else if (what == "cost")
        for (std::size_t i = 1; i < line.words.size(); ++i) model.costs.push_back(whole(line, i));
    else if (what == "seek")
        model.seek = seek_from(line);
    else if (want_one(line); what == "at_most")
        model.at_most = static_cast<int>(whole(line, 1, INT32_MAX));
    else if (what == "budget")
        model.budget = whole(line, 1);
    else if (what == "at_least")
        model.at_least_covered = whole(line, 1);
    else if (what == "seconds")
        question.seconds = decimal(line, 1);
    else
        refuse_line(line, fmt::format("\"{}\" is not known here", what.substr(0, 40)));
}

void want_new(const TextLine& line, std::set<std::string_view>& seen) {
    const std::string_view what = line.words.front();
    if (what != "row" && !seen.insert(what).second)
        refuse_line(line, fmt::format("a second \"{}\"", what.substr(0, 40)));
}

SearchEnd end_from(const TextLine& line) {
    want_one(line);
    for (const SearchEnd end : {SearchEnd::optimal, SearchEnd::stopped, SearchEnd::infeasible})
        if (line.words[1] == word_of(end)) return end;
    refuse_line(line, fmt::format("\"{}\" is no end of a search", line.words[1].substr(0, 40)));
}

}  // namespace

std::string question_text(const CoverModel& model, double within_seconds) {
    std::string text = fmt::format("{}\nseek {}\ncost", question_form, seek_word(model.seek));
    const auto out = std::back_inserter(text);
    for (const std::int64_t cost : model.costs) fmt::format_to(out, " {}", cost);
    text += '\n';
    if (model.at_most) fmt::format_to(out, "at_most {}\n", *model.at_most);
    if (model.budget) fmt::format_to(out, "budget {}\n", *model.budget);
    if (model.at_least_covered) fmt::format_to(out, "at_least {}\n", *model.at_least_covered);
    for (const CoverModel::Row& row : model.rows) {
        fmt::format_to(out, "row {}", row.weight);
        for (const std::uint32_t column : row.columns) fmt::format_to(out, " {}", column);
        text += '\n';
    }
    fmt::format_to(out, "seconds {}\ndone\n", within_seconds);
    return text;
}

CoverQuestion question_from(std::string_view text) {
    CoverQuestion question;
    std::set<std::string_view> seen;
    for (const TextLine& line : lines_of(text, question_form)) {
        want_new(line, seen);
        take_line(line, question);
    }
    for (const std::string_view needed : {"seek", "cost", "seconds"})
        if (!seen.contains(needed)) throw ModelTextRefused(fmt::format("the line \"{}\" is missing", needed));
    return question;
}

std::string answer_text(const SearchAnswer& answer) {
    std::string text = fmt::format("{}\nend {}\n", answer_form, word_of(answer.end));
    if (answer.bound) text += fmt::format("bound {}\n", *answer.bound);
    text += "chosen";
    for (const std::uint32_t column : answer.chosen) text += fmt::format(" {}", column);
    return text + "\ndone\n";
}

SearchAnswer answer_from(std::string_view text) {
    SearchAnswer answer;
    std::set<std::string_view> seen;
    for (const TextLine& line : lines_of(text, answer_form)) {
        want_new(line, seen);
        const std::string_view what = line.words.front();
        if (what == "chosen")
            for (std::size_t i = 1; i < line.words.size(); ++i)
                answer.chosen.push_back(static_cast<std::uint32_t>(whole(line, i, UINT32_MAX)));
        else if (what == "end")
            answer.end = end_from(line);
        else if (want_one(line); what == "bound")
            answer.bound = decimal(line, 1);
        else
            refuse_line(line, fmt::format("\"{}\" is not known here", what.substr(0, 40)));
    }
    for (const std::string_view needed : {"end", "chosen"})
        if (!seen.contains(needed)) throw ModelTextRefused(fmt::format("the line \"{}\" is missing", needed));
    return answer;
}

}  // namespace tapbook
