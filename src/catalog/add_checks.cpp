// What can only the store tell about a batch? Whether a path is there twice, whether its parent exists, whether a named
// author is allowed. Each complaint points at the line in the file.
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "catalog/state.h"

namespace tapbook {
namespace {

class Check {
  public:
    Check(const Batch& batch, const Catalog& catalog, const Authors& authors)
        : batch_(batch), catalog_(catalog), authors_(authors) {}

    // What is wrong with the file as a whole; absent when nothing is.
    std::optional<Complaint> on_the_whole() const {
        if (authors_.practice) return std::nullopt;
        if (batch_.practice)
            return Complaint{batch_.practice_place, "this file comes from a practice catalog: what it says is invented",
                             "a real catalog takes nothing of it; add it to a practice shop (tapbook demo)"};
        if (!batch_.shops.empty())
            return Complaint{batch_.shops.front().place, "[[shop]] is taken by practice catalogs only",
                             "other shops' notes arrive in packs, signed by them"};
        return std::nullopt;
    }

    std::vector<DraftComplaint> on_drafts() {
        each(batch_.entries, DraftOf::entry, [this](const EntryDraft& entry) { check_entry(entry); });
        each(batch_.notes, DraftOf::note, [this](const NoteDraft& note) { check_note(note); });
        each(batch_.terms, DraftOf::terms, [this](const TermsDraft& terms) { check_terms(terms); });
        return std::move(complaints_);
    }

  private:
    template <class Drafts, class Look>
    void each(const Drafts& drafts, DraftOf of, Look look) {
        of_ = of;
        for (index_ = 0; index_ < drafts.size(); ++index_) look(drafts[index_]);
    }

    void complain(const SourcePlace& place, std::string message, std::string hint) {
        complaints_.push_back({of_, index_, {place, std::move(message), std::move(hint)}});
    }

    bool exists(EntryKind kind, std::string_view path) const {
        return seen_.contains({kind, std::string(path)}) || catalog_.has_entry(kind, path);
    }

    void check_entry(const EntryDraft& entry) {
        const std::string path = text_field(entry.values, "path");
        const auto [first, is_new] = seen_.emplace(std::pair(entry.kind, path), entry.place.line);
        if (!is_new)
            complain(
                entry.place,
                fmt::format("{} {} is in this file twice, first in line {}", word_of(entry.kind), path, first->second),
                "keep one of them");
        switch (entry.kind) {
            case EntryKind::system:
                need_parent(entry.place, EntryKind::vehicle, path, vehicle_depth);
                break;
            case EntryKind::circuit:
                need_parent(entry.place, EntryKind::system, path, system_depth);
                break;
            case EntryKind::tap:
                need_parent(entry.place, EntryKind::circuit, path, circuit_depth);
                break;
            case EntryKind::converter:
            case EntryKind::amplifier:
                need_other_kind_free(entry, path);
                break;
            case EntryKind::vehicle:
                break;
        }
    }

    void need_other_kind_free(const EntryDraft& entry, const std::string& path) {
        const EntryKind other = entry.kind == EntryKind::converter ? EntryKind::amplifier : EntryKind::converter;
        if (exists(other, path))
            complain(entry.place,
                     fmt::format("{} is already the code of {} {}", path, other == EntryKind::amplifier ? "an" : "a",
                                 word_of(other)),
                     "choose another code");
    }

    // The paths of one kind in this file, without the vehicle's part: what a typing mistake is compared with.
    std::string nearest_in_file(EntryKind kind, std::string_view path) const {
        std::vector<std::string_view> tails;
        for (const auto& [key, line] : seen_)
            if (key.first == kind) tails.push_back(path_tail(key.second, vehicle_depth));
        const auto near = nearest(path_tail(path, vehicle_depth), tails);
        return near ? fmt::format("did you mean \"{}\"?", *near) : std::string();
    }

    void need_parent(const SourcePlace& place, EntryKind kind, std::string_view path, std::size_t depth) {
        const auto parent = path_head(path, depth);
        if (exists(kind, parent)) return;
        const auto tail = path_tail(parent, vehicle_depth);
        std::string hint = nearest_in_file(kind, parent);
        if (hint.empty()) hint = fmt::format("write its [[{}]] table above this one", word_of(kind));
        complain(place, fmt::format("there is no {} \"{}\"", word_of(kind), tail.empty() ? parent : tail), hint);
    }

    void check_note(const NoteDraft& note) {
        const std::string path = text_field(note.values, "path");
        const auto parts = path_parts(path);
        const bool unrecorded = parts.size() > vehicle_depth && parts[vehicle_depth] == unrecorded_system;
        if (!unrecorded) {
            const EntryKind kind = parts.size() == system_depth ? EntryKind::system : EntryKind::tap;
            need_parent(note.place, kind, path, parts.size());
        }
        if (note.shop_code.empty()) return;
        if (!authors_.practice)
            complain(note.place, fmt::format("a note in the name of shop \"{}\"", note.shop_code),
                     "leave shop out: notes are written in this shop's name; other shops' notes arrive in packs");
        else if (!authors_.codes.contains(note.shop_code))
            complain(note.place, fmt::format("there is no shop \"{}\"", note.shop_code),
                     "write its [[shop]] table first");
    }

    void check_terms(const TermsDraft& terms) {
        const auto is_part = [&](EntryKind kind) {
            return exists(kind, terms.part) || catalog_.has_entry(kind, terms.part, Catalog::Retired::included);
        };
        const bool is_in_parts_file = is_part(EntryKind::converter) || is_part(EntryKind::amplifier);
        if (!is_in_parts_file && !terms.terms.small)
            complain(terms.place, fmt::format("there is no part \"{}\"", terms.part),
                     "add the parts file first; a lead, fuse, relay or cable says what it is: small = \"fuse\"");
        if (is_in_parts_file && terms.terms.small)
            complain(terms.place, fmt::format("{} is no small part: it stands in a parts file", terms.part),
                     "leave out small and what belongs to it, or give the small part another name");
    }

    const Batch& batch_;
    const Catalog& catalog_;
    const Authors& authors_;
    std::map<std::pair<EntryKind, std::string>, int> seen_;
    DraftOf of_ = DraftOf::entry;
    std::size_t index_ = 0;
    std::vector<DraftComplaint> complaints_;
};

}  // namespace

std::vector<DraftComplaint> complaints_on_batch(const Batch& batch, const Catalog& catalog, const Authors& authors) {
    Check check(batch, catalog, authors);
    if (const auto whole = check.on_the_whole()) throw InputRefused({*whole});
    return check.on_drafts();
}

void check_batch(const Batch& batch, const Catalog& catalog, const Authors& authors) {
    constexpr std::size_t most = 20;
    Check check(batch, catalog, authors);
    std::vector<Complaint> list;
    for (auto& draft : check.on_drafts())
        if (list.size() < most) list.push_back(std::move(draft.complaint));
    if (const auto whole = check.on_the_whole()) {
        if (batch.practice) list.clear();
        if (list.size() < most) list.push_back(*whole);
    }
    std::stable_sort(list.begin(), list.end(),
                     [](const Complaint& a, const Complaint& b) { return a.place.line < b.place.line; });
    if (!list.empty()) throw InputRefused(std::move(list));
}

}  // namespace tapbook
