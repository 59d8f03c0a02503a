// What do the tests of the pages read? A practice shop with one car, two parts and one job, made in the shop's own text
// forms; whatever a person could have typed there is asked of the test.
#pragma once

#include <functional>
#include <string>

#include "a_server.h"
#include "files/files.h"
#include "files/toml_writer.h"
#include "page/pages.h"

namespace tapbook::shop {

inline const std::string tap = "base/front-left/radio-plug";

// A text for the field of this name.
using Naming = std::function<std::string(const std::string& field)>;

inline std::string plain(const std::string& field) {
    return field;
}

// A page without the hidden tokens of its forms, which are random.
inline std::string without_tokens(std::string html) {
    const std::string before = "name=\"form_token\" value=\"";
    for (auto at = html.find(before); at != std::string::npos; at = html.find(before, at + 1)) {
        const auto from = at + before.size();
        html.replace(from, html.find('"', from) - from, "TOKEN");
    }
    return html;
}

// In TOML's own writing.
inline std::string quoted(const std::string& text) {
    return toml_text(text);
}

inline std::string car_file(const Naming& name, int taps) {
    std::string text = "[vehicle]\nmake = " + quoted(name("Orlin")) + "\nmodel = " + quoted(name("Brelk")) +
                       "\nbody = " + quoted(name("sedan")) +
                       "\nfirst_year = 2012\nlast_year = 2018\nremarks = " + quoted(name("a remark")) +
                       "\n[[system]]\ncode = \"base\"\nname = " + quoted(name("plain sound")) + "\ntells = [" +
                       quoted(name("no badge")) + "]\n";
    for (int i = 0; i < taps; ++i) {
        const std::string circuit = i == 0 ? "front-left" : "circuit-" + std::to_string(i);
        text += "[[circuit]]\nat = \"base\"\ncode = \"" + circuit +
                "\"\nrole = \"speaker\"\nposition = \"front left\"\ndrive = \"bridged\"\ncarries = " +
                quoted(name("voices")) + "\nremarks = " + quoted(name("of the circuit")) + "\n[[tap]]\nat = \"base/" +
                circuit + "\"\ncode = \"radio-plug\"\nplace = " + quoted(name("dash")) +
                "\nconnector = " + quoted(name("B block")) + "\npanels = [" + quoted(name("surround")) +
                "]\nminutes = " + std::to_string(10 + i) + "\nplug_in_lead = " + quoted(name("lead")) +
                "\nremarks = " + quoted(name("of the tap")) + "\n[[note]]\nat = \"base/" + circuit +
                "/radio-plug\"\ndate = 2025-04-02\nmethod = \"metered\"\npositive = \"white\"\nnegative = "
                "\"white/black\"\npositive_cavity = " +
                quoted(name("5")) + "\nnegative_cavity = " + quoted(name("6")) + "\ninitials = " + quoted(name("mk")) +
                "\nremarks = " + quoted(name("of the note")) + "\nac_v = 8.4\nsupply_v = 14.2\n";
    }
    text += "[[circuit]]\nat = \"base\"\ncode = \"accessory\"\nrole = \"switched_power\"\ncarries = " +
            quoted(name("the radio")) +
            "\n[[tap]]\nat = \"base/accessory\"\ncode = \"fuse-box\"\nplace = " + quoted(name("fuse box")) +
            "\nminutes = 4\n";
    return text;
}

inline std::string parts_file(const Naming& name, int converters) {
    std::string text;
    for (int i = 0; i < converters; ++i)
        text += "[[converter]]\ncode = \"part-" + std::to_string(i) + "\"\nmaker = " + quoted(name("Vellin")) +
                "\nname = " + quoted(name("Two")) +
                "\ntopology = \"transformer\"\nchannels = 2\nadding = \"none\"\ninput_min_v = 3\ninput_max_v = 12\n"
                "input_max_hz = 30\nsurvives_v = 20\ninput_ohms = 2000\nreference = \"floating\"\n"
                "negatives = \"separate\"\nmax_common_mode_v = 50\nmax_dc_difference_v = 0.3\ngain_min = 0.05\n"
                "gain_max = 0.4\noutput_max_v = 5\noutput_ohms = 600\noutput_shield = \"isolated\"\n"
                "corner_hz = 8\nisolates = true\nsupply_ma = 0\nturn_on = \"none\"\n";
    return text + "[[amplifier]]\ncode = \"mono\"\nmaker = " + quoted(name("Kessa")) +
           "\nname = " + quoted(name("Mono")) +
           "\nuse = \"sub\"\nchannels = 1\ninput_max_v = 8\nwatts_at = [\"4:300\"]\nleast_ohms = "
           "2\nsensitivity_high_gain_v = "
           "0.2\nsensitivity_low_gain_v = 6\ninput_ohms = 10000\nshield = \"lifted\"\nturn_on_ma = 15\n";
}

// The shop, with a job in which its tap was planned and read.
struct Shop {
    explicit Shop(const Naming& name = plain, int taps = 2, int converters = 2) {
        Catalog catalog = Catalog::open(server.place.catalog, Access::write);
        catalog.add(read_batch(car_file(name, taps), "car.toml"), false, "2026-05-04");
        catalog.add(read_batch(parts_file(name, converters), "parts.toml"), false, "2026-05-04");
        car = catalog.vehicle_names().front().path;
        JobStart start;
        start.vehicle = car;
        start.system = "base";
        start.year = 2016;
        start.customer = name("T-301");
        start.initials = name("je");
        const ShopJob job = catalog.start_job(start, "2026-05-04", repeatable_random("job")).job;
        code = job.code;
        JobChecks checks;
        checks.entries = {{CheckItem::lamps, CheckAnswer::bad, name("service lamp")}};
        checks.agreed = name("cu");
        catalog.check_job(job.number, CheckList::came, checks);
        catalog.start_action(job.number, name("pulled fuse 31"), "2026-05-04");
        Values read;
        read["positive"] = std::string("BN");
        read["remarks"] = name("of the reading");
        catalog.read_at_job(job.number, {car + "/" + tap, NoteKind::pair, read, false, false}, "2026-05-04");
        JobPlan plan;
        plan.tap = car + "/" + tap;
        plan.converter = "part-0";
        plan.amplifier = "mono";
        catalog.plan_job(job.number, plan, "base");
    }

    // Every address that a person can read, one at least for each pattern of the pages.
    std::vector<std::string> addresses() const {
        const std::string job = "/job/" + code;
        return {"/",
                "/?words=brelk",
                "/?words=zzzz",
                "/found?words=brelk",
                "/car/" + car,
                "/car/" + car + "?system=base&year=2016",
                "/advice/" + car,
                "/advice/" + car + "?amp=mono",
                "/changes/" + car,
                "/jobs",
                "/jobs/new/" + car,
                job,
                job + "/came",
                job + "/left",
                job + "/plan",
                job + "/read",
                job + "/read?at=front-left/radio-plug",
                job + "/read?kind=system",
                job + "/close",
                job + "/drawing",
                "/note/" + car + "?tap=" + tap,
                "/note/" + car + "?tap=base&kind=system",
                "/why/" + car + "?tap=" + tap,
                "/why/" + car + "?tap=base&year=2016",
                "/shelf",
                "/shelf?models=1",
                "/shelf/count",
                "/shelf/count/part-0",
                "/shelf/count/part-0?booking=order&pieces=2",
                "/shelf/count/mono"};
    }

    AServer server;
    std::string code, car;  // of the job; path of the car
};

}  // namespace tapbook::shop
