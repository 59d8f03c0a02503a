// A job as a person reads it: head, the two lists with what differs, plan, what was read, what is still undone.
#include <fmt/format.h>

#include "report/job_report.h"

namespace tapbook {
namespace {

std::string practice_mark(bool practice) {
    return practice ? "   [practice]" : "";
}

void print_head(Paper& paper, const ShopJob& job, const JobScreen& head) {
    paper.heading(fmt::format("Job {}  {}: {}{}", job.number, job.code, head.car, practice_mark(head.practice)));
}

std::string said_words(const CheckEntry& entry) {
    return fmt::format("{}{}{}", word_of(entry.answer), entry.words.empty() ? "" : ": ", entry.words);
}

const CheckEntry* find_entry(const std::vector<CheckEntry>& list, CheckItem item) {
    for (const auto& entry : list)
        if (entry.item == item) return &entry;
    return nullptr;
}

// The whole list; items not filled yet with what to look at.
void print_list(Paper& paper, const std::vector<CheckEntry>& list) {
    for (const auto& named : words_of<CheckItem>()) {
        const CheckEntry* entry = find_entry(list, named.value);
        paper.line(2, fmt::format("{:<13}", named.word),
                   entry != nullptr ? said_words(*entry) : fmt::format("[ ] {}", check_question(named.value)));
    }
}

void print_differences(Paper& paper, const ShopJob& job) {
    for (const auto& difference : differences(job))
        paper.line(2, fmt::format("{:<13}", word_of(difference.item)),
                   fmt::format("came {}; left {}", said_words(*difference.came), said_words(*difference.left)),
                   Weight::strong);
}

void print_actions(Paper& paper, const ShopJob& job) {
    for (const auto& action : job.actions)
        paper.line(2, fmt::format("{:<4}", action.number),
                   action.closed.empty() ? fmt::format("OPEN  {} (since {})", action.words, action.opened)
                                         : fmt::format("done  {} ({})", action.words, action.closed));
}

bool has_open_action(const ShopJob& job) {
    for (const auto& action : job.actions)
        if (action.closed.empty()) return true;
    return false;
}

std::string list_words(const std::vector<CheckItem>& items) {
    std::string text;
    for (const CheckItem item : items) text += fmt::format("{}{}", text.empty() ? "" : ", ", word_of(item));
    return text;
}

void print_list_state(Paper& paper, const ShopJob& job, CheckList list) {
    const auto missing = missing_items(list == CheckList::came ? job.came : job.left);
    if (!missing.empty())
        paper.line(2, "open         ",
                   fmt::format("{}: `tapbook job {} {} ITEM=ok`, ITEM=bad:WORDS, ITEM=none; rest=ok for the others",
                               list_words(missing), word_of(list), job.number));
}

std::string plan_words(const JobPlan& plan) {
    if (plan.tap.empty()) return "none yet";
    return fmt::format("{} -> {}{}", place_in_job(plan.tap), plan.converter,
                       plan.amplifier.empty() ? "" : " -> " + plan.amplifier);
}

std::string visit_words(const JobVisit& visit) {
    std::string text = fmt::format("{} value{}", visit.readings.size(), visit.readings.size() == 1 ? "" : "s");
    if (visit.note) text += fmt::format(", note {}", to_hex(*visit.note).substr(0, 8));
    return fmt::format("{}, {}", text, visit.date);
}

void print_all(Paper& paper, const ShopJob& job) {
    paper.line(2, "state        ",
               job.state == JobState::open
                   ? fmt::format("open since {}", job.started)
                   : fmt::format("{}, started {}, closed {}", job.outcome ? word_of(*job.outcome) : "closed",
                                 job.started, job.closed));
    if (!job.customer.empty()) paper.line(2, "customer     ", job.customer);
    if (!job.initials.empty()) paper.line(2, "by           ", job.initials);
    if (!job.agreed.empty()) paper.line(2, "agreed       ", fmt::format("the customer: {}", job.agreed));
    paper.line(2, "plan         ", plan_words(job.plan));
    if (job.taken_minutes) paper.line(2, "took         ", fmt::format("{} min", *job.taken_minutes));
    if (!job.remarks.empty()) paper.line(2, "remarks      ", job.remarks);
    if (!job.visits.empty()) paper.line(0, "", "Read:");
    for (const auto& visit : job.visits)
        paper.line(2, fmt::format("{:<26} ", place_in_job(visit.path)), visit_words(visit));
    if (!job.actions.empty()) paper.line(0, "", "Temporary actions:");
    print_actions(paper, job);
    paper.line(0, "", "As it came:");
    print_list(paper, job.came);
    if (!job.left.empty()) {
        paper.line(0, "", "As it left:");
        print_list(paper, job.left);
    }
    const auto different = differences(job);
    if (!different.empty()) paper.line(0, "", "Left otherwise than it came:");
    print_differences(paper, job);
}

std::string saved_words(bool written) {
    return written ? "Saved." : "Dry run: nothing was written.";
}

// What comes after this step.
std::string next_words(const ShopJob& job, JobPart part) {
    switch (part) {
        case JobPart::started:
            return fmt::format(
                "Next: fill the list as it came (`tapbook job came {} lamps=ok ... rest=ok`), then "
                "`tapbook job plan {}`.",
                job.number, job.number);
        case JobPart::came_filled:
            return fmt::format("Next: `tapbook job plan {}`.", job.number);
        case JobPart::left_filled:
            return fmt::format("Next: `tapbook job close {} --outcome fine`.", job.number);
        case JobPart::reopened:
            return fmt::format("Next: correct it, then close it again: only what changed is noted anew.");
        case JobPart::actions:
            return has_open_action(job)
                       ? fmt::format(
                             "A job with an open action does not close; `tapbook job action {} --done N` closes it.",
                             job.number)
                       : std::string("None is open.");
        case JobPart::came:
        case JobPart::left:
        case JobPart::all:
            break;
    }
    return {};
}

}  // namespace

std::string job_text(const JobReport& report, JobPart part, const JobScreen& head, const Screen& screen) {
    const ShopJob& job = report.job;
    Paper paper(screen);
    print_head(paper, job, head);
    bool is_change = true;
    switch (part) {
        case JobPart::started:
            paper.line(0, "", "As it came:");
            print_list(paper, job.came);
            break;
        case JobPart::came:
        case JobPart::left:
            is_change = false;
            paper.line(0, "", part == JobPart::came ? "As it came:" : "As it left:");
            print_list(paper, part == JobPart::came ? job.came : job.left);
            print_list_state(paper, job, part == JobPart::came ? CheckList::came : CheckList::left);
            break;
        case JobPart::came_filled:
            paper.line(0, "", "As it came:");
            print_list(paper, job.came);
            print_list_state(paper, job, CheckList::came);
            if (!job.agreed.empty()) paper.line(2, "agreed       ", job.agreed);
            break;
        case JobPart::left_filled:
            paper.line(0, "", "As it left:");
            print_list(paper, job.left);
            print_list_state(paper, job, CheckList::left);
            if (!differences(job).empty()) paper.line(0, "", "Left otherwise than it came:");
            print_differences(paper, job);
            break;
        case JobPart::actions:
            paper.line(0, "", "Temporary actions:");
            print_actions(paper, job);
            break;
        case JobPart::reopened:
            paper.line(0, "", fmt::format("Open again; it was closed on {}.", job.closed));
            break;
        case JobPart::all:
            is_change = false;
            print_all(paper, job);
            break;
    }
    if (!is_change) return paper.take();
    paper.line(0, "", saved_words(report.written));
    paper.line(0, "", next_words(job, part));
    return paper.take();
}

std::string job_list_text(std::span<const ListedJob> list, std::size_t closed, bool practice, const Screen& screen) {
    Paper paper(screen);
    if (practice) paper.line(0, "", "[practice]");
    for (const auto& [job, car] : list)
        paper.line(0,
                   fmt::format("{:<4} {}  {:<9} {}  ", job.number, job.code,
                               job.state == JobState::open ? "open"
                               : job.outcome               ? word_of(*job.outcome)
                                                           : "closed",
                               job.started),
                   job.customer.empty() ? car : fmt::format("{}  ({})", car, job.customer));
    if (list.empty())
        paper.line(0, "", closed == 0 ? "No job yet: `tapbook job start VEHICLE` starts one." : "No job is open.");
    if (closed > 0)
        paper.line(0, "",
                   fmt::format("{} closed job{}: --all lists {} too.", closed, closed == 1 ? "" : "s",
                               closed == 1 ? "it" : "them"));
    return paper.take();
}

}  // namespace tapbook
