// See pack_reader.h. The end of the pack is looked at first: when the hash fits, any line that is wrong was written so.
#include "exchange/pack_reader.h"

#include <fmt/format.h>
#include <sodium.h>

#include <algorithm>
#include <tuple>

namespace tapbook {
namespace {

constexpr std::string_view ask_again = "nothing was taken from it: ask the shop for it again";

class Reading {
  public:
    Reading(std::string_view text, const std::string& file) : text_(text), file_(file) { pack_.file = file; }

    Incoming run() {
        check_size();
        check_start();
        split_end();
        check_lines();
        check_end();
        return std::move(pack_);
    }

  private:
    [[noreturn]] void refuse(PackTrouble trouble, int line, std::size_t column, std::string_view line_text,
                             std::string why, std::string_view way_out = ask_again) const {
        throw PackRefused(trouble, Complaint{{file_, line, static_cast<int>(column), std::string(line_text)},
                                             std::move(why),
                                             std::string(way_out)});
    }

    void check_size() const {
        if (text_.size() > most_pack_bytes)
            refuse(PackTrouble::wrong, 0, 0, {}, fmt::format("is larger than {} MiB", most_pack_bytes / (1024 * 1024)),
                   "ask for it in several packs: `tapbook pack export` splits by itself");
    }

    void check_start() const {
        if (text_.starts_with("\xEF\xBB\xBF"))
            refuse(PackTrouble::wrong, 1, 1, {}, "begins with a byte order mark: some program has rewritten it");
        if (!text_.starts_with(pack_start))
            refuse(text_.empty() ? PackTrouble::not_whole : PackTrouble::no_pack, 1, text_.empty() ? 0 : 1, {},
                   text_.empty() ? "is empty" : "is not a pack",
                   "a pack is what `tapbook pack export` writes; a vehicle file is put in by `tapbook add`");
    }

    // The last line, and everything before it.
    void split_end() {
        const bool has_feed = text_.ends_with('\n');
        const std::string_view lines = text_.substr(0, text_.size() - (has_feed ? 1 : 0));
        const auto before = lines.rfind('\n');
        if (before != std::string_view::npos) end_ = lines.substr(before + 1);
        if (!has_feed || !tokens_.read(end_) || tokens_.text("type") != "end")
            refuse(PackTrouble::not_whole, line_of_end(), 0, {},
                   "the end of the pack is missing: half copied, or cut off",
                   "wait until it is copied, or fetch it again");
        body_ = text_.substr(0, before + 1);
        hash_ = tokens_.text("hash");
        signature_ = tokens_.text("signature");
    }

    int line_of_end() const { return static_cast<int>(std::count(text_.begin(), text_.end(), '\n')) + 1; }

    void check_lines() {
        int number = 0;
        for (std::string_view rest = body_; !rest.empty();) {
            const auto feed = rest.find('\n');
            const std::string_view line = rest.substr(0, feed);
            rest.remove_prefix(feed + 1);
            if (static_cast<std::size_t>(++number) >= most_pack_lines)
                refuse(PackTrouble::wrong, number, 0, {}, fmt::format("has more than {} lines", most_pack_lines),
                       "ask for it in several packs: `tapbook pack export` splits by itself");
            number == 1 ? read_head(line) : read_record(line, number);
        }
    }

    void read_tokens(std::string_view line, int number) {
        if (tokens_.read(line)) return;
        try {
            read_record_line(line);
        } catch (const RecordRefused& refused) {
            refuse(PackTrouble::wrong, number, refused.column(), line, refused.what());
        }
        refuse(PackTrouble::wrong, number, tokens_.stopped_at() + 1, line, "is not a record");
    }

    void read_head(std::string_view line) {
        read_tokens(line, 1);
        const RecordToken* practice = tokens_.find("practice");
        if (tokens_.text("format") != pack_format)
            refuse(PackTrouble::wrong, 1, 1, line,
                   fmt::format("is a pack of another kind (this program knows {})", pack_format),
                   "a newer program may read it");
        if (tokens_.text("type") != "pack" || !is_hex(tokens_.text("shop"), 32) ||
            !bytes_of_digits(tokens_.text("key"), pack_.key) || (practice != nullptr && practice->raw != "true"))
            refuse(PackTrouble::wrong, 1, 1, line, "the head of the pack is not one");
        pack_.shop = tokens_.text("shop");
        pack_.practice = practice != nullptr;
    }

    void read_record(std::string_view line, int number) {
        read_tokens(line, number);
        const RecordHead head = head_of(tokens_);
        if (const auto fault = fault_of(tokens_, head, pack_.practice))
            refuse(PackTrouble::wrong, number, fault->column, line, fault->reason);
        const RecordId id = record_id(line);
        if (number > 2 && std::tie(head.type, head.path, id) <= std::tie(last_type_, last_path_, last_id_))
            refuse(
                PackTrouble::wrong, number, 1, line,
                id == last_id_ ? "is there twice" : "stands before the line above it: records go by type, path and id");
        last_type_ = head.type;
        last_path_ = head.path;
        last_id_ = id;
        pack_.records.push_back({line, id, number});
    }

    void check_end() {
        const std::string hash = pack_hash(body_);
        const int number = static_cast<int>(pack_.records.size()) + 2;
        if (hash_ != hash)
            refuse(PackTrouble::wrong, number, 0, {}, "the hash does not fit: something was changed on the way");
        KeySignature signature{};
        if (!bytes_of_digits(signature_, signature) || !is_signed_by(pack_.key, pack_message(hash), signature))
            refuse(PackTrouble::wrong, number, 0, {}, "the signature does not fit the key in the head");
        RecordId id{};
        from_hex(std::string_view(hash).substr(0, 2 * id.size()), id);
        pack_.id = id;
    }

    std::string_view text_, body_, end_;
    const std::string& file_;
    RecordTokens tokens_;
    std::string hash_, signature_;
    std::string last_type_, last_path_;
    RecordId last_id_{};
    Incoming pack_;
};

}  // namespace

std::string pack_hash(std::string_view bytes) {
    std::array<unsigned char, crypto_hash_sha256_BYTES> hash{};
    crypto_hash_sha256(hash.data(), reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size());
    return digits_of(hash);
}

std::string pack_message(std::string_view hash) {
    return fmt::format("tapbook/1 pack\n{}", hash);
}

Incoming read_pack(std::string_view text, const std::string& file) {
    return Reading(text, file).run();
}

}  // namespace tapbook
