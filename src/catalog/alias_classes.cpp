// See alias_classes.h. A tree of the paths that were said: uniting two nodes unites those below them by their labels.
#include "catalog/alias_classes.h"

#include <algorithm>
#include <iterator>

namespace tapbook {

AliasClasses::AliasClasses(const std::vector<Pair>& said) {
    for (const auto& [one, other] : said) unite(node_of(one), node_of(other));
}

int AliasClasses::standing_for(int node) const {
    while (nodes_[static_cast<std::size_t>(node)].same != node) node = nodes_[static_cast<std::size_t>(node)].same;
    return node;
}

int AliasClasses::add(int parent, std::string_view label) {
    const int node = static_cast<int>(nodes_.size());
    nodes_.push_back({node, {{parent, std::string(label)}}, {}});
    return node;
}

int AliasClasses::node_of(std::string_view path) {
    const auto car = path_head(path, vehicle_depth);
    auto root = cars_.find(car);
    if (root == cars_.end()) root = cars_.emplace(std::string(car), add(none, car)).first;
    int node = standing_for(root->second);
    const auto parts = path_parts(path);
    for (std::size_t i = vehicle_depth; i < parts.size(); ++i) {
        const auto& below = nodes_[static_cast<std::size_t>(node)].below;
        const auto found = below.find(parts[i]);
        if (found != below.end()) {
            node = standing_for(found->second);
            continue;
        }
        const int next = add(node, parts[i]);
        nodes_[static_cast<std::size_t>(node)].below.emplace(std::string(parts[i]), next);
        node = next;
    }
    return node;
}

void AliasClasses::unite(int one, int other) {
    std::vector<std::pair<int, int>> open = {{one, other}};
    while (!open.empty()) {
        const int to = standing_for(open.back().first), from = standing_for(open.back().second);
        open.pop_back();
        if (to == from) continue;
        Node& kept = nodes_[static_cast<std::size_t>(to)];
        Node& gone = nodes_[static_cast<std::size_t>(from)];
        gone.same = to;
        kept.ways.insert(kept.ways.end(), gone.ways.begin(), gone.ways.end());
        for (const auto& [label, node] : gone.below)
            if (const auto [found, is_new] = kept.below.emplace(label, node); !is_new)
                open.emplace_back(found->second, node);
    }
}

AliasClasses::Place AliasClasses::place_of(std::string_view path) const {
    const auto root = cars_.find(path_head(path, vehicle_depth));
    if (root == cars_.end()) return {none, path};
    Place place{standing_for(root->second), path_tail(path, vehicle_depth)};
    while (!place.rest.empty()) {
        const auto& below = nodes_[static_cast<std::size_t>(place.node)].below;
        const auto label = place.rest.substr(0, place.rest.find('/'));
        const auto found = below.find(label);
        if (found == below.end()) break;
        place.node = standing_for(found->second);
        place.rest.remove_prefix(std::min(label.size() + 1, place.rest.size()));
    }
    return place;
}

int AliasClasses::class_of_car(std::string_view car) const {
    const auto found = cars_.find(car);
    return found == cars_.end() ? none : standing_for(found->second);
}

namespace {

std::string joined(const std::string& above, std::string_view rest) {
    return rest.empty() ? above : path_join(above, rest);
}

// Is a longer beginning of the path than its car among them?
bool has_head_among(const std::set<std::string>& paths, std::string_view path) {
    for (std::size_t depth = system_depth; depth < path_parts(path).size(); ++depth)
        if (paths.contains(std::string(path_head(path, depth)))) return true;
    return false;
}

void keep_smaller(std::string& least, std::string path) {
    if (least.empty() || path < least) least = std::move(path);
}

}  // namespace

std::string AliasClasses::name(int node) const {
    std::string least;
    for (const auto& [parent, label] : nodes_[static_cast<std::size_t>(node)].ways)
        keep_smaller(least, parent == none ? label : path_join(name(standing_for(parent)), label));
    return least;
}

std::string AliasClasses::name_below(int car, int node) const {
    if (node == car) return name(node);
    std::string least;
    for (const auto& [parent, label] : nodes_[static_cast<std::size_t>(node)].ways) {
        if (parent == none) continue;
        if (const auto above = name_below(car, standing_for(parent)); !above.empty())
            keep_smaller(least, path_join(above, label));
    }
    return least;
}

std::set<std::string> AliasClasses::all(int node) const {
    std::set<std::string> paths;
    for (const auto& [parent, label] : nodes_[static_cast<std::size_t>(node)].ways) {
        if (parent == none) {
            paths.insert(label);
            continue;
        }
        for (const auto& above : all(standing_for(parent))) paths.insert(path_join(above, label));
    }
    return paths;
}

bool AliasClasses::lies_in(int car, int node) const {
    if (node == car) return true;
    const auto& ways = nodes_[static_cast<std::size_t>(node)].ways;
    return std::any_of(ways.begin(), ways.end(),
                       [&](const Way& way) { return way.parent != none && lies_in(car, standing_for(way.parent)); });
}

std::string AliasClasses::name_of(std::string_view path) const {
    const auto [node, rest] = place_of(path);
    return node == none ? std::string(path) : joined(name(node), rest);
}

std::string AliasClasses::name_in(std::string_view car, std::string_view path) const {
    const auto [node, rest] = place_of(path);
    const int root = class_of_car(car);
    if (node == none || root == none) return path_head(path, vehicle_depth) == car ? std::string(path) : std::string();
    const auto above = name_below(root, node);
    return above.empty() ? std::string() : joined(above, rest);
}

std::vector<std::string> AliasClasses::members(std::string_view path) const {
    const auto [node, rest] = place_of(path);
    if (node == none) return {std::string(path)};
    std::set<std::string> paths;
    for (const auto& above : all(node)) paths.insert(joined(above, rest));
    return {paths.begin(), paths.end()};
}

std::vector<std::string> AliasClasses::places_of_car(std::string_view car) const {
    const int root = class_of_car(car);
    if (root == none) return {std::string(car)};
    const auto own = all(root);
    std::set<std::string> others;
    for (int node = 0; node < static_cast<int>(nodes_.size()); ++node) {
        if (standing_for(node) != node || node == root || !lies_in(root, node)) continue;
        for (const auto& path : all(node))
            if (!own.contains(std::string(path_head(path, vehicle_depth)))) others.insert(path);
    }
    std::vector<std::string> places(own.begin(), own.end());
    std::copy_if(others.begin(), others.end(), std::back_inserter(places),
                 [&](const std::string& path) { return !has_head_among(others, path); });
    return places;
}

}  // namespace tapbook
