// The words of a job, and the code on its label.
#include "trade/job_words.h"

#include <rapidcheck.h>

#include <catch2/catch.hpp>
#include <map>
#include <string>

#include "trade/job_code.h"

using namespace tapbook;

TEST_CASE("a job's code has six characters that nobody misreads, and at least one letter") {
    rc::check([](std::array<unsigned char, job_code_length> bytes) {
        const auto code = job_code(bytes);
        if (!code) return;
        RC_ASSERT(code->size() == job_code_length);
        RC_ASSERT(code->find_first_of("0O1I") == std::string::npos);
        RC_ASSERT(code->find_first_of("ABCDEFGHJKLMNPQRSTUVWXYZ") != std::string::npos);
        RC_ASSERT(parse_job_code(*code) == *code);
    });
}

TEST_CASE("every one of the 32 characters is drawn equally often from all bytes") {
    std::map<char, int> count;
    for (int byte = 0; byte < 256; ++byte) {
        const auto low = static_cast<unsigned char>(byte);
        const auto code = job_code({0, 0, 0, 0, 0, low});
        REQUIRE(code.has_value());
        ++count[code->back()];
    }
    CHECK(count.size() == 32);
    for (const auto& [character, times] : count) CHECK(times == 8);
}

TEST_CASE("a code of digits only could be a job's number, so it is drawn again and not read") {
    CHECK_FALSE(job_code({24, 25, 26, 27, 28, 29}).has_value());
    CHECK_FALSE(parse_job_code("234567").has_value());
}

TEST_CASE("a code is read in small letters too, and nothing that is none") {
    CHECK(parse_job_code("k7mq2x") == std::optional<std::string>("K7MQ2X"));
    for (const auto bad :
         {"", "K7MQ2", "K7MQ2XX", "K7MQ20", "K7MQ2O", "K7MQ21", "K7MQ2I", "K7MQ-X", "K7MQ2 ", "K7MQ\xc3\x84"})
        CHECK_FALSE(parse_job_code(bad).has_value());
}

TEST_CASE("every item of the list says what to look at") {
    for (const auto& named : words_of<CheckItem>()) CHECK_FALSE(check_question(named.value).empty());
}

TEST_CASE("a job that ended with a sound has a list of what to look at, one that is fine has none") {
    for (const auto& named : words_of<JobOutcome>()) {
        const auto steps = noise_steps(named.value);
        CHECK(steps.empty() == (named.value == JobOutcome::fine));
        for (const auto& step : steps) CHECK_FALSE((step.heard.empty() || step.look.empty()));
    }
}

TEST_CASE(
    "a whine that follows the revs is a matter of ground or feed, hiss one of the gain, a thump one of the delay") {
    // common practice, no source
    const auto look = [](JobOutcome outcome, std::string_view heard) {
        for (const auto& step : noise_steps(outcome))
            if (step.heard.starts_with(heard)) return std::string(step.look);
        return std::string();
    };
    CHECK(look(JobOutcome::noise, "whine").find("ground") != std::string::npos);
    CHECK(look(JobOutcome::noise, "whine").find("feed") != std::string::npos);
    CHECK(look(JobOutcome::noise, "hiss").find("gain") != std::string::npos);
    CHECK(look(JobOutcome::thump, "thump at switching on").find("delay") != std::string::npos);
}
