// How is a vehicle, a sound system, a circuit or a tap point named, for ever and in every shop? By a path of slugs:
// make/model/body/first-year, then /system, /circuit, /tap-point. What people read is a field; the path is never
// edited.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tapbook {

inline constexpr std::size_t vehicle_depth = 4;
inline constexpr std::size_t system_depth = 5;
inline constexpr std::size_t circuit_depth = 6;
inline constexpr std::size_t tap_depth = 7;
inline constexpr std::string_view unrecorded_system = "unrecorded";  // a car whose sound system was not written down

// True for [a-z0-9-]{1,40}.
bool is_slug(std::string_view text);

// What keeps `text` from being a slug, ready for a message; empty when it is one.
std::optional<std::string> slug_complaint(std::string_view text);

// A slug made from what people read: "Tarn Estate" -> "tarn-estate". Empty when nothing usable is left.
std::string slug_from(std::string_view text);

// The parts between the slashes, empty ones included ("a/" has two); none for an empty path.
std::vector<std::string_view> path_parts(std::string_view path);
std::string path_join(std::string_view path, std::string_view slug);

// The first `depth` parts; the whole path when it has fewer.
std::string_view path_head(std::string_view path, std::size_t depth);

// The path without its first `depth` parts ("" when nothing is left).
std::string_view path_tail(std::string_view path, std::size_t depth);

// Does `words` (slugs joined by '/' or spaces) name `path` by an exact run of parts at its end? "tarn/base" names
// ".../tarn/base" but not ".../tarn/base/front-left".
bool is_tail_run(std::string_view path, std::string_view words);

}  // namespace tapbook
