// serve: the phone page, open until Ctrl-C.
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <cstdio>

#include "cli/command.h"
#include "page/page.h"

namespace tapbook {
namespace {

constexpr std::int64_t usual_port = 8080, last_port = 65535;
const std::string loopback = "127.0.0.1";

std::vector<std::string> typed_names(const Parsed& parsed) {
    std::vector<std::string> names;
    for (std::string rest = parsed.text("--name").value_or(""); !rest.empty();) {
        const auto comma = std::min(rest.find(','), rest.size());
        const std::string name = rest.substr(0, comma);
        if (!is_host_name(name))
            throw UsageError(fmt::format("--name: \"{}\" is no name of a machine", shown(name)),
                             "letters, digits, - and points, like bench.local; several with commas between");
        names.push_back(name);
        rest.erase(0, comma + 1);
    }
    return names;
}

// The addresses to open, the one for phones first.
std::vector<std::string> typed_addresses(const Parsed& parsed) {
    const auto typed = parsed.text("--address");
    if (typed && !parsed.flag("--lan"))
        throw UsageError("--address belongs to --lan", "add --lan; without it only this machine is let in");
    if (!parsed.flag("--lan")) return {loopback};
    if (typed) {
        if (!is_address(*typed) || *typed == "0.0.0.0" || *typed == "::")
            throw UsageError(fmt::format("--address: \"{}\" is no address of one network card", shown(*typed)),
                             "write it in digits, like 192.168.1.20");
        return *typed == loopback ? std::vector{loopback} : std::vector{*typed, loopback};
    }
    std::vector<std::string> all = private_addresses();
    if (all.empty())
        throw NoAnswer("this machine has no private address on a network",
                       "join the shop's network first; or name an address with --address");
    all.push_back(loopback);
    return all;
}

[[noreturn]] void refuse_to_listen(const ListenRefused& refused, const std::string& address, std::int64_t port) {
    switch (refused.trouble()) {
        case ListenTrouble::port_in_use:
            throw CatalogError(CatalogTrouble::busy, fmt::format("port {} is in use by another program", port),
                               "choose another: tapbook serve --port 8081");
        case ListenTrouble::no_such_address:
            throw UsageError(fmt::format("--address: {} is no address of this machine", address),
                             "leave --address out: tapbook serve --lan opens all it has");
        case ListenTrouble::not_permitted:
            throw CatalogError(CatalogTrouble::not_permitted, fmt::format("may not open port {}", port),
                               "ports below 1024 are the system's own; choose a higher one");
        case ListenTrouble::other:
            break;
    }
    throw CatalogError(CatalogTrouble::input_output,
                       fmt::format("cannot open port {} of {}: {}", port, address, refused.what()));
}

// Opens the same port of each address. The port.
int listen_at(HttpServer& server, const std::vector<std::string>& addresses, std::int64_t port) {
    for (const auto& address : addresses) try {
            port = server.listen(address, static_cast<int>(port));
        } catch (const ListenRefused& refused) {
            refuse_to_listen(refused, address, port);
        }
    return static_cast<int>(port);
}

std::string base_of(const std::string& host, int port) {
    return host.find(':') == std::string::npos ? fmt::format("http://{}:{}", host, port)
                                               : fmt::format("http://[{}]:{}", host, port);
}

void say(std::FILE* where, std::string_view text) {
    std::fwrite(text.data(), 1, text.size(), where);
    std::fflush(where);
}

PageTime now() {
    return std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
}

OpenedPage opened_page(const Session& session, const std::vector<std::string>& hosts, bool lan, int port) {
    const Catalog catalog = Catalog::open(session.database, Access::read);
    OpenedPage page;
    page.shop = catalog.own_shop().name;
    page.catalog = session.database.string();
    page.practice = catalog.is_practice();
    page.lan = lan;
    for (const auto& host : hosts) page.addresses.push_back(base_of(host, port));
    return page;
}

ShopPlace place_of(const Session& session, SessionList& sessions, PairingCodes& codes) {
    ShopPlace place;
    place.catalog = session.database;
    place.own_rules = session.database;
    place.own_rules.replace_extension(".rules.toml");
    place.read_rules = [file = session.database] { return rules_beside(file, RuleCases::left_out); };
    place.today = today_text;
    place.random = system_random();
    place.sessions = &sessions;
    place.codes = &codes;
    static_cast<void>(place.read_rules());  // what is wrong with them is said before the page opens
    return place;
}

}  // namespace

Exit run_serve(Session& session, const Parsed& parsed) {
    const auto names = typed_names(parsed);
    const auto addresses = typed_addresses(parsed);
    const auto port = parsed.number("--port", 0, 0, last_port).value_or(usual_port);
    session.database = reading_place(session);
    SessionList phones(now, system_random());
    PairingCodes codes(now, system_random());
    ShopPlace place = place_of(session, phones, codes);

    HttpServer server({}, [](std::string_view text) { say(stderr, fmt::format("tapbook: {}\n", shown(text))); });
    OpenedPage page = opened_page(session, {}, parsed.flag("--lan"), 0);
    const int opened = listen_at(server, addresses, port);
    std::vector<std::string> hosts = names;
    hosts.insert(hosts.end(), addresses.begin(), addresses.end());
    for (const auto& host : hosts) page.addresses.push_back(base_of(host, opened));
    place.base_address = page.addresses.front();
    const PageGate gate(place, OwnNames(addresses, names, opened), now,
                        [](std::string_view line) { say(stderr, fmt::format("{}\n", line)); });

    const auto with_codes = [&] {
        page.token = codes.shown().token;
        page.pin = codes.shown().pin;
        return page;
    };
    say(stdout, session.json ? opened_json(with_codes()) : opened_text(with_codes(), session.screen));
    if (!session.json && ::isatty(STDIN_FILENO) == 1)
        server.on_typed_line([&] {
            codes.renew();
            say(stdout, pairing_text(with_codes(), session.screen));
        });
    server.run(gate, place);
    session.remark = "tapbook: the phone page is closed\n";
    return Exit::done;
}

}  // namespace tapbook
