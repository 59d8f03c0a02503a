// Can any bytes bring the pack reader down, or make it take what a pack is not? libFuzzer's target with a mutator that
// knows a pack's shape: lines are changed, doubled, moved and put in order, and the end is hashed and signed again, so
// that the reader gets past the hash. Built by clang with address and undefined-behaviour sanitizers; fuzz_packs.py
// runs it.
#include <sodium.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <random>
#include <string>
#include <tuple>
#include <vector>

#include "exchange/pack_reader.h"

extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t most);
extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size, std::size_t most, unsigned seed);
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

using namespace tapbook;

namespace {

using Lines = std::vector<std::string>;

long long taken = 0, refused_behind_hash = 0;

void print_counts() {
    std::fprintf(stderr, "packs taken: %lld, refused although the hash fits: %lld\n", taken, refused_behind_hash);
}

void need(bool is_so, const char* what) {
    if (is_so) return;
    std::fprintf(stderr, "not so: %s\n", what);
    std::abort();
}

// The fuzzer's own shop. Its key is made from the seed 00 01 .. 1f, as in the worked example of the format.
struct Signer {
    std::array<unsigned char, crypto_sign_PUBLICKEYBYTES> key{};
    std::array<unsigned char, crypto_sign_SECRETKEYBYTES> secret{};
    Signer() {
        std::array<unsigned char, crypto_sign_SEEDBYTES> seed{};
        for (std::size_t i = 0; i < seed.size(); ++i) seed[i] = static_cast<unsigned char>(i);
        need(sodium_init() >= 0 && crypto_sign_seed_keypair(key.data(), secret.data(), seed.data()) == 0, "a key");
    }
};

const Signer& signer() {
    static const Signer one;
    return one;
}

std::string end_line(std::string_view body) {
    const std::string hash = pack_hash(body), message = pack_message(hash);
    KeySignature signature{};
    crypto_sign_detached(signature.data(), nullptr, reinterpret_cast<const unsigned char*>(message.data()),
                         message.size(), signer().secret.data());
    return "{\"hash\":\"" + hash + "\",\"signature\":\"" + digits_of(signature) + "\",\"type\":\"end\"}\n";
}

Lines lines_of(std::string_view text) {
    Lines lines;
    while (!text.empty()) {
        const auto feed = std::min(text.find('\n'), text.size());
        lines.emplace_back(text.substr(0, feed));
        text.remove_prefix(std::min(feed + 1, text.size()));
    }
    return lines;
}

// Where a record belongs in a pack; lines that are none come first.
std::tuple<std::string, std::string, RecordId> place_of(const std::string& line) {
    RecordTokens tokens;
    if (!tokens.read(line)) return {};
    const RecordHead head = head_of(tokens);
    return {std::string(head.type), std::string(head.path), record_id(line)};
}

// Bits of records, right and wrong ones, to stand in the place of others.
constexpr std::string_view pieces[] = {"\"type\":\"note\"",
                                       "\"type\":\"alias\"",
                                       "\"type\":\"key\"",
                                       "\"type\":\"withdrawal\"",
                                       "\"type\":\"later\"",
                                       "\"practice\":true",
                                       "\"year\":9007199254740991",
                                       "\"year\":-0",
                                       "\"year\":1.0",
                                       "\"year\":1e3",
                                       "\"date\":\"2026-02-30\"",
                                       "\"path\":\"a/b/c/2000\"",
                                       "[\"a\",\"b\"]",
                                       "{\"a\":{\"b\":[]}}",
                                       "null",
                                       "\\u0000",
                                       "\\ud800",
                                       "\\u202e",
                                       "\xEF\xBB\xBF",
                                       "\xC3\x28",
                                       "e\xCC\x81",
                                       "\\\"",
                                       "[[[[[[[[[[[[[[[[[",
                                       "\"a\":1,\"a\":1"};

class Mutation {
  public:
    Mutation(std::string_view text, unsigned seed) : lines_(lines_of(text)), random_(seed) {
        if (!lines_.empty()) lines_.pop_back();  // the end is made anew
        if (lines_.empty()) lines_.emplace_back();
    }

    std::string run() {
        for (auto steps = 1 + random_() % 3; steps > 0; --steps) change();
        if (random_() % 4 == 0) drop_bad_lines();
        if (random_() % 4 != 0) put_in_order();
        if (random_() % 8 != 0) put_own_key(lines_.front());
        std::string body;
        for (const auto& line : lines_) body += line + "\n";
        return body + end_line(body);
    }

  private:
    std::string& any_line() { return lines_[random_() % lines_.size()]; }
    std::size_t any_place() { return 1 + random_() % lines_.size(); }

