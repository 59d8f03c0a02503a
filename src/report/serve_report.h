// What is said when the phone page is opened: where it is, how a phone is paired, who can listen.
#pragma once

#include <string>
#include <vector>

#include "report/screen.h"

namespace tapbook {

struct OpenedPage {
    std::string shop, catalog;
    bool practice = false;
    bool lan = false;                    // others on the network are let in
    std::vector<std::string> addresses;  // "http://192.168.1.20:8080", the one for phones first
    std::string token, pin;              // how a phone is paired
};

// Where a phone is led that scans the symbol: in capitals, so that the symbol stays small.
std::string pairing_link(const OpenedPage& page);

// Everything at the start; and the pairing alone, when a new code was made.
std::string opened_text(const OpenedPage& page, const Screen& screen);
std::string pairing_text(const OpenedPage& page, const Screen& screen);
std::string opened_json(const OpenedPage& page);

}  // namespace tapbook
