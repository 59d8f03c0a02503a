// shelf count: what lies on the shelf, and booking what comes and goes.
#include <fmt/format.h>

#include "cli/chosen_job.h"

namespace tapbook {
namespace {

constexpr std::size_t most_text_bytes = 4000;

std::string plain_words(const Parsed& parsed) {
    const std::string text = parsed.text("--words").value_or("");
    if (!is_utf8(text) || hidden_character(text)) throw UsageError("--words: write it in plain characters");
    if (text.size() > most_text_bytes)
        throw UsageError(fmt::format("--words is longer than {} bytes", most_text_bytes), "shorten it");
    return nfc(text);
}

// The part called `typed`. Throws NoAnswer with the nearest.
std::string chosen_part(const Catalog& catalog, const std::vector<StockRow>& rows, const std::string& typed) {
    std::vector<std::string> paths;
    for (const auto& row : rows) paths.push_back(row.part);
    for (const auto& amplifier : catalog.amplifiers()) paths.push_back(amplifier.path);
    const std::vector<std::string_view> known(paths.begin(), paths.end());
    for (const auto& path : paths)
        if (path == typed) return path;
    const auto near = nearest(typed, known);
    throw NoAnswer(fmt::format("there is no part \"{}\"", shown(typed)),
                   near ? fmt::format("did you mean {}?", *near) : "tapbook shelf count lists them");
}

int typed_pieces(const std::string& typed, Booking booking) {
    const auto read = read_pieces(typed, booking);
    if (const auto* refusal = std::get_if<PiecesRefusal>(&read)) throw UsageError(refusal->message, refusal->hint);
    return std::get<int>(read);
}

Booking typed_booking(const std::string& typed) {
    if (const auto booking = parse_word<Booking>(typed)) return *booking;
    const auto known = spellings<Booking>();
    const auto near = nearest(typed, known);
    throw UsageError(fmt::format("shelf count does not know \"{}\"", shown(typed)),
                     near ? fmt::format("did you mean {}?", *near) : "receive, use, correct, order or cancel");
}

Exit show(Session& session, const Parsed& parsed) {
    if (parsed.text("--job") || parsed.text("--words"))
        throw UsageError("--job and --words belong to what is booked",
                         "for example `tapbook shelf count PART use 1 --job 5`");
    session.database = reading_place(session);
    const Catalog catalog = Catalog::open(session.database, Access::read);
    const auto rows = catalog.stock();
    if (parsed.words.empty()) {
        session.answer(stock_text(rows, catalog.is_practice(), session.screen), stock_json(rows));
        return Exit::done;
    }
    const std::string part = chosen_part(catalog, rows, parsed.words.front());
    for (const auto& row : rows)
        if (row.part == part) session.answer(stock_part_text(row, session.screen), stock_part_json(row));
    if (session.out.empty())
        throw NoAnswer(fmt::format("{} was never counted here", part),
                       fmt::format("`tapbook shelf count {} correct N` says how many lie there", part));
    return Exit::done;
}

}  // namespace

Exit run_shelf_count(Session& session, const Parsed& parsed) {
    if (parsed.words.size() <= 1) return show(session, parsed);
    if (parsed.words.size() != 3)
        throw UsageError("how many pieces?", "for example `tapbook shelf count PART receive 4`");
    StockChange change;
    change.booking = typed_booking(parsed.words[1]);
    change.pieces = typed_pieces(parsed.words[2], change.booking);
    change.words = plain_words(parsed);
    if (parsed.text("--job") && change.booking != Booking::use)
        throw UsageError("--job belongs to use", "leave it out");
    Catalog catalog = Catalog::open(session.database, Access::write);
    change.part = chosen_part(catalog, catalog.stock(), parsed.words.front());
    if (const auto job = parsed.text("--job")) change.job = chosen_job(catalog.jobs(), *job).number;
    const StockReport report = catalog.book_stock(change, session.today, parsed.flag("--dry-run"));
    session.answer(booking_text(report, session.screen), booking_json(report));
    return Exit::done;
}

}  // namespace tapbook
