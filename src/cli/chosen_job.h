// Which job did the words name? A number, a code, or nothing when only one job is open. A typing mistake is answered
// with what was probably meant.
#pragma once

#include "cli/command.h"

namespace tapbook {

// The job called `typed`; the only open one for "". Throws NoAnswer (none, or none of that name, with the nearest), or
// UsageError with the list when "" could mean several.
ShopJob chosen_job(const std::vector<ShopJob>& jobs, const std::string& typed);

// Does the word mean a job: digits, the code of one, or what looks like a mistyped code (a plain word does not)?
bool is_job_word(const std::vector<ShopJob>& jobs, const std::string& word);

// Make, model, body, model year and sound system of a job; the path when the car is not there any more.
std::string car_words_of(const Catalog& catalog, const ShopJob& job);

// What the words of `came`, `left` and `close` say: a job (or nothing), then the items.
struct JobWords {
    std::string job;
    std::vector<std::string> items;
};
JobWords job_and_items(const std::vector<std::string>& words);

// The items typed. Throws UsageError.
JobChecks typed_checks(const std::vector<std::string>& items);

// The system of the job, or --system. Throws NoAnswer for one the car does not have.
std::string system_of_job(const CarFacts& car, const ShopJob& job, const Parsed& parsed);

}  // namespace tapbook
