// See pack_reader.h. The end of the pack is looked at first: when the hash fits, any line that is wrong was written so.
#include "exchange/pack_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <thread>

#include "exchange/record_lines.h"

namespace tapbook {
namespace {

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
        refuse_pack(trouble, {file_, line, column, line_text}, std::move(why), way_out);
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
        const auto feed = body_.find('\n');
        if (feed == std::string_view::npos) return;
        read_head(body_.substr(0, feed));
        pack_.records =
            records_of_lines(body_.substr(feed + 1), file_, pack_.practice, std::thread::hardware_concurrency());
    }

    void read_head(std::string_view line) {
        read_pack_line(tokens_, line, file_, 1);
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
    Incoming pack_;
};

}  // namespace

std::string pack_hash(std::string_view bytes) {
    return digits_of(sha256({bytes}));
}

std::string pack_message(std::string_view hash) {
    return fmt::format("tapbook/1 pack\n{}", hash);
}

Incoming read_pack(std::string_view text, const std::string& file) {
    return Reading(text, file).run();
}

}  // namespace tapbook
