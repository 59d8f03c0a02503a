// What does it cost to read the typed words as a given car? Each make, model and body is compared with the typed words
// once; a car's cost is the cheapest way to give every word to at most one of its three names. For the files of this
// folder.
#pragma once

#include <array>

#include "catalog/typed_words.h"

namespace tapbook {

// Some typed words read as one name (or as make and model glued together).
struct NameFit {
    WordSet words = 0;
    int cost = 0, edits = 0;
    int unsaid = 0;                     // words of the name that were not typed
    bool holds_make = false;            // the make is in it, glued to the model
    std::optional<std::uint32_t> body;  // so is this body
};

struct CarScore {
    int cost = 0;
    int unsaid = 0;
};

class NameScore {
  public:
    // REQUIRES: both outlive this.
    NameScore(const NameTable& names, const TypedReading& reading);

    // Calls each(place of the car, CarScore) for the cars of `model` that the words may mean; a car may come several
    // times.
    template <class Each>
    void for_each_car(const NamedModel& model, Each each) const {
        const auto& makes = make_fits_[model.make];
        const NameFit untyped{0, 0, 0, words_of_untyped_model, false, {}};
        if (!makes.empty() || some_body_fits_) for_each_make(model, untyped, makes, each);
        for (const auto& fit : model_fits(model)) for_each_make(model, fit, makes, each);
    }

  private:
    // Make and model glued in one piece: how far its first (or last) letters are from the make.
    struct GluedMake {
        const TypedPiece* piece;
        bool make_first;
        std::size_t least, most;  // letters that may be the make's
        std::array<std::uint8_t, TypedPattern::longest + 1> distances;
    };

    struct PieceKey {
        std::uint64_t letters;
        std::size_t size;
        char first;
    };
    static bool may_fit(const PieceKey& key, std::string_view target, std::uint64_t letters);

    static NameFit joined(NameFit fit, const NameFit& other) {
        fit.words |= other.words;
        fit.cost += other.cost;
        fit.edits += other.edits;
        fit.unsaid += other.unsaid;
        return fit;
    }

    template <class Each>
    void for_each_make(const NamedModel& model, const NameFit& fit, const std::vector<NameFit>& makes,
                       Each each) const {
        for_each_body(model, fit, each);
        if (fit.holds_make) return;
        for (const auto& make : makes)
            if ((fit.words & make.words) == 0) for_each_body(model, joined(fit, make), each);
    }

    template <class Each>
    void for_each_body(const NamedModel& model, const NameFit& fit, Each each) const {
        const auto cars = names_.cars().subspan(model.first_car, model.cars);
        for (std::size_t i = 0; i < cars.size(); ++i) {
            if (fit.body && *fit.body != cars[i].body) continue;
            const auto offer = [&](const NameFit& whole) {
                if (const auto score = score_of(whole)) each(model.first_car + i, *score);
            };
            if (fit.words != 0) offer(fit);
            if (fit.body) continue;
            for (const auto& body : body_fits_[cars[i].body])
                if ((fit.words & body.words) == 0) offer(joined(fit, body));
        }
    }

    static constexpr int words_of_untyped_model = 4;

    std::vector<NameFit> fits_of(const KnownName& name) const;
    void add_fits(std::string_view target, std::vector<NameFit>& fits) const;
    std::vector<NameFit> model_fits(const NamedModel& model) const;
    void find_glued_makes(std::uint32_t make);
    void add_glued_fit(const GluedMake& make, std::string_view model, int unsaid, std::vector<NameFit>& fits) const;
    std::optional<CarScore> score_of(const NameFit& fit) const;

    const NameTable& names_;
    std::vector<TypedPiece> pieces_;
    std::vector<PieceKey> keys_;  // of the pieces, close together in memory
    std::vector<int> letters_;    // of each typed word
    std::vector<std::vector<NameFit>> make_fits_, body_fits_;
    std::vector<std::vector<GluedMake>> glued_makes_;
    bool some_body_fits_ = false;
};

}  // namespace tapbook
