// What did the browser send? Addresses and forms (application/x-www-form-urlencoded, WHATWG URL standard) to texts,
// each decoded exactly once; what is spelt to slip past a check is refused, never repaired.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "page/request.h"

namespace tapbook {

// A form with more is not one of ours.
inline constexpr std::size_t most_form_fields = 500, longest_field_name = 100, longest_field_text = 65536;

struct FormTrouble {
    std::string message;  // "field 3 is not UTF-8"
};

// The fields of a body or a query. Line ends come as CR LF and become line feeds. Refused: "%" without two hexadecimal
// digits, text that is not UTF-8, control characters other than tab and line end, and what is over the limits above.
// Nothing between two "&" is no field.
std::variant<FormFields, FormTrouble> read_form(std::string_view sent);

// The fields as a browser would send them: read_form() gives them back.
std::string form_text(const FormFields& fields);

// A request's target in its two halves.
struct Address {
    std::vector<std::string> segments;  // of the path, decoded; none for "/"
    std::string_view query;             // as sent, without "?"; valid as long as the target
};

// Only a path of this server: absent for a whole address, "*", an empty segment ("//", "/car/"), "." and "..", a
// segment that holds "/", "\" or a control character when decoded, a bad "%", or what is not UTF-8.
std::optional<Address> read_address(std::string_view target);

}  // namespace tapbook
