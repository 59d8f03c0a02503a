// See name_score.h.
#include "catalog/name_score.h"

#include <algorithm>

namespace tapbook {
namespace {

constexpr std::size_t least_start = 3;  // letters that may stand for a longer word
constexpr std::size_t least_left = 2;   // letters of a glued piece that must remain for the model
constexpr std::size_t slack = 2;        // letters that a mistyped make may be longer or shorter in a glued piece
constexpr std::size_t most_words_of_name = 4;

// Are there more than `limit` letters in one set that the other lacks? (Counting bits is a call on old processors.)
bool more_foreign(std::uint64_t some, std::uint64_t others, std::size_t limit) {
    std::uint64_t foreign = some & ~others;
    for (; foreign != 0 && limit > 0; --limit) foreign &= foreign - 1;
    return foreign != 0;
}

// The piece read as this word or whole name. REQUIRES: may_fit().
std::optional<NameFit> fit_of(const TypedPiece& piece, std::string_view target) {
    NameFit fit{piece.words, cost_of_start, 0, 0, false, piece.body};
    const bool is_start =
        piece.text.size() >= least_start && piece.text.size() < target.size() && target.starts_with(piece.text);
    if (!is_start) {
        const std::size_t edits = piece.forward.distance(target);
        if (edits > edits_considered(std::max(piece.text.size(), target.size()))) return std::nullopt;
        fit.edits = static_cast<int>(edits);
        fit.cost = cost_of_edit * fit.edits;
    }
    fit.edits += piece.body_edits;
    fit.cost += cost_of_edit * piece.body_edits;
    return fit;
}

// The first few words of a name.
struct NameWords {
    std::array<std::string_view, most_words_of_name> words;
    std::size_t count = 0;

