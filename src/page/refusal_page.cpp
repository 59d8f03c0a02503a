// See refusal_page.h.
#include "page/refusal_page.h"

#include "page/page_html.h"

namespace tapbook {
namespace {

std::string_view title_of(int status) {
    switch (status) {
        case 403:
            return "Not let in";
        case 404:
            return "Not there";
        case 503:
            return "Busy";
        default:  // not our enum
            return status < 500 ? "Not understood" : "Something went wrong";
    }
}

}  // namespace

PageAnswer refusal_page(int status, std::string_view message, std::string_view hint, bool practice) {
    const PageRequest nobody;
    Page page(nobody, practice, title_of(status));
    write_telling(page.html(), Telling::stop, message, hint);
    return page.answer(status);
}

int status_of(CatalogTrouble trouble) {
    switch (trouble) {
        case CatalogTrouble::not_found:
            return 404;
        case CatalogTrouble::busy:
            return 503;
        case CatalogTrouble::not_permitted:
            return 403;
        case CatalogTrouble::missing:
        case CatalogTrouble::already_there:
        case CatalogTrouble::not_ours:
        case CatalogTrouble::newer:
        case CatalogTrouble::wrong_kind:
            return 409;
        case CatalogTrouble::input_output:
        case CatalogTrouble::damaged:
            return 500;
    }
    return 500;
}

}  // namespace tapbook
