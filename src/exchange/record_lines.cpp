// See record_lines.h. A thread's share begins behind a line feed, and knows the line before it for the order's sake.
#include "exchange/record_lines.h"

#include <fmt/format.h>

#include <algorithm>
#include <future>
#include <tuple>

namespace tapbook {
namespace {

struct Share {
    std::string_view before, lines;  // before: the line above, "" at the beginning
    int number = 0;                  // of its first line
};

std::vector<Share> shares_of(std::string_view lines, std::size_t threads, std::size_t least_bytes) {
    const std::size_t count = std::clamp<std::size_t>(lines.size() / std::max<std::size_t>(least_bytes, 1), 1, threads);
    std::vector<Share> shares;
    std::string_view before;
    int number = 2;
    for (std::size_t left = count; !lines.empty(); --left) {
        const auto feed = left > 1 ? lines.find('\n', lines.size() / left) : lines.size() - 1;
        const std::string_view share = lines.substr(0, feed + 1);
        shares.push_back({before, share, number});
        number += static_cast<int>(std::count(share.begin(), share.end(), '\n'));
        lines.remove_prefix(share.size());
        const std::string_view ended = share.substr(0, share.size() - 1);
        before = ended.substr(ended.rfind('\n') + 1);
    }
    return shares;
}

class ReadingLines {
  public:
    ReadingLines(const std::string& file, bool practice) : file_(file), practice_(practice) {}

    std::vector<PackedRecord> run(const Share& share) {
        if (!share.before.empty() && tokens_.read(share.before)) keep_order(head_of(tokens_), record_id(share.before));
        int number = share.number;
        for (std::string_view rest = share.lines; !rest.empty(); ++number) {
            const auto feed = rest.find('\n');
            read(rest.substr(0, feed), number);
            rest.remove_prefix(feed + 1);
        }
        return std::move(records_);
    }

  private:
    void read(std::string_view line, int number) {
        if (static_cast<std::size_t>(number) >= most_pack_lines)
            refuse_pack(PackTrouble::wrong, {file_, number}, fmt::format("has more than {} lines", most_pack_lines),
                        "ask for it in several packs: `tapbook pack export` splits by itself");
        read_pack_line(tokens_, line, file_, number);
        const RecordHead head = head_of(tokens_);
        if (const auto fault = fault_of(tokens_, head, practice_))
            refuse_pack(PackTrouble::wrong, {file_, number, fault->column, line}, fault->reason);
        const RecordId id = record_id(line);
        if (has_last_ && std::tie(head.type, head.path, id) <= std::tie(last_type_, last_path_, last_id_))
            refuse_pack(
                PackTrouble::wrong, {file_, number, 1, line},
                id == last_id_ ? "is there twice" : "stands before the line above it: records go by type, path and id");
        keep_order(head, id);
        records_.push_back({line, id, number});
    }

    void keep_order(const RecordHead& head, const RecordId& id) {
        last_type_ = head.type;
        last_path_ = head.path;
        last_id_ = id;
        has_last_ = true;
    }

    const std::string& file_;
    bool practice_;
    RecordTokens tokens_;
    bool has_last_ = false;
    std::string last_type_, last_path_;
    RecordId last_id_{};
    std::vector<PackedRecord> records_;
};

}  // namespace

void refuse_pack(PackTrouble trouble, const LinePlace& place, std::string why, std::string_view way_out) {
    throw PackRefused(trouble,
                      Complaint{{place.file, place.line, static_cast<int>(place.column), std::string(place.text)},
                                std::move(why),
                                std::string(way_out)});
}

void read_pack_line(RecordTokens& tokens, std::string_view line, const std::string& file, int number) {
    if (tokens.read(line)) return;
    try {
        read_record_line(line);
    } catch (const RecordRefused& refused) {
        refuse_pack(PackTrouble::wrong, {file, number, static_cast<std::size_t>(refused.column()), line},
                    refused.what());
    }
    refuse_pack(PackTrouble::wrong, {file, number, tokens.stopped_at() + 1, line}, "is not a record");
}

std::vector<PackedRecord> records_of_lines(std::string_view lines, const std::string& file, bool practice,
                                           std::size_t threads, std::size_t least_bytes) {
    const auto shares = shares_of(lines, std::max<std::size_t>(threads, 1), least_bytes);
    const auto read = [&](const Share& share) { return ReadingLines(file, practice).run(share); };
    std::vector<std::future<std::vector<PackedRecord>>> others;
    for (std::size_t i = 1; i < shares.size(); ++i)
        others.push_back(std::async(std::launch::async, read, std::cref(shares[i])));
    std::vector<PackedRecord> records;
    if (!shares.empty()) records = read(shares.front());
    for (auto& other : others) {
        const auto more = other.get();
        records.insert(records.end(), more.begin(), more.end());
    }
    return records;
}

}  // namespace tapbook
