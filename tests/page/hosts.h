// Which Host headers does a server on port 8080 of 127.0.0.1 and 192.168.1.20, called bench.local, answer? 40 values.
#pragma once

#include <string>

struct HostValue {
    std::string host;
    bool is_ours;
};

inline const HostValue host_values[] = {
    {"localhost:8080", true},
    {"LocalHost:8080", true},
    {"127.0.0.1:8080", true},
    {"192.168.1.20:8080", true},
    {"[fe80::1]:8080", true},
    {"[FE80::1]:8080", true},
    {"bench.local:8080", true},
    {"BENCH.LOCAL:8080", true},
    {"", false},
    {"localhost", false},  // the port is missing, and is not 80
    {"127.0.0.1", false},
    {"localhost:80", false},
    {"localhost:8081", false},
    {"localhost:08080", false},
    {"localhost:8080 ", false},
    {" localhost:8080", false},
    {"localhost:8080:8080", false},
    {"localhost.:8080", false},
    {"localhost:", false},
    {"localhost.evil.example:8080", false},
    {"evil.example", false},
    {"evil.example:8080", false},  // a name made to lead here
    {"evil.example:80", false},
    {"127.0.0.1.evil.example:8080", false},
    {"127.0.0.1:8080.evil.example", false},
    {"127.0.0.1@evil.example:8080", false},
    {"evil.example@127.0.0.1:8080", false},
    {"evil.example#127.0.0.1:8080", false},
    {"127.0.0.2:8080", false},  // this machine too, but not opened
    {"127.1:8080", false},      // the same address in other spellings
    {"2130706433:8080", false},
    {"0x7f000001:8080", false},
    {"017700000001:8080", false},
    {"0.0.0.0:8080", false},
    {"[::1]:8080", false},  // not opened
    {"[::]:8080", false},
    {"fe80::1:8080", false},
    {"192.168.1.20:8080,evil.example", false},
    {"bench:8080", false},
    {"http://localhost:8080", false},
};
inline constexpr int the_port = 8080;
