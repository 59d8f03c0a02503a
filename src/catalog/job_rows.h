// How does a job lie in its tables? For the files of this folder only.
#pragma once

#include "catalog/jobs.h"
#include "catalog/state.h"

namespace tapbook {

// All jobs by number. Empty where the catalog is older than jobs and may only be read.
std::vector<ShopJob> read_jobs(sqlite::Database& database);

// Throws CatalogError not_found.
ShopJob read_job_row(sqlite::Database& database, int number);

// Inserts the job and all that hangs on it, or replaces it. REQUIRES an open transaction.
void put_job(sqlite::Database& database, const ShopJob& job);

// The number that follows.
int next_job_number(sqlite::Database& database);

bool has_job_code(sqlite::Database& database, std::string_view code);

// "job 3", the place of a refusal.
SourcePlace place_of_job(const ShopJob& job);

// Throws InputRefused when the job is closed.
void need_open(const ShopJob& job);

}  // namespace tapbook
