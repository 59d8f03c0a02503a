// How is a job said: its lists, its plan, a reading explained, its closing? Text and JSON of the same values.
#pragma once

#include <span>
#include <string>

#include "report/json.h"
#include "report/screen.h"
#include "rules/rules.h"

namespace tapbook {

// What stands at the head of every screen of a job.
struct JobScreen {
    std::string car;  // make, model, body, year, sound system
    bool practice = false;
};

// Which part of a job is shown after a change.
enum class JobPart { started, came, came_filled, left, left_filled, actions, reopened, all };

std::string job_text(const JobReport& report, JobPart part, const JobScreen& head, const Screen& screen);
std::string job_json(const JobReport& report);

struct ListedJob {
    ShopJob job;
    std::string car;
};
// `closed`: how many closed jobs are not listed.
std::string job_list_text(std::span<const ListedJob> list, std::size_t closed, bool practice, const Screen& screen);
std::string job_list_json(std::span<const ListedJob> list);

std::string job_plan_text(const JobPlanAnswer& answer, const Screen& screen);
std::string job_plan_json(const JobPlanAnswer& answer);

std::string reading_text(const ReadingAnswer& answer, const Screen& screen);
std::string reading_json(const ReadingAnswer& answer);

// Those of one file, one after another.
std::string readings_text(std::span<const ReadingAnswer> answers, const Screen& screen);
std::string readings_json(const JobReport& report, std::span<const ReadingAnswer> answers);

std::string job_close_text(const JobCloseReport& report, const JobScreen& head, const Screen& screen);
std::string job_close_json(const JobCloseReport& report);

// Shared by the JSON of jobs.
void write_job(Json& json, const ShopJob& job);
void write_readings(Json& json, const Values& readings);  // "readings": {...}
void write_install(Json& json, const Install& install);

}  // namespace tapbook
