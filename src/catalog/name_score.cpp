// See name_score.h.
#include "catalog/name_score.h"

#include <algorithm>
#include <bit>

namespace tapbook {
namespace {

constexpr std::size_t least_start = 3;  // letters that may stand for a longer word
constexpr std::size_t least_left = 2;   // letters of a glued piece that must remain for the model
constexpr std::size_t slack = 2;        // letters that a mistyped make may be longer or shorter in a glued piece
constexpr std::size_t most_words_of_name = 4;

// The piece read as this word or whole name.
std::optional<NameFit> fit_of(const TypedPiece& piece, std::string_view target, int unsaid) {
    const std::size_t longer = std::max(piece.text.size(), target.size()),
                      shorter = std::min(piece.text.size(), target.size());
    const std::size_t limit = edits_considered(longer);
    NameFit fit{piece.words, 0, 0, unsaid, false, piece.body};
    const bool is_start = piece.text.size() >= least_start && shorter < longer && target.starts_with(piece.text);
    if (is_start) {
        fit.cost = cost_of_start;
    } else {
        if (longer - shorter > limit) return std::nullopt;
        const auto foreign = static_cast<std::size_t>(std::popcount(piece.letters & ~letters_of(target)));
        if (foreign > limit) return std::nullopt;
        const std::size_t edits = piece.forward.distance(target);
        if (edits > limit) return std::nullopt;
        fit.edits = static_cast<int>(edits);
        fit.cost = cost_of_edit * fit.edits;
    }
    fit.edits += piece.body_edits;
    fit.cost += cost_of_edit * piece.body_edits;
    return fit;
}

std::vector<std::string_view> words_of_name(const KnownName& name) {
    std::vector<std::string_view> words;
    for (std::string_view left = name.folded; !left.empty() && words.size() < most_words_of_name;) {
        const auto end = std::min(left.find(' '), left.size());
        words.push_back(left.substr(0, end));
        left.remove_prefix(std::min(end + 1, left.size()));
    }
    return words;
}

// Every way to give typed pieces to the words of a name of several words, each word at most one.
void add_word_fits(std::span<const std::string_view> words, const std::vector<TypedPiece>& pieces,
                   const NameFit& before, std::vector<NameFit>& fits) {
    if (words.empty()) {
        if (before.words != 0) fits.push_back(before);
        return;
    }
    NameFit without = before;
    ++without.unsaid;
    add_word_fits(words.subspan(1), pieces, without, fits);
    for (const auto& piece : pieces) {
        if ((piece.words & before.words) != 0 || (piece.body && before.body)) continue;
        const auto fit = fit_of(piece, words.front(), 0);
        if (!fit) continue;
        NameFit next = before;
        next.words |= fit->words;
        next.cost += fit->cost;
        next.edits += fit->edits;
        if (fit->body) next.body = fit->body;
        add_word_fits(words.subspan(1), pieces, next, fits);
    }
}

}  // namespace

NameScore::NameScore(const NameTable& names, const TypedReading& reading)
    : names_(names), pieces_(pieces_of(reading.words, names)) {
    for (const auto& word : reading.words) letters_.push_back(static_cast<int>(word.size()));
    glued_makes_.resize(names.makes().size());
    for (std::uint32_t make = 0; make < names.makes().size(); ++make) {
        make_fits_.push_back(fits_of(names.makes()[make]));
        find_glued_makes(make);
    }
    for (const auto& body : names.bodies()) body_fits_.push_back(fits_of(body));
    for (auto* lists : {&make_fits_, &body_fits_})
        for (auto& list : *lists) std::erase_if(list, [](const NameFit& fit) { return fit.body.has_value(); });
}

std::vector<NameFit> NameScore::fits_of(const KnownName& name) const {
    std::vector<NameFit> fits;
    for (const auto& piece : pieces_)
        if (const auto fit = fit_of(piece, name.glued, 0)) fits.push_back(*fit);
    if (name.folded.size() == name.glued.size()) return fits;
    const auto words = words_of_name(name);
    add_word_fits(words, pieces_, {}, fits);
    return fits;
}

void NameScore::find_glued_makes(std::uint32_t make) {
    const std::string_view name = names_.makes()[make].glued;
    const std::string reversed(name.rbegin(), name.rend());
    const std::size_t limit = edits_considered(name.size());
    if (name.empty()) return;
    for (const auto& piece : pieces_) {
        if (piece.text.size() + slack < name.size() + least_left) continue;
        if (static_cast<std::size_t>(std::popcount(letters_of(name) & ~piece.letters)) > limit) continue;
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
    const bool one_word = model.name.folded.size() == model.name.glued.size();
    for (const auto& make : glued_makes_[model.make]) {
        add_glued_fit(make, model.name.glued, 0, fits);
        if (one_word) continue;
        const auto words = words_of_name(model.name);
        for (const auto word : words) add_glued_fit(make, word, static_cast<int>(words.size()) - 1, fits);
    }
    fits.push_back({0, 0, 0, static_cast<int>(most_words_of_name), false, {}});  // the model was not typed
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