    void change() {
        switch (random_() % 8) {
            case 0:
                return mutate(any_line());
            case 1:
                lines_.insert(lines_.begin() + static_cast<std::ptrdiff_t>(any_place()), std::string(any_line()));
                return mutate(any_line());
            case 2:
                if (lines_.size() > 1)
                    lines_.erase(lines_.begin() + static_cast<std::ptrdiff_t>(random_() % lines_.size()));
                return;
            case 3:
                return std::swap(any_line(), any_line());
            case 4:
                return insert(any_line(), pieces[random_() % std::size(pieces)]);
            case 5:
                return replace_value(any_line());
            case 6:
                return insert(any_line(), std::string(random_() % 300, static_cast<char>(random_() % 256)));
            default:
                return change_letter(any_line());
        }
    }

    void mutate(std::string& line) {
        const std::size_t size = line.size();
        line.resize(size + 64);
        line.resize(LLVMFuzzerMutate(reinterpret_cast<std::uint8_t*>(line.data()), size, line.size()));
    }

    void insert(std::string& line, std::string_view piece) { line.insert(random_() % (line.size() + 1), piece); }

    // A letter of a text becomes another one: most often the line stays a record.
    void change_letter(std::string& line) {
        if (line.empty()) return;
        char& letter = line[random_() % line.size()];
        if ((letter >= 'a' && letter <= 'z') || (letter >= '0' && letter <= '9'))
            letter = static_cast<char>(letter >= 'a' ? 'a' + random_() % 26 : '0' + random_() % 10);
    }

    // What stands behind a key, or a key with it, becomes a piece.
    void replace_value(std::string& line) {
        const auto start = line.find(random_() % 2 == 0 ? ':' : ',', random_() % (line.size() + 1));
        if (start == std::string::npos) return;
        const auto end = std::min(line.find(',', start + 1), line.size());
        line.replace(start + 1, end - start - 1, pieces[random_() % std::size(pieces)]);
    }

    // The head names the key that the end is signed with.
    static void put_own_key(std::string& head) {
        constexpr std::string_view name = "\"key\":\"";
        const std::string key = digits_of(signer().key);
        if (const auto at = head.find(name); at != std::string::npos && head.size() >= at + name.size() + key.size())
            head.replace(at + name.size(), key.size(), key);
    }

    // What is left are records: so that packs which are taken are tried as well.
    void drop_bad_lines() {
        const bool is_practice = lines_.front().find("\"practice\":true") != std::string::npos;
        const auto is_bad = [&](const std::string& line) {
            RecordTokens tokens;
            return !tokens.read(line) || fault_of(tokens, head_of(tokens), is_practice).has_value();
        };
        lines_.erase(std::remove_if(lines_.begin() + 1, lines_.end(), is_bad), lines_.end());
    }

    void put_in_order() {
        if (lines_.size() < 3) return;
        std::sort(lines_.begin() + 1, lines_.end(),
                  [](const std::string& a, const std::string& b) { return place_of(a) < place_of(b); });
        lines_.erase(std::unique(lines_.begin() + 1, lines_.end()), lines_.end());
    }

    Lines lines_;
    std::minstd_rand random_;
};

// A pack that was taken holds records only: each in the accepted form, with its own id, in order, its end as signed.
void check_taken(std::string_view text, const Incoming& pack) {
    const Lines lines = lines_of(text);
    need(lines.size() == pack.records.size() + 2, "as many records as lines between head and end");
    std::tuple<std::string, std::string, RecordId> before;
    for (const auto& record : pack.records) {
        const std::string line(record.line);
        need(line == lines[static_cast<std::size_t>(record.number) - 1], "a record is its line");
        need(record_line(read_record_line(line)) == line, "a record is in the accepted form");
        need(record_id(line) == record.id, "a record's id is that of its line");
        const auto place = place_of(line);
        need(before < place, "records are in order and none is there twice");
        before = place;
    }
    ++taken;
}

void check_refusal(std::string_view text, const PackRefused& refused) {
    need(refused.complaints().size() == 1, "one complaint");
    const Complaint& complaint = refused.complaints().front();
    const auto lines = std::count(text.begin(), text.end(), '\n') + 1;
    need(complaint.place.line >= 0 && complaint.place.line <= lines, "the line is one of the text");
    need(
        complaint.place.column >= 0 && complaint.place.column <= static_cast<int>(complaint.place.line_text.size()) + 1,
        "the column is one of the line");
    need(!complaint.message.empty() && !complaint.hint.empty(), "a reason and a way out");
    if (refused.trouble() == PackTrouble::wrong && complaint.place.column > 0) ++refused_behind_hash;
}

}  // namespace

std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size, std::size_t most, unsigned seed) {
    if (seed % 16 == 0) return LLVMFuzzerMutate(data, size, most);
    const std::string text = Mutation({reinterpret_cast<const char*>(data), size}, seed).run();
    if (text.size() > most) return LLVMFuzzerMutate(data, size, most);
    std::memcpy(data, text.data(), text.size());
    return text.size();
}

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const bool counts_are_printed = std::atexit(print_counts) == 0;
    need(counts_are_printed, "the counts are printed at the end");
    const std::string text(reinterpret_cast<const char*>(data), size);
    try {
        check_taken(text, read_pack(text, "pack.jsonl"));
    } catch (const PackRefused& refused) {
        check_refusal(text, refused);
    }
    return 0;
}
