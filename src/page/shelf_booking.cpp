// What is booked on the shelf, and taken back? By the same functions as `tapbook shelf count`. A form that was sent
// twice, or was loaded before somebody else booked, asks back instead of booking again.
#include <fmt/format.h>

#include "page/pages.h"
#include "page/shelf_parts.h"

namespace tapbook {
namespace {

BookingForm typed_form(const FormFields& fields) {
    BookingForm form;
    form.booking = fields.text("booking").value_or("");
    form.pieces = fields.text("pieces").value_or("");
    form.job = fields.text("job").value_or("");
    form.words = nfc(fields.text("words").value_or(""));
    return form;
}

std::optional<int> job_called(const Catalog& catalog, const std::string& code) {
    for (const auto& job : catalog.jobs())
        if (job.code == code) return job.number;
    return std::nullopt;
}

// What is to be booked; complaints in the form for what cannot be.
StockChange typed_change(const Catalog& catalog, const std::string& part, BookingForm& form) {
    StockChange change;
    change.part = part;
    change.words = form.words;
    const auto booking = parse_word<Booking>(form.booking);
    if (!booking) form.booking_said = "receive, use, correct, order or cancel? press one";
    change.booking = booking.value_or(Booking::correct);
    const auto pieces = read_pieces(form.pieces, change.booking);
    if (const auto* refusal = std::get_if<PiecesRefusal>(&pieces))
        form.pieces_said = fmt::format("{}: {}", refusal->message, refusal->hint);
    else
        change.pieces = std::get<int>(pieces);
    if (!is_utf8(form.words) || hidden_character(form.words)) form.words_said = "write it in plain characters";
    if (form.words.size() > most_text_bytes)
        form.words_said = fmt::format("longer than {} bytes: shorten it", most_text_bytes);
    if (form.job.empty()) return change;
    change.job = job_called(catalog, form.job);
    if (change.booking != Booking::use)
        form.job_said = "a job belongs to use: choose no job";
    else if (!change.job)
        form.job_said = "there is no such job";
    return change;
}

bool has_complaint(const BookingForm& form) {
    return !form.booking_said.empty() || !form.pieces_said.empty() || !form.job_said.empty() ||
           !form.words_said.empty();
}

PageAnswer refused(const Catalog& catalog, const PageRequest& request, BookingForm form, int status, std::string why) {
    form.telling = {Telling::wrong, "Not saved yet.", std::move(why)};
    form.status = status;
    return counted_page(catalog, request, counted_part(catalog, request.caught.front()), form);
}

PageAnswer book(PageDesk& desk, const PageRequest& request) {
    Catalog catalog = desk.catalog_to_write();
    const CountedPart part = counted_part(catalog, request.caught.front());
    BookingForm form = typed_form(request.form);
    const StockChange change = typed_change(catalog, part.row.part, form);
    if (has_complaint(form)) return refused(catalog, request, form, 422, "Something cannot be taken: see below.");
    if (request.form.text("last") != std::to_string(last_movement(part.row)))
        return refused(
            catalog, request, form, 409,
            part.row.movements.empty()
                ? std::string("This page is older than what lies on the shelf now. Look, and book once more.")
                : fmt::format("This was booked since the page was loaded: {}. If it is what you meant, it is "
                              "done; if not, book once more.",
                              movement_words(part.row.movements.back())));
    try {
        const StockReport report = catalog.book_stock(change, request.today);
        if (report.movement)
            return see_other(
                address(counted_address(part.row.part),
                        {{"booked", std::to_string(last_movement(counted_part(catalog, part.row.part).row))}}));
        BookingForm empty;
        empty.telling = {Telling::done, fmt::format("{}: it was so already", lying_words(report.row.terms)), {}};
        return counted_page(catalog, request, part, empty);
    } catch (const InputRefused& refusal) {
        const Complaint& why = refusal.complaints().front();
        form.pieces_said = why.message;
        return refused(catalog, request, form, 422, upper_first(why.hint));
    }
}

// Takes back the last movement of a part, and only while it is the last thing this shop did.
PageAnswer undo(PageDesk& desk, const PageRequest& request) {
    Catalog catalog = desk.catalog_to_write();
    const std::string path = request.form.text("part").value_or("");
    const CountedPart part = counted_part(catalog, path);
    const bool is_last =
        last_movement(part.row) > 0 && request.form.text("movement") == std::to_string(last_movement(part.row));
    if (!is_last || !catalog.undo(request.today, true).words.starts_with(fmt::format("shelf count {} ", path)))
        throw PageRefused(409, "something else was saved since: nothing was undone",
                          "book the difference, or correct to what lies there");
    const UndoReport report = catalog.undo(request.today);
    BookingForm form;
    form.telling = {Telling::done, fmt::format("Undone: {}.", report.words), {}};
    return counted_page(catalog, request, counted_part(catalog, path), form);
}

constexpr Route list[] = {{PageMethod::post, "/shelf/count/{...}", RouteFor::paired_phone, book},
                          {PageMethod::post, "/shelf/undo", RouteFor::paired_phone, undo}};

}  // namespace

std::span<const Route> shelf_booking_routes() {
    return list;
}

}  // namespace tapbook
