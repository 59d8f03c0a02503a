// The pair first; what hangs on it (polarity, cavities, printed colours) then asks only the notes that support it.
#include "evidence/pair_standing.h"

#include <algorithm>

#include "evidence/bass_cut.h"
#include "evidence/noted_text.h"
#include "evidence/pair_saying.h"
#include "evidence/points.h"
#include "evidence/reliance.h"

namespace tapbook {
namespace {

class PairReader {
  public:
    PairReader(std::span<const Note> notes, std::optional<ConnectorSide> side, const KnownShops& known,
               std::optional<int> year, int withdrawn, const ProvenElsewhere& proven_elsewhere)
        : known_(known), year_(year), withdrawn_(withdrawn), proven_elsewhere_(proven_elsewhere) {
        for (const Note& note : notes) {
            if (note.kind != NoteKind::pair) continue;
            all_.push_back(&note);
            if (!is_other_side(note, side)) near_.push_back(&note);
        }
        sayings_ = pair_sayings(near_);
    }

    PairStanding read() {
        out_.notes = static_cast<int>(all_.size());
        out_.other_side_notes = static_cast<int>(all_.size() - near_.size());
        out_.altered = found_altered(all_);
        read_pair();
        read_polarity();
        print_conductors();
        out_.positive_claims = colour_claims(&PairSaying::positive);
        out_.negative_claims = colour_claims(&PairSaying::negative);
        read_fittings();
        read_drive();
        read_meter();
        return std::move(out_);
    }

  private:
    void read_pair() {
        std::vector<Vote> votes;
        votes.reserve(sayings_.size());
        for (const auto& saying : sayings_) votes.push_back(vote_of(*saying.note, saying.pair));
        out_.pair = unrecorded_standing_of(votes, known_, year_, withdrawn_, proven_elsewhere_);
        out_.relied_on = relied_on(out_.pair, votes, near_);
        for (const auto& saying : sayings_)
            if (!out_.pair.value || saying.pair == *out_.pair.value) supporting_.push_back(saying);
    }

    void read_polarity() {
        std::vector<Vote> votes;
        votes.reserve(supporting_.size());
        for (const auto& saying : supporting_) {
            if (!saying.positive.empty())
                votes.push_back(polarity_vote_of(*saying.note, saying.positive));
            else if (!saying.negative.empty())
                votes.push_back(polarity_vote_of(*saying.note, std::string(negative_only) + saying.negative));
        }
        out_.polarity = standing_of(votes, known_, year_, withdrawn_);
    }

    void print_conductors() {
        if (!out_.pair.value) return;
        const auto keys = keys_of(*out_.pair.value);
        for (const auto& key : keys) out_.conductors.push_back(*colour_of(key));
        out_.same_colours = keys.size() == 2 && out_.conductors[0] == out_.conductors[1];
        if (!out_.polarity.value) return;
        const std::string& answer = *out_.polarity.value;
        for (const auto& key : keys) (key == answer ? positive_key_ : negative_key_) = key;
        if (!positive_key_.empty()) out_.positive = colour_of(positive_key_);
        if (!negative_key_.empty()) out_.negative = colour_of(negative_key_);
        if (!positive_key_.empty()) out_.positive_mark = mark_of(supporting_, positive_key_);
        if (!negative_key_.empty()) out_.negative_mark = mark_of(supporting_, negative_key_);
    }

    // What the notes call the positive (or negative) conductor, weighed on the scale of the pair.
    std::vector<ColourClaim> colour_claims(std::string PairSaying::*key) const {
        std::vector<Vote> votes;
        votes.reserve(sayings_.size());
        for (const auto& saying : sayings_)
            if (!(saying.*key).empty())
                votes.push_back(vote_of(*saying.note, std::string(colour_code_in(saying.*key))));
        const Standing standing = standing_of(votes, known_);
        std::vector<ColourClaim> claims;
        for (const auto& claim : standing.claims)
            claims.push_back({*wire_colour_from_code(claim.value), grade_beside_others(standing, claim),
                              claim.first_year, claim.last_year, claim.notes});
        return claims;
    }

    static Grade grade_beside_others(const Standing& standing, const Claim& claim) {
        if (standing.split && claim.value == standing.split->change.old_value) return standing.split->old_grade;
        if (standing.split && claim.value == standing.split->change.new_value) return standing.split->new_grade;
        return standing.value == claim.value ? standing.grade : claim.grade;
    }

    // A cavity goes with its conductor: a note that has the printed conductors the other way round has its cavities
    // the other way round too. Notes for another pair have no say.
    void read_fittings() {
        std::vector<NotedText> positive, negative, connectors;
        for (const Note* note : near_) connectors.push_back({note, note->connector});
        auto next = sayings_.begin();  // sayings stand in the order of their notes
        for (const Note* note : near_) {
            const PairSaying* saying = next != sayings_.end() && next->note == note ? &*next++ : nullptr;
            if (saying != nullptr && out_.pair.value && saying->pair != *out_.pair.value) continue;
            const bool turned = saying != nullptr && is_turned(*saying);
            positive.push_back({note, turned ? note->negative_cavity : note->positive_cavity});
            negative.push_back({note, turned ? note->positive_cavity : note->negative_cavity});
        }
        out_.connector = text_standing(connectors, known_, year_);
        out_.positive_cavity = text_standing(positive, known_, year_);
        out_.negative_cavity = text_standing(negative, known_, year_);
    }

    bool is_turned(const PairSaying& saying) const {
        return (!negative_key_.empty() && saying.positive == negative_key_) ||
               (!positive_key_.empty() && saying.negative == positive_key_);
    }

    void read_drive() {
        std::vector<Vote> votes;
        for (const Note* note : all_)
            if (note->drive && *note->drive != Drive::unknown)
                votes.push_back(vote_of(*note, std::string(word_of(*note->drive))));
        out_.drive = standing_of(votes, known_, year_);
    }

    void read_meter() {
        out_.bass_cut = bass_cut(all_);
        for (const Note* note : all_) {
            if (!looked_at(note->method)) continue;
            if (note->reading) out_.readings.push_back(*note->reading);
            if (!note->dc_positive || !note->dc_negative) continue;
            const DcVolts difference = *note->dc_positive - *note->dc_negative;
            const DcVolts size = std::max(difference, -difference);
            out_.dc_difference = std::max(size, out_.dc_difference.value_or(size));
        }
    }

    const KnownShops& known_;
    std::optional<int> year_;
    int withdrawn_;
    const ProvenElsewhere& proven_elsewhere_;
    std::vector<const Note*> all_, near_;  // near: not from another side of the connector
    std::vector<PairSaying> sayings_, supporting_;
    std::string positive_key_, negative_key_;
    PairStanding out_;
};

}  // namespace

PairStanding pair_standing(std::span<const Note> notes, std::optional<ConnectorSide> side, const KnownShops& known,
                           std::optional<int> year, int withdrawn, const ProvenElsewhere& proven_elsewhere) {
    return PairReader(notes, side, known, year, withdrawn, proven_elsewhere).read();
}

}  // namespace tapbook
