// What do looking at a counted part and booking on it share? For this folder only.
#pragma once

#include <optional>
#include <string>

#include "page/page_html.h"

namespace tapbook {

// The page of a part, by its path.
std::string counted_address(std::string_view part);

// One part with what was booked on it, and the one after it in the list for counting; "" after the last.
struct CountedPart {
    StockRow row;
    std::string next;
};

// Also of an amplifier that was never counted. Throws PageRefused (404).
CountedPart counted_part(const Catalog& catalog, const std::string& path);

// What stands in the form: as typed, and what is wrong with it.
struct BookingForm {
    std::string booking, pieces, job, words;
    std::string booking_said, pieces_said, job_said, words_said;
    struct Said {
        Telling telling = Telling::done;
        std::string title, text;
    };
    std::optional<Said> telling;
    bool can_undo = false;  // the last movement, which was booked just now
    int status = 200;
};

PageAnswer counted_page(const Catalog& catalog, const PageRequest& request, const CountedPart& part,
                        const BookingForm& form);

// "2 -> 6 on the shelf, 0 -> 0 on order", of the last movement. REQUIRES: there is one.
std::string last_booked_words(const StockRow& row);

// The number of the last movement; 0 without one.
int last_movement(const StockRow& row);

}  // namespace tapbook
