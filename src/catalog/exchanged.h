// What goes from shop to shop, and what became of what came? Plain values: no store and no file behind them.
#pragma once

#include <array>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "catalog/batch.h"

namespace tapbook {

// Ed25519 (RFC 8032).
using PublicKey = std::array<unsigned char, 32>;
using KeySignature = std::array<unsigned char, 64>;

// Does `signature` over `message` come from the owner of `key`? Never throws.
bool is_signed_by(const PublicKey& key, std::string_view message, const KeySignature& signature);

// Any number of bytes as small hexadecimal digits, and back; false when `hex` is not exactly 2 * count of them.
std::string digits_of(std::span<const unsigned char> bytes);
bool bytes_of_digits(std::string_view hex, std::span<unsigned char> bytes);

// One record of a pack: a line in the accepted form, for which fault_of() found none.
struct PackedRecord {
    std::string_view line;
    RecordId id{};
    int number = 0;  // of the line in its file, from 1
};

// A pack whose hash and signature are right. Whether its key is this shop's is asked by take_in().
struct Incoming {
    std::string file;  // for messages
    RecordId id{};     // first half of its hash
    std::string shop;  // who signed it: 32 hexadecimal digits
    PublicKey key{};
    bool practice = false;
    std::vector<PackedRecord> records;  // by type, path and id
};

// Records of one kind: how many were new, and how many lay here already.
struct KindCount {
    std::string kind;  // the record's type
    int fresh = 0, here = 0;
};

// An entry of which several shops wrote the same revision without knowing of each other.
struct ConcurrentEdit {
    EntryKind kind = EntryKind::vehicle;
    std::string path;
    int edits = 0;  // two or more
};

// The pack is whole, but the key it is signed with is not, or not yet, known to be its shop's.
class UnknownKey : public InputRefused {
  public:
    using InputRefused::InputRefused;
};

struct TakeInReport {
    std::string file, shop, shop_name;  // name: "" when this shop has none for it
    bool is_known_shop = false, is_blocked_shop = false, is_own_shop = false;
    bool was_here = false;         // this very pack was taken in before: nothing was looked at
    std::vector<KindCount> kinds;  // by kind, those of which the pack holds any
    int fresh_vouched = 0;         // records here already for which their shop vouches only now
    int unvouched = 0;             // notes that came in another shop's pack and whose own shop has not vouched
    int waiting = 0;               // records of kinds that this version does not know: kept
    std::vector<AddReport::GradeMove> moves;
    bool is_too_large_to_grade = false;  // so many places were touched that their grades were not compared
    std::vector<ConcurrentEdit> concurrent;
    bool written = false;

    int fresh() const;
    int here() const;
};

// Which records go out.
struct OutgoingChoice {
    std::string under;  // a make, or a path that begins with it; "" for everything, parts too
    std::string since;  // a day; "" for all days
    bool own_only = false;
};

struct OutgoingRecord {
    RecordId id{};
    std::string line;
};
using EachOutgoing = std::function<void(OutgoingRecord&&)>;

struct KeyReport {
    std::string shop;  // id
    PublicKey key{};   // the one in use
    int changes = 0;   // how often it was changed
    bool written = false;
};

// "ab12 cd34 ...": the first 16 bytes of SHA-256 of the key, in groups that two people can compare on the telephone.
std::string fingerprint(const PublicKey& key);

struct AliasReport {
    std::string first, second;  // in order
    std::string name;           // of the whole class: its smallest path
    bool was_here = false;
    bool written = false;
};

}  // namespace tapbook
