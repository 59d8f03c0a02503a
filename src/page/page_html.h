// What stands around every page, and what are forms made of? One frame, one look: the head with the way to the main
// pages, the practice mark, the foot; boxes with what is wrong beside them; one big action low on the screen.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "page/address.h"
#include "page/page_desk.h"
#include "page/request.h"
#include "report/report.h"

namespace tapbook {

// A page is at most this large; what does not fit goes onto a further one.
inline constexpr std::size_t most_page_bytes = 60'000;
// Where a list is cut, so that what follows it still fits.
inline constexpr std::size_t page_is_full_at = 44'000;

enum class PagePart { find, jobs, other, shelf };

// A page being written: the frame is there when it is made, and closed by answer().
class Page {
  public:
    // REQUIRES: `request` outlives the page.
    Page(const PageRequest& request, bool practice, std::string_view title, PagePart part = PagePart::other);

    Html& html() { return html_; }
    const PageRequest& request() const { return request_; }
    // Will a list that goes on no longer fit?
    bool is_full() const { return html_.size() > page_is_full_at; }
    PageAnswer answer(int status = 200);

  private:
    const PageRequest& request_;
    Html html_;
};

// What was done or refused, at the top of a page.
enum class Telling { done, wrong, stop };
void write_telling(Html& html, Telling telling, std::string_view title, std::string_view text = {});

// A form that changes something: POST with the hidden token. Closed by end().
void begin_form(Html& html, const PageRequest& request, const std::string& action, std::string_view name = {});
void write_hidden(Html& html, std::string_view name, std::string_view value);

// The big action of a form. A phone that is not paired is shown the way to pairing instead.
void write_action(Html& html, const PageRequest& request, std::string_view words, std::string_view value = {});
// A further one beside it; `value` of the field "then" says which was pressed.
void write_second_action(Html& html, const PageRequest& request, std::string_view words, std::string_view value = {});

// A box of a form.
struct FormBox {
    std::string name, label, value = {}, unit = {}, complaint = {}, remark = {};
    bool is_number = false, is_wide = false;
};
void write_form_box(Html& html, const FormBox& box);

// One of several words: value and what people read.
using FormChoices = std::vector<std::pair<std::string, std::string>>;
void write_select(Html& html, std::string_view name, std::string_view label, const FormChoices& choices,
                  std::string_view chosen, std::string_view complaint = {});
// The same as a row of buttons to press; for few and short ones. `chosen` may be none of them.
void write_radios(Html& html, std::string_view name, std::string_view label, const FormChoices& choices,
                  std::string_view chosen, std::string_view complaint = {});
void write_tick(Html& html, std::string_view name, std::string_view label, bool ticked);

// A grade as its word in a frame of its own for each.
void write_grade(Html& html, Grade grade);
void write_verdict(Html& html, Verdict verdict);

void write_link(Html& html, const std::string& address, std::string_view words, std::string_view kind = {});
// Name and value under each other; left out where the value is empty.
void write_fact(Html& html, std::string_view name, std::string_view value);

// "Orlin Brelk sedan, 2012 to 2018".
std::string car_title(const Vehicle& car, std::optional<int> year);
std::string years_of(int first, int last);
std::string upper_first(std::string text);

}  // namespace tapbook
