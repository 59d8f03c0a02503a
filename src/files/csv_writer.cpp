// See csv_writer.h. The list of first characters is OWASP's, "CSV Injection", with the wide forms that some spreadsheet
// programs read as the narrow ones.
#include "files/csv_writer.h"

#include <algorithm>

namespace tapbook {
namespace {

constexpr std::string_view dangerous[] = {
    "=", "+", "-", "@", "\t", "\r", "\n", "\xEF\xBC\x9D", "\xEF\xBC\x8B", "\xEF\xBC\x8D", "\xEF\xBC\xA0"};
constexpr char guard = '\'';

bool needs_guard(std::string_view text) {
    return text.starts_with(guard) || std::any_of(std::begin(dangerous), std::end(dangerous),
                                                  [&](std::string_view start) { return text.starts_with(start); });
}

bool is_plain_number(std::string_view text) {
    if (text.starts_with('-')) text.remove_prefix(1);
    return !text.empty() && text.find_first_not_of("0123456789.") == std::string_view::npos;
}

}  // namespace

std::string guarded(std::string_view text) {
    return needs_guard(text) ? guard + std::string(text) : std::string(text);
}

std::string_view unguarded(std::string_view cell) {
    return cell.starts_with(guard) && needs_guard(cell.substr(1)) ? cell.substr(1) : cell;
}

CsvSheet::CsvSheet(char separator) : separator_(separator), out_("\xEF\xBB\xBF") {}

void CsvSheet::row(const std::vector<CsvValue>& cells) {
    for (std::size_t i = 0; i < cells.size(); ++i) {
        if (i != 0) out_ += separator_;
        cell(cells[i]);
    }
    out_ += "\r\n";
}

void CsvSheet::cell(const CsvValue& value) {
    const auto* number = std::get_if<CsvNumber>(&value);
    if (number != nullptr && is_plain_number(number->written)) {
        out_ += number->written;
        return;
    }
    const std::string& text = number == nullptr ? std::get<std::string>(value) : number->written;
    const bool guard_it = needs_guard(text);
    // blanks at the ends are quoted too: some programs drop them otherwise
    const bool quote = guard_it || text.find_first_of(",;\t\"\r\n") != std::string::npos || text.starts_with(' ') ||
                       text.ends_with(' ');
    if (!quote) {
        out_ += text;
        return;
    }
    out_ += '"';
    for (const char c : guarded(text)) {
        if (c == '"') out_ += '"';
        out_ += c;
    }
    out_ += '"';
}

}  // namespace tapbook
