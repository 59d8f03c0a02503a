// Which converters suit which sound systems, all over the catalog? At the best tap of each, as advise() would say. Taps
// that look the same to every rule are judged once: of 20,000 cars most are like another one.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "rules/advise.h"

namespace tapbook {

struct SuitingConverter {
    std::size_t converter = 0;  // place in the list that was handed in
    Verdict verdict = Verdict::fits;
    int cares = 0;
};

struct SuitedSystem {
    std::string system;                     // whole path
    std::string tap;                        // whole path of the best one
    std::vector<SuitingConverter> suiting;  // fits before care, then fewer cares, simpler, cheaper, by path
    bool direct = false;                    // the amplifier's own speaker-level input does it without a converter
};

// What was judged, for whoever wants to know how much work it was.
struct JudgedTaps {
    std::int64_t taps = 0, kinds = 0;
};

class ConverterJudge {
  public:
    // `rules` outlives the judge. Without an amplifier the converters are held against the taps only.
    ConverterJudge(std::vector<ShelfConverter> converters, std::optional<Amplifier> amplifier, RuleBook& rules);
    ~ConverterJudge();
    ConverterJudge(ConverterJudge&&) noexcept;
    ConverterJudge& operator=(ConverterJudge&&) noexcept;

    // Each sound system of the car that has a speaker or line tap, in path order.
    std::vector<SuitedSystem> judge(const CarFacts& car);

    JudgedTaps judged() const;

  private:
    struct State;
    std::unique_ptr<State> state_;
};

}  // namespace tapbook
