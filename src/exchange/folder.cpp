// See folder.h. Packs are taken in until none is left that can be: a pack that waits for a change of key may come after
// the one that brings it.
#include "exchange/folder.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "exchange/pack_reader.h"
#include "exchange/pack_writer.h"
#include "exchange/shared_files.h"

namespace tapbook {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view pack_ending = ".jsonl";

// "line 14, column 22: why": a refusal in one line.
std::string in_one_line(const InputRefused& refused) {
    const Complaint& first = refused.complaints().front();
    if (first.place.line == 0) return first.message;
    if (first.place.column == 0) return fmt::format("line {}: {}", first.place.line, first.message);
    return fmt::format("line {}, column {}: {}", first.place.line, first.place.column, first.message);
}

FileFate fate_of(PackTrouble trouble) {
    switch (trouble) {
        case PackTrouble::no_pack:
            return FileFate::no_pack;
        case PackTrouble::not_whole:
            return FileFate::not_whole;
        case PackTrouble::wrong:
            return FileFate::refused;
    }
    return FileFate::refused;
}

class Exchanging {
  public:
    Exchanging(Catalog& catalog, const fs::path& folder, const std::string& today, bool dry_run)
        : catalog_(catalog), folder_(folder), today_(today), dry_run_(dry_run), own_(catalog.own_shop().id) {
        report_.folder = folder;
        report_.dry_run = dry_run;
    }

    FolderReport run() {
        for (const auto& name : names_in(folder_)) report_.files.push_back({name, FileFate::no_pack, {}});
        for (auto& file : report_.files) look_at(file);
        for (bool goes_on = true; goes_on;) {
            goes_on = false;
            for (auto& file : report_.files)
                if (file.fate == FileFate::waiting) goes_on = look_at(file) || goes_on;
        }
        write_own();
        return std::move(report_);
    }

  private:
    // True when the file was taken in.
    bool look_at(FolderFile& file) {
        const ReadFile read = read_shared(folder_ / file.name);
        file.why = read.trouble;
        file.fate = read.is_no_pack ? FileFate::no_pack : FileFate::unreadable;
        if (read.is_no_pack || !read.trouble.empty()) return false;
        file.why.clear();
        try {
            const Incoming pack = read_pack(read.text, file.name);
            take(file, pack);
            remember_own(pack);
        } catch (const PackRefused& refused) {
            file.fate = fate_of(refused.trouble());
            file.why = in_one_line(refused);
        } catch (const UnknownKey& refused) {
            file.fate = FileFate::waiting;
            file.why = in_one_line(refused);
        } catch (const InputRefused& refused) {
            file.fate = FileFate::refused;
            file.why = in_one_line(refused);
        }
        return file.fate == FileFate::taken;
    }

    void take(FolderFile& file, const Incoming& pack) {
        const auto [first, is_first] = seen_.emplace(pack.id, file.name);
        if (!is_first && first->second != file.name) {
            file.fate = FileFate::same;
            file.why = fmt::format("the same as {}", first->second);
            return;
        }
        TakeInReport report = catalog_.take_in(pack, today_, dry_run_);
        file.fate = report.was_here ? FileFate::here : FileFate::taken;
        if (!report.was_here) report_.taken.push_back(std::move(report));
    }

    // Which of this shop's own records lie in the folder already: in a pack that is whole and was found to be signed by
    // it.
    void remember_own(const Incoming& pack) {
        if (pack.shop != own_ || pack.practice != catalog_.is_practice()) return;
        for (const auto& packed : pack.records) lying_here_.push_back(packed.id);
    }

    void write_own() {
        std::sort(lying_here_.begin(), lying_here_.end());
        const auto is_missing = [&](const OutgoingRecord& record) {
            return !std::binary_search(lying_here_.begin(), lying_here_.end(), record.id);
        };
        for (const auto& pack : write_packs(catalog_, {{}, {}, true}, is_missing)) {
            const std::string stem = fmt::format("tapbook-{}-{}", own_.substr(0, 8), pack.hash.substr(0, 32));
            report_.records_written += pack.records;
            report_.written.push_back(dry_run_ ? fmt::format("{}{}", stem, pack_ending)
                                               : write_shared(folder_, stem, pack_ending, pack.text));
            // It need not be read again the next time, and what it holds is here.
            if (!dry_run_) catalog_.take_in(read_pack(pack.text, stem), today_);
        }
    }

    Catalog& catalog_;
    const fs::path& folder_;
    const std::string& today_;
    bool dry_run_;
    std::string own_;
    std::map<RecordId, std::string> seen_;  // the first file of each pack
    std::vector<RecordId> lying_here_;
    FolderReport report_;
};

}  // namespace

bool FolderReport::has_trouble() const {
    return std::any_of(files.begin(), files.end(), [](const FolderFile& file) {
        switch (file.fate) {
            case FileFate::waiting:
            case FileFate::not_whole:
            case FileFate::refused:
            case FileFate::unreadable:
                return true;
            case FileFate::taken:
            case FileFate::here:
            case FileFate::same:
            case FileFate::no_pack:
                return false;
        }
        return false;
    });
}

FolderReport exchange_folder(Catalog& catalog, const fs::path& folder, const std::string& today, bool dry_run) {
    return Exchanging(catalog, folder, today, dry_run).run();
}

}  // namespace tapbook
