// Which pages are there? One part of the route table for each file of pages; route.cpp puts them together.
#pragma once

#include <span>

#include "page/route.h"

namespace tapbook {

std::span<const Route> find_routes();
std::span<const Route> car_routes();
std::span<const Route> advice_routes();
std::span<const Route> changes_routes();
std::span<const Route> job_routes();
std::span<const Route> job_start_routes();
std::span<const Route> job_plan_routes();
std::span<const Route> reading_routes();
std::span<const Route> job_list_routes();
std::span<const Route> job_close_routes();
std::span<const Route> note_routes();
std::span<const Route> sheet_routes();
std::span<const Route> shelf_routes();
std::span<const Route> shelf_count_routes();
std::span<const Route> shelf_booking_routes();
std::span<const Route> why_routes();

}  // namespace tapbook
