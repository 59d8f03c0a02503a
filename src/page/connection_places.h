// How many connections may one neighbour hold, and how many all of them?
#pragma once

#include <map>
#include <memory>
#include <mutex>
#include <string>

namespace tapbook {

// Safe to use from several threads.
class ConnectionPlaces {
  public:
    ConnectionPlaces(int all, int of_one) : all_(all), of_one_(of_one) {}

    // A place for a connection from this address, given back when the pointer goes; nullptr when there is none. Must
    // not outlive this.
    std::shared_ptr<void> take(const std::string& address) {
        const std::lock_guard lock(mutex_);
        int& held = by_address_[address];
        if (taken_ >= all_ || held >= of_one_) {
            if (held == 0) by_address_.erase(address);
            return nullptr;
        }
        ++taken_;
        ++held;
        return {this, [this, address](void*) { give_back(address); }};
    }

    int taken() const {
        const std::lock_guard lock(mutex_);
        return taken_;
    }

  private:
    void give_back(const std::string& address) {
        const std::lock_guard lock(mutex_);
        --taken_;
        const auto found = by_address_.find(address);
        if (--found->second == 0) by_address_.erase(found);
    }

    const int all_, of_one_;
    mutable std::mutex mutex_;
    int taken_ = 0;
    std::map<std::string, int> by_address_;
};

}  // namespace tapbook
