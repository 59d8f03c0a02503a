// Which paths are the same thing? Whatever was said to be the same is one class, and so is all that lies below: with
// two cars, each of their places. Neither order nor direction of what was said matters. For the files of this folder
// only.
#pragma once

#include <map>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "catalog/state.h"

namespace tapbook {

class AliasClasses {
  public:
    using Pair = std::pair<std::string, std::string>;

    AliasClasses() = default;
    // REQUIRES paths of four parts or more; the two of a pair have the same number of them.
    explicit AliasClasses(const std::vector<Pair>& said);

    bool empty() const { return nodes_.empty(); }

    // The smallest path of the class; the path itself when nothing was said of it.
    std::string name_of(std::string_view path) const;

    // The smallest of those that lie in the car, or in one that is the same; "" when there is none.
    std::string name_in(std::string_view car, std::string_view path) const;

    // All paths of the class in order, this one among them.
    std::vector<std::string> members(std::string_view path) const;

    // Where notes and entries of a car lie: the car by each of its names, in order, then places of other cars that are
    // the same as one of its own; none below another.
    std::vector<std::string> places_of_car(std::string_view car) const;

  private:
    // A path of the class is one of `parent` with the label behind it; a car has no parent and is its own label.
    struct Way {
        int parent;
        std::string label;
    };
    struct Node {
        int same;  // as this node; itself for the one that stands for its class
        std::vector<Way> ways;
        std::map<std::string, int, std::less<>> below;
    };
    // The class that a path, or its longest beginning with one, lies in, and what is left of the path behind it.
    struct Place {
        int node = none;
        std::string_view rest;
    };
    static constexpr int none = -1;

    int standing_for(int node) const;
    int node_of(std::string_view path);
    int add(int parent, std::string_view label);
    void unite(int one, int other);
    Place place_of(std::string_view path) const;
    int class_of_car(std::string_view car) const;
    std::string name(int node) const;
    std::string name_below(int car, int node) const;
    std::set<std::string> all(int node) const;
    bool lies_in(int car, int node) const;

    std::vector<Node> nodes_;
    std::map<std::string, int, std::less<>> cars_;
};

// Who and what counts in one state of the store: shops that count for themselves, and what they said to be the same.
// What strangers call the same is kept and handed on, but has no effect before their shop is known: it would lend one
// car's proven colours to another.
struct Counting {
    KnownShops known;
    AliasClasses same;
};
Counting counting_in(sqlite::Database& database);

// What known shops that are not blocked, and stand to it, said to be the same.
AliasClasses alias_classes(sqlite::Database& database);

// The notes, and the entries of one kind, of a car by all its names, under its class's name. Of the entries of one
// place the one with the smallest path counts; hazards are those of all.
LedgerNotes notes_of_car(sqlite::Database& database, const AliasClasses& same, std::string_view car);
std::vector<CurrentEntry> entries_of_car(sqlite::Database& database, const AliasClasses& same, EntryKind kind,
                                         std::string_view car);

// The winning entry at a place, or at the smallest of its other paths that has one.
std::optional<StoredEntry> entry_of_class(sqlite::Database& database, const AliasClasses& same, EntryKind kind,
                                          std::string_view path);

// The connector side of a tap point, by whichever of its paths has one.
std::optional<ConnectorSide> side_of_class(sqlite::Database& database, const AliasClasses& same,
                                           const std::string& path);

// The notes of single places, each together with those of its class and under the path that was asked for.
LedgerNotes notes_of_classes(sqlite::Database& database, const AliasClasses& same, const std::set<std::string>& paths);

}  // namespace tapbook
