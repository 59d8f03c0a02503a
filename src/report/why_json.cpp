// The sum behind each grade as JSON: schema note.why.
#include "report/json.h"
#include "report/notes_report.h"

namespace tapbook {
namespace {

void whole(Json& json, std::string_view name, int value) {
    json.key(name).whole(value);
}

void write_share(Json& json, const ShopShare& share) {
    json.begin_object();
    json.member("shop", share.shop.empty() ? std::nullopt : std::optional(share.shop));
    whole(json, "shops", share.shops);
    json.member("best_method", share.best_method);
    whole(json, "best_points", share.best);
    whole(json, "cars", share.cars);
    whole(json, "points", share.points);
    json.key("capped").flag(share.capped).end_object();
}

void write_value(Json& json, Question question, const ValueSum& value) {
    json.begin_object().member("value", value.value).member("words", value_words(question, value.value));
    whole(json, "points", value.points);
    json.key("shops").begin_list();
    for (const auto& share : value.shops) write_share(json, share);
    json.end_list().key("paper").begin_object();
    whole(json, "sources", value.paper_sources);
    whole(json, "points", value.paper_points);
    json.key("capped").flag(value.paper_capped).end_object().end_object();
}

void write_year_test(Json& json, const std::optional<YearTestSum>& test) {
    json.key("year_test");
    if (!test) {
        json.null();
        return;
    }
    json.begin_object().member("old_value", test->best.old_value).member("new_value", test->best.new_value);
    whole(json, "last_old_year", test->best.last_old_year);
    whole(json, "first_new_year", test->best.first_new_year);
    whole(json, "gain", test->best.gain);
    json.key("penalty").number(test->penalty).key("splits").flag(test->splits).end_object();
}

void write_demands(Json& json, const Reckoning& sum) {
    whole(json, "lead", sum.lead);
    whole(json, "all_points", sum.all_points);
    json.key("has_share").flag(sum.has_share).key("leading");
    if (sum.standing.claims.empty()) {
        json.null();
        return;
    }
    const Claim& leading = sum.standing.claims.front();
    json.begin_object();
    whole(json, "cars", leading.cars);
    whole(json, "known_shops", leading.known_shops);
    whole(json, "measured_cars", leading.measured_cars);
    json.member("first_year", leading.first_year).member("last_year", leading.last_year).end_object();
}

void write_question(Json& json, const WhyQuestion& why) {
    json.begin_object().member("what", word_of(why.question)).member("grade", word_of(why.sum.standing.grade));
    json.member("value", why.sum.standing.value).member("line", why.line);
    json.key("asked_year");
    if (why.asked_year)
        json.begin_object()
            .member("grade", word_of(why.asked_year->grade))
            .member("value", why.asked_year->value)
            .member("line", why.asked_year_line)
            .end_object();
    else
        json.null();
    json.key("values").begin_list();
    for (const auto& value : why.sum.values) write_value(json, why.question, value);
    json.end_list();
    write_demands(json, why.sum);
    write_year_test(json, why.sum.year_test);
    json.end_object();
}

void write_note(Json& json, const WhyNote& note) {
    const auto text_or_null = [](const std::string& text) { return text.empty() ? std::nullopt : std::optional(text); };
    json.begin_object().member("id", to_hex(note.id)).member("date", note.date).member("method", note.method);
    json.member("initials", text_or_null(note.initials)).member("shop", note.shop).member("year", note.year);
    json.member("says", note.says)
        .member("fate", word_of(note.fate))
        .member("fate_words", text_or_null(note.fate_words));
    json.key("car_told_apart").flag(note.is_told_apart).end_object();
}

}  // namespace

std::string why_json(const WhyAnswer& answer) {
    Json json;
    json.begin_object().member("code", answer.path).member("kind", word_of(answer.kind)).member("year", answer.year);
    if (!answer.also.empty()) json.member("also", answer.also);
    json.key("questions").begin_list();
    for (const auto& why : answer.questions) write_question(json, why);
    json.end_list().key("notes").begin_list();
    for (const auto& note : answer.notes) write_note(json, note);
    json.end_list().key("shops").begin_list();
    for (const auto& [id, name] : answer.shop_names)
        json.begin_object().member("id", id).member("name", name).end_object();
    json.end_list().member("next", answer.next).key("practice").flag(answer.practice).end_object();
    return json_answer("note.why", json.take());
}

}  // namespace tapbook
