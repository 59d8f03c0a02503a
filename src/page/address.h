// How is an address of a page written, so that whatever stands in it is one piece of it and nothing else?
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace tapbook {

// `text` percent-encoded: everything but letters, digits and "-._~"; "/" stays when it parts segments.
std::string encoded(std::string_view text);
std::string encoded_path(std::string_view path);

// "/car/a/b?year=2016": a path already written, then what of the query is not empty.
std::string address(std::string_view path, std::initializer_list<std::pair<std::string_view, std::string>> query = {});

// The pages of a car and of a job.
std::string car_address(std::string_view vehicle, std::optional<int> year = {}, std::string_view system = {});
std::string job_address(std::string_view code, std::string_view part = {});

}  // namespace tapbook
