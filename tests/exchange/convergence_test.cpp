// Do shops that never share a server end up knowing the same, in whatever order things arrive? Three to five replicas
// write, withdraw, edit, change keys and hand each other packs: early, late, twice, cut off, through others, with
// clocks ten years off. At the end everybody has seen everybody's, and what they would hand on is the same byte for
// byte. TAPBOOK_INTERLEAVINGS says how many; 500 without it, tools/long runs 10,000.
#include <cstdlib>
#include <random>

#include "exchange/shop_fixture.h"

using namespace tapbook;

namespace {

class Replicas {
  public:
    Replicas(const Places& places, std::uint64_t seed) : random_(seed) {
        const int count = 3 + static_cast<int>(random_() % 3);
        for (int i = 0; i < count; ++i)
            shops_.push_back(places.copied_shop("shop " + std::to_string(i), std::to_string(i)));
    }

    void one_step() {
        Catalog& shop = any_shop();
        switch (random_() % 9) {
            case 0:
            case 1:
                return write_note(shop);
            case 2:
                return withdraw(shop);
            case 3:
                return edit(shop);
            case 4:
                if (random_() % 4 == 0) shop.change_key(day(), repeatable_random(std::to_string(random_())), false);
                return;
            case 5:
                return post(pack_of(shop));  // with everything the shop passes on
            case 6:
                return post(pack_of(shop, {{}, {}, true}));
            case 7:
                return deliver(shop, any_of(posted_));
            default:
                return deliver(shop, damaged(any_of(posted_)));
        }
    }

    // Everybody posts what it wrote itself; everybody reads everything, each in an order of its own.
    void meet() {
        for (auto& shop : shops_) post(pack_of(shop, {{}, {}, true}));
        for (auto& shop : shops_) {
            auto packs = posted_;
            std::shuffle(packs.begin(), packs.end(), random_);
            for (const auto& pack : packs) deliver(shop, pack);
        }
    }

    void compare() {
        const auto lines = records_of(shops_.front());
        const auto standing = standing_of(shops_.front());
        for (auto& shop : shops_) {
            REQUIRE(records_of(shop) == lines);
            REQUIRE(standing_of(shop) == standing);
        }
        for (auto& shop : shops_) REQUIRE(shop.check(CheckDepth::full).sound());
    }

  private:
    Catalog& any_shop() { return shops_[random_() % shops_.size()]; }
    std::string any_of(const std::vector<std::string>& list) {
        return list.empty() ? std::string() : list[random_() % list.size()];
    }
    std::string day() { return std::to_string(2016 + random_() % 20) + "-05-02"; }
    std::string place() { return car + "/base/" + (random_() % 2 == 0 ? "front-left" : "rear") + "/radio-plug"; }
    void post(std::string pack) {
        if (!pack.empty()) posted_.push_back(std::move(pack));
    }

    void write_note(Catalog& shop) {
        add_note(shop, random_() % 3 == 0 ? "BN" : "WH", std::to_string(random_() % 6), day(), place());
    }

    void withdraw(Catalog& shop) {
        for (const auto& entry : shop.ledger_at(place()).notes)
            if (entry.note.shop == shop.own_shop().id && entry.state == NoteState::live) {
                shop.withdraw(entry.note.id, WithdrawalReason::typo, day());
                return;
            }
    }

    void edit(Catalog& shop) {
        Batch batch = one_car();
        batch.entries[1].values["name"] = words("speakers " + std::to_string(random_() % 5));
        shop.add(batch, false, day());
    }

    // A shop takes nothing of a pack that is cut off or changed.
    void deliver(Catalog& shop, const std::string& pack) {
        try {
            take(shop, pack);
        } catch (const InputRefused&) {
        }
    }

    std::string damaged(std::string pack) {
        if (pack.empty()) return pack;
        if (random_() % 2 == 0) return pack.substr(0, random_() % pack.size());
        pack[random_() % pack.size()] ^= static_cast<char>(1 + random_() % 255);
        return pack;
    }

    // Which notes count, for whom they are vouched, and which entry wins.
    std::vector<std::string> standing_of(const Catalog& shop) {
        std::vector<std::string> lines;
        for (const char* circuit : {"front-left", "rear"})
            for (const auto& entry : shop.ledger_at(car + "/base/" + circuit + "/radio-plug").notes)
                lines.push_back(to_hex(entry.note.id) + std::string(word_of(entry.state)) + entry.reason +
                                (entry.note.vouched ? "+" : "-"));
        for (const auto& name : shop.vehicle_names()) lines.push_back(name.path);
        if (!shop.vehicle_names().empty()) lines.push_back(shop.car(car, std::nullopt).systems.at(0).entry.name);
        return lines;
    }

    std::mt19937_64 random_;
    std::vector<Catalog> shops_;
    std::vector<std::string> posted_;
};

int interleavings() {
    const char* told = std::getenv("TAPBOOK_INTERLEAVINGS");
    return told == nullptr ? 500 : std::atoi(told);
}

}  // namespace

TEST_CASE("three to five shops end up with the same records and the same answers, whatever the order",
          "[convergence]") {
    for (int seed = 1; seed <= interleavings(); ++seed) {
        INFO("seed " << seed);
        const Places places;
        Replicas replicas(places, static_cast<std::uint64_t>(seed));
        for (int step = 0; step < 24; ++step) replicas.one_step();
        replicas.meet();
        replicas.compare();
    }
}
