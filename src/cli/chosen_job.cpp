// See chosen_job.h.
#include "cli/chosen_job.h"

#include <fmt/format.h>

#include <algorithm>

#include "cli/chosen.h"
#include "files/files.h"

namespace tapbook {
namespace {

bool is_number(std::string_view word) {
    return !word.empty() && std::all_of(word.begin(), word.end(), [](char c) { return c >= '0' && c <= '9'; });
}

const ShopJob* find_job(const std::vector<ShopJob>& jobs, const std::string& typed) {
    const auto code = parse_job_code(typed);
    const auto found = std::find_if(jobs.begin(), jobs.end(), [&](const ShopJob& job) {
        return (code && job.code == *code) || std::to_string(job.number) == typed;
    });
    return found == jobs.end() ? nullptr : &*found;
}

std::string job_line(const ShopJob& job) {
    return fmt::format("\n  {:<4} {}  {}/{}", job.number, job.code, job.vehicle, job.system);
}

const ShopJob& only_open_job(const std::vector<ShopJob>& jobs) {
    const ShopJob* only = nullptr;
    std::string list;
    int open = 0;
    for (const auto& job : jobs) {
        if (job.state != JobState::open) continue;
        only = &job;
        ++open;
        list += job_line(job);
    }
    if (open == 0) throw NoAnswer("no job is open", "`tapbook job start VEHICLE` starts one");
    if (open > 1) throw UsageError(fmt::format("{} jobs are open; say which:{}", open, list), "by number or code");
    return *only;
}

}  // namespace

ShopJob chosen_job(const std::vector<ShopJob>& jobs, const std::string& typed) {
    if (typed.empty()) return only_open_job(jobs);
    if (const ShopJob* found = find_job(jobs, typed)) return *found;
    std::vector<std::string_view> codes;
    for (const auto& job : jobs) codes.push_back(job.code);
    const auto near = is_number(typed) ? std::nullopt : nearest(typed, codes);
    throw NoAnswer(fmt::format("there is no job {}", shown(typed)),
                   near ? fmt::format("did you mean {}?", *near) : "`tapbook job list --all` shows all jobs");
}

bool is_job_word(const std::vector<ShopJob>& jobs, const std::string& word) {
    const bool is_plain = word.find_first_not_of("abcdefghijklmnopqrstuvwxyz") == std::string::npos;
    return is_number(word) || find_job(jobs, word) != nullptr || (parse_job_code(word) && !is_plain);
}

std::string car_words_of(const Catalog& catalog, const ShopJob& job) {
    std::string car = job.vehicle;
    for (const auto& name : catalog.vehicle_names())
        if (name.path == job.vehicle) car = fmt::format("{} {} {}", name.make, name.model, name.body);
    return fmt::format("{}{}, {}", car, job.year ? fmt::format(" {}", *job.year) : std::string(), job.system);
}

JobWords job_and_items(const std::vector<std::string>& words) {
    JobWords split;
    for (const auto& word : words) {
        if (&word == &words.front() && word.find('=') == std::string::npos)
            split.job = word;
        else
            split.items.push_back(word);
    }
    return split;
}

JobChecks typed_checks(const std::vector<std::string>& items) {
    try {
        return read_checks(items, {"job", 0, 0, {}});
    } catch (const InputRefused& refused) {
        throw UsageError(refused.what(), refused.complaints().front().hint);
    }
}

std::string system_of_job(const CarFacts& car, const ShopJob& job, const Parsed& parsed) {
    const std::string system = parsed.text("--system").value_or(job.system);
    if (system != unrecorded_system) check_system(car, system);
    return system;
}

}  // namespace tapbook
