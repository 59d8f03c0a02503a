// How did the car come, and how does it leave? The same list twice, ten items to press, what is not well in words.
#include <fmt/format.h>

#include "page/job_parts.h"
#include "page/pages.h"

namespace tapbook {
namespace {

std::string box_name(CheckItem item, std::string_view what) {
    return fmt::format("{}-{}", what, word_of(item));
}

const CheckEntry* entry_of(const std::vector<CheckEntry>& list, CheckItem item) {
    for (const auto& entry : list)
        if (entry.item == item) return &entry;
    return nullptr;
}

// What stands in the form: as typed, else as the job has it.
struct ListForm {
    std::vector<CheckEntry> entries;
    std::string agreed, complaint;
    std::optional<CheckItem> at;  // of the complaint
};

void write_item(Html& html, const ListForm& form, CheckItem item, const ShopJob& job, CheckList list) {
    const CheckEntry* entry = entry_of(form.entries, item);
    html.begin("li").line();
    const bool is_wrong = form.at == item;
    write_radios(html, box_name(item, "is"), fmt::format("{}: {}", word_of(item), check_question(item)),
                 {{"ok", "ok"}, {"bad", "bad"}, {"none", "none"}}, entry == nullptr ? "" : word_of(entry->answer),
                 is_wrong ? form.complaint : "");
    write_form_box(html, {.name = box_name(item, "words"),
                          .label = fmt::format("What is bad ({})", word_of(item)),
                          .value = entry == nullptr ? "" : entry->words});
    if (list == CheckList::left)
        if (const CheckEntry* came = entry_of(job.came, item); came != nullptr)
            write_fact(html, "came", checked_words(*came));
    html.end().line();
}

PageAnswer list_form(const Catalog& catalog, const PageRequest& request, const ShopJob& job, CheckList list,
                     const ListForm& form, std::string_view done) {
    const bool came = list == CheckList::came;
    Page page(request, catalog.is_practice(), came ? "As it came" : "As it left", PagePart::jobs);
    Html& html = page.html();
    if (!done.empty()) {
        html.begin("span", {{"data-saved", fmt::format("{}-{}", job.code, word_of(list))}}).end();
        write_telling(html, Telling::done, done);
    }
    if (!form.complaint.empty()) {
        html.begin("span", {{"data-refused", "yes"}}).end();
        write_telling(html, Telling::wrong, "Not saved yet.", form.complaint);
    }
    write_job_head(html, catalog, job, came ? "As it came" : "As it left");
    begin_form(html, request, job_address(job.code, word_of(list)), fmt::format("{}-{}", job.code, word_of(list)));
    html.begin("ul", {{"class", "checks"}}).line();
    for (const auto& named : words_of<CheckItem>()) write_item(html, form, named.value, job, list);
    html.end().line();
    write_tick(html, "rest", "All that is not pressed is ok", false);
    if (came)
        write_form_box(html, {.name = "agreed",
                              .label = "The customer agrees (initials)",
                              .value = form.agreed,
                              .remark = "before work starts"});
    html.begin("div", {{"class", "act"}});
    if (job.state == JobState::open) write_action(html, request, "Save the list");
    html.end().end().line();
    return page.answer(form.complaint.empty() ? 200 : 422);
}

PageAnswer show_list(PageDesk& desk, const PageRequest& request, CheckList list) {
    const Catalog& catalog = desk.catalog();
    const AskedJob asked = asked_job(catalog, request);
    return list_form(catalog, request, asked.job, list,
                     {list == CheckList::came ? asked.job.came : asked.job.left, asked.job.agreed, {}, {}}, {});
}

bool is_plain(const std::string& text) {
    return is_utf8(text) && !hidden_character(text) && text.size() <= most_text_bytes;
}

ListForm typed_list(const FormFields& fields) {
    ListForm form;
    form.agreed = nfc(fields.text("agreed").value_or(""));
    if (!is_plain(form.agreed)) form.complaint = "write the initials in plain characters";
    for (const auto& named : words_of<CheckItem>()) {
        const auto answer = parse_word<CheckAnswer>(fields.text(box_name(named.value, "is")).value_or(""));
        if (!answer) continue;
        CheckEntry entry{named.value, *answer, {}};
        if (*answer == CheckAnswer::bad) entry.words = nfc(fields.text(box_name(named.value, "words")).value_or(""));
        const bool needs_words = *answer == CheckAnswer::bad && folded(entry.words).empty();
        if (form.complaint.empty() && (needs_words || !is_plain(entry.words))) {
            form.complaint = fmt::format("{}: write in plain words what is bad", named.word);
            form.at = named.value;
        }
        form.entries.push_back(std::move(entry));
    }
    return form;
}

PageAnswer save_list(PageDesk& desk, const PageRequest& request, CheckList list) {
    Catalog catalog = desk.catalog_to_write();
    const AskedJob asked = asked_job(catalog, request);
    const ListForm form = typed_list(request.form);
    if (!form.complaint.empty()) return list_form(catalog, request, asked.job, list, form, {});
    JobChecks checks;
    checks.entries = form.entries;
    if (request.form.has("rest")) checks.rest = CheckAnswer::ok;
    if (list == CheckList::came && !form.agreed.empty()) checks.agreed = form.agreed;
    const JobReport report = catalog.check_job(asked.job.number, list, checks);
    const auto& now = list == CheckList::came ? report.job.came : report.job.left;
    const std::size_t missing = missing_items(now).size();
    return list_form(
        catalog, request, report.job, list, {now, report.job.agreed, {}, {}},
        missing == 0 ? std::string("Saved: the list is filled.") : fmt::format("Saved: {} left to fill.", missing));
}

PageAnswer came_page(PageDesk& desk, const PageRequest& request) {
    return show_list(desk, request, CheckList::came);
}
PageAnswer left_page(PageDesk& desk, const PageRequest& request) {
    return show_list(desk, request, CheckList::left);
}
PageAnswer save_came(PageDesk& desk, const PageRequest& request) {
    return save_list(desk, request, CheckList::came);
}
PageAnswer save_left(PageDesk& desk, const PageRequest& request) {
    return save_list(desk, request, CheckList::left);
}

constexpr Route list[] = {{PageMethod::get, "/job/{}/came", RouteFor::reader, came_page},
                          {PageMethod::get, "/job/{}/left", RouteFor::reader, left_page},
                          {PageMethod::post, "/job/{}/came", RouteFor::paired_phone, save_came},
                          {PageMethod::post, "/job/{}/left", RouteFor::paired_phone, save_left}};

}  // namespace

std::span<const Route> job_list_routes() {
    return list;
}

}  // namespace tapbook
