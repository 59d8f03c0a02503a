// See page_desk.h.
#include "page/page_desk.h"

#include <fmt/format.h>
#include <sys/stat.h>

#include <stdexcept>
#include <tuple>

namespace tapbook {
namespace {

constexpr std::chrono::milliseconds write_patience{2000};

// Which file lies there, and since when: device, number and change. All 0 for none.
struct FileStamp {
    std::uint64_t device = 0, number = 0;
    std::int64_t changed = 0, nanoseconds = 0;
    friend bool operator==(const FileStamp&, const FileStamp&) = default;
};

FileStamp stamp_of(const std::filesystem::path& file) {
    struct stat about {};
    if (::stat(file.c_str(), &about) != 0) return {};
    return {about.st_dev, about.st_ino, about.st_mtim.tv_sec, about.st_mtim.tv_nsec};
}

// The same file, whatever was written into it.
bool is_same_file(const FileStamp& a, const FileStamp& b) {
    return std::tie(a.device, a.number) == std::tie(b.device, b.number);
}

}  // namespace

struct PageDesk::Open {
    std::optional<Catalog> catalog;
    std::optional<RuleBook> rules;
    FileStamp catalog_stamp, rules_stamp;
    int openings = 0;  // of the catalog
    FinishedPages finished;
};

PageDesk::PageDesk(const ShopPlace& place) : place_(place), open_(std::make_unique<Open>()) {}
PageDesk::~PageDesk() = default;

void PageDesk::begin(bool may_write) {
    may_write_ = may_write;
}

const Catalog& PageDesk::catalog() {
    const FileStamp now = stamp_of(place_.catalog);  // `restore` puts another file in its place
    if (!open_->catalog || !is_same_file(now, open_->catalog_stamp)) {
        open_->catalog.reset();
        open_->catalog = Catalog::open(place_.catalog, Access::read);
        open_->catalog_stamp = now;
        ++open_->openings;
    }
    return *open_->catalog;
}

Catalog PageDesk::catalog_to_write() {
    if (!may_write_) throw std::logic_error("a page that may only read asked to write");
    return Catalog::open(place_.catalog, Access::write, write_patience);
}

FinishedPages& PageDesk::finished() {
    const FileStamp rules = stamp_of(place_.own_rules);
    const std::int64_t changes = catalog().changes_seen();  // first: it may open another file
    open_->finished.begin(fmt::format("{} {} {} {} {} {}", open_->openings, changes, rules.device, rules.number,
                                      rules.changed, rules.nanoseconds));
    return open_->finished;
}

RuleBook& PageDesk::rules() {
    const FileStamp now = stamp_of(place_.own_rules);
    if (!open_->rules || now != open_->rules_stamp) {
        open_->rules.reset();
        open_->rules = place_.read_rules();
        open_->rules_stamp = now;
    }
    return *open_->rules;
}

}  // namespace tapbook
