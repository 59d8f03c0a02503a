// See pack_writer.h.
#include "exchange/pack_writer.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace tapbook {
namespace {

constexpr std::size_t end_bytes = 300;  // more than the last line takes

class Writing {
  public:
    // `is_part`: what is asked for is not everything; the keys alone are then no answer.
    Writing(const Catalog& catalog, bool is_part, PackLimits limits)
        : catalog_(catalog), is_part_(is_part), limits_(limits) {
        const OutgoingChoice keys_only{"no-path-is-under-this", {}, true};
        catalog.outgoing(keys_only, [&](OutgoingRecord&& record) { own_keys_.emplace(record.id, record.line); });
        begin();
    }

    void add(OutgoingRecord&& record, bool is_wanted) {
        tokens_.read(record.line);
        const std::string_view type = tokens_.text("type"), key = word_of(RecordKind::key);
        has_wanted_ = has_wanted_ || (is_wanted && (type != key || !is_part_));
        if (type == key) {
            if (is_wanted) keys_.emplace(record.id, record.line);
            return;
        }
        if (type > key) put_keys();
        if (is_wanted) put(record.line, type > key);
    }

    std::vector<WrittenPack> take() {
        put_keys();
        if (has_wanted_ && records_ > 0) finish();
        return std::move(packs_);
    }

  private:
    void begin() {
        Values head = {{"format", std::string(pack_format)},
                       {"key", digits_of(catalog_.own_key().key)},
                       {"shop", catalog_.own_shop().id},
                       {"type", std::string("pack")}};
        if (catalog_.is_practice()) head["practice"] = true;
        text_ = record_line(head) + '\n';
        records_ = 0;
        keys_ = own_keys_;
        keys_are_put_ = false;
    }

    void put_keys() {
        if (keys_are_put_) return;
        keys_are_put_ = true;
        const auto keys = std::move(keys_);
        for (const auto& [id, line] : keys) put(line, true);
    }

    bool is_full(std::string_view line) const {
        std::size_t keys = 0;  // that are still to come
        if (!keys_are_put_)
            for (const auto& [id, key] : keys_) keys += key.size() + 1;
        const std::size_t lines = static_cast<std::size_t>(records_) + 3 + (keys_are_put_ ? 0 : keys_.size());
        return text_.size() + line.size() + 1 + keys + end_bytes > limits_.bytes || lines > limits_.lines;
    }

    void put(std::string_view line, bool is_behind_keys) {
        if (is_full(line)) {
            put_keys();
            finish();
            begin();
            if (is_behind_keys) put_keys();
        }
        text_ += line;
        text_ += '\n';
        ++records_;
    }

    void finish() {
        std::string hash = pack_hash(text_);
        const Values end = {
            {"hash", hash}, {"signature", digits_of(catalog_.sign(pack_message(hash)))}, {"type", std::string("end")}};
        text_ += record_line(end) + '\n';
        packs_.push_back({std::move(text_), std::move(hash), records_});
    }

    const Catalog& catalog_;
    bool is_part_;
    PackLimits limits_;
    std::map<RecordId, std::string> own_keys_, keys_;
    bool keys_are_put_ = false, has_wanted_ = false;
    std::string text_;
    int records_ = 0;
    RecordTokens tokens_;
    std::vector<WrittenPack> packs_;
};

}  // namespace

std::vector<WrittenPack> write_packs(const Catalog& catalog, const OutgoingChoice& choice, const IsWanted& is_wanted,
                                     PackLimits limits) {
    Writing writing(catalog, !choice.under.empty() || !choice.since.empty(), limits);
    catalog.outgoing(choice, [&](OutgoingRecord&& record) {
        const bool wanted = !is_wanted || is_wanted(record);
        writing.add(std::move(record), wanted);
    });
    return writing.take();
}

}  // namespace tapbook