    explicit NameWords(std::string_view folded) {
        while (!folded.empty() && count < words.size()) {
            const auto end = std::min(folded.find(' '), folded.size());
            words[count++] = folded.substr(0, end);
            folded.remove_prefix(std::min(end + 1, folded.size()));
        }
    }
    std::span<const std::string_view> all() const { return {words.data(), count}; }
};

// Every way to read pieces as words of a name of several words, each word at most once.
void add_word_fits(std::span<const std::vector<NameFit>> fits_of_words, const NameFit& before,
                   std::vector<NameFit>& fits) {
    if (fits_of_words.empty()) {
        if (before.words != 0) fits.push_back(before);
        return;
    }
    NameFit without = before;
    ++without.unsaid;
    add_word_fits(fits_of_words.subspan(1), without, fits);
    for (const auto& fit : fits_of_words.front()) {
        if ((fit.words & before.words) != 0 || (fit.body && before.body)) continue;
        NameFit next = before;
        next.words |= fit.words;
        next.cost += fit.cost;
        next.edits += fit.edits;
        if (fit.body) next.body = fit.body;
        add_word_fits(fits_of_words.subspan(1), next, fits);
    }
}

}  // namespace

NameScore::NameScore(const NameTable& names, const TypedReading& reading)
    : names_(names), pieces_(pieces_of(reading.words, names)) {
    for (const auto& word : reading.words) letters_.push_back(static_cast<int>(word.size()));
    for (const auto& piece : pieces_) keys_.push_back({piece.letters, piece.text.size(), piece.text[0]});
    glued_makes_.resize(names.makes().size());
    for (std::uint32_t make = 0; make < names.makes().size(); ++make) {
        make_fits_.push_back(fits_of(names.makes()[make]));
        find_glued_makes(make);
    }
    for (const auto& body : names.bodies()) body_fits_.push_back(fits_of(body));
    for (auto* lists : {&make_fits_, &body_fits_})
        for (auto& list : *lists) std::erase_if(list, [](const NameFit& fit) { return fit.body.has_value(); });
    some_body_fits_ = std::any_of(body_fits_.begin(), body_fits_.end(), [](const auto& fits) { return !fits.empty(); });
}

// Most pieces are told apart from a name by their length or letters alone, without looking at the piece itself.
bool NameScore::may_fit(const PieceKey& key, std::string_view target, std::uint64_t letters) {
    if (key.size >= least_start && key.size < target.size() && key.first == target[0]) return true;
    const std::size_t longer = std::max(key.size, target.size()), shorter = std::min(key.size, target.size());
    const std::size_t limit = edits_considered(longer);
    return longer - shorter <= limit && !more_foreign(key.letters, letters, limit) &&
           !more_foreign(letters, key.letters, limit);
}

void NameScore::add_fits(std::string_view target, std::vector<NameFit>& fits) const {
    const std::uint64_t letters = letters_of(target);
    for (std::size_t i = 0; i < keys_.size(); ++i) {
        if (!may_fit(keys_[i], target, letters)) continue;
        if (const auto fit = fit_of(pieces_[i], target)) fits.push_back(*fit);
    }
}

std::vector<NameFit> NameScore::fits_of(const KnownName& name) const {
    std::vector<NameFit> fits;
    add_fits(name.glued, fits);
    if (name.folded.size() == name.glued.size()) return fits;
    std::array<std::vector<NameFit>, most_words_of_name> fits_of_words;
    const NameWords words(name.folded);
    bool some = false;
    for (std::size_t i = 0; i < words.count; ++i) {
        add_fits(words.words[i], fits_of_words[i]);
        some = some || !fits_of_words[i].empty();
    }
    if (some) add_word_fits({fits_of_words.data(), words.count}, {}, fits);
    return fits;
}

void NameScore::find_glued_makes(std::uint32_t make) {
    const std::string_view name = names_.makes()[make].glued;
    const std::string reversed(name.rbegin(), name.rend());
    const std::size_t limit = edits_considered(name.size());
    if (name.empty()) return;
    for (const auto& piece : pieces_) {
        if (piece.text.size() + slack < name.size() + least_left) continue;
        if (more_foreign(letters_of(name), piece.letters, limit)) continue;
        for (const bool make_first : {true, false}) {
            GluedMake glued{&piece, make_first, name.size() - std::min(slack, name.size() - 1), 0, {}};
            glued.most = std::min(name.size() + slack, piece.text.size() - least_left);
            (make_first ? piece.forward : piece.backward)
                .prefix_distances(make_first ? name : reversed, glued.distances);
            for (std::size_t i = glued.least; i <= glued.most; ++i)
                if (glued.distances[i] <= limit) {
                    glued_makes_[make].push_back(glued);
                    break;
                }
        }
    }
}

void NameScore::add_glued_fit(const GluedMake& make, std::string_view model, int unsaid,
                              std::vector<NameFit>& fits) const {
    std::array<std::uint8_t, TypedPattern::longest + 1> distances{};
    const TypedPiece& piece = *make.piece;
    if (make.make_first)
        piece.backward.prefix_distances(std::string(model.rbegin(), model.rend()), distances);
    else
        piece.forward.prefix_distances(model, distances);
    std::size_t edits = piece.text.size();
    const std::size_t limit = edits_considered(model.size());
    for (std::size_t i = make.least; i <= make.most; ++i)
        if (const std::size_t of_model = distances[piece.text.size() - i]; of_model <= limit)
            edits = std::min<std::size_t>(edits, make.distances[i] + of_model);
    if (edits > edits_considered(piece.text.size())) return;
    const int all = static_cast<int>(edits) + piece.body_edits;
    fits.push_back({piece.words, cost_of_edit * all, all, unsaid, true, piece.body});
}

std::vector<NameFit> NameScore::model_fits(const NamedModel& model) const {
    std::vector<NameFit> fits = fits_of(model.name);
    if (glued_makes_[model.make].empty()) return fits;
    const NameWords words(model.name.folded);
    for (const auto& make : glued_makes_[model.make]) {
        add_glued_fit(make, model.name.glued, 0, fits);
        if (words.count < 2) continue;
        for (const auto word : words.all()) add_glued_fit(make, word, static_cast<int>(words.count) - 1, fits);
    }
    return fits;
}

std::optional<CarScore> NameScore::score_of(const NameFit& fit) const {
    int letters = 0, named = 0;
    for (std::size_t i = 0; i < letters_.size() && i < most_words; ++i)
        if ((fit.words >> i & 1) != 0) {
            letters += letters_[i];
            ++named;
        }
    const int words = static_cast<int>(letters_.size());
    if (named * 2 < words || fit.edits > static_cast<int>(edits_believed(static_cast<std::size_t>(letters))))
        return std::nullopt;
    return CarScore{fit.cost + cost_of_foreign_word * (words - named), fit.unsaid};
}

}  // namespace tapbook
