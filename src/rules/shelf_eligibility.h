// Which converters suit which sound systems, all over the catalog? At the best tap of each, as advise() would say. Taps
// that look the same to every rule are judged once: of 20,000 cars most are like another one.
#pragma once

#include <memory>
#include <optional>
#include <span>
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

// What was judged, for whoever wants to know how much work it was: taps looked at, and how many kinds of them were held
// against the parts.
struct JudgedTaps {
    std::int64_t taps = 0, kinds = 0;
};

class ConverterJudge {
  public:
    // `rules` outlives the judge. Without an amplifier the converters are held against the taps only. As many threads
    // as said share the cars, one alone where a rule needs SQLite; the answers are the same. REQUIRES: threads >= 1.
    ConverterJudge(const std::vector<ShelfConverter>& converters, const std::optional<Amplifier>& amplifier,
                   RuleBook& rules, std::size_t threads = 1);
    ~ConverterJudge();
    ConverterJudge(ConverterJudge&&) noexcept;
    ConverterJudge& operator=(ConverterJudge&&) noexcept;

    // Of each car in turn: each of its sound systems that has a speaker or line tap, in path order.
    std::vector<std::vector<SuitedSystem>> judge(std::span<const CarFacts> cars);

    JudgedTaps judged() const;

  private:
    struct State;
    std::unique_ptr<State> state_;
};

}  // namespace tapbook
