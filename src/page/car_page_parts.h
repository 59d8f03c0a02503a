// Which parts do the pages of a car show? For this folder only.
#pragma once

#include "page/page_html.h"

namespace tapbook {

// What the words of the address name: the car, the model year and the sound system that was chosen. Throws PageRefused
// (404 for no such car, year or system).
struct AskedCar {
    CarFacts facts;
    std::string system;  // "" for all
};
AskedCar asked_car(const Catalog& catalog, const PageRequest& request);

void write_systems(Html& html, const TapsAnswer& answer, std::string_view chosen);
// The taps of a place from number `first` on while the page has room, one at least; how many were written.
std::size_t write_place(Page& page, const TapsAnswer& answer, const PlaceAnswer& place, std::size_t first);
void write_pair_tap(Html& html, const TapsAnswer& answer, const TapAnswer& tap);

// "front left, speaker" with the volts and the cautions of one tap, as every page shows it.
void write_signal(Html& html, const TapSignal& signal, std::string_view drive);
void write_cautions(Html& html, const std::vector<Hazard>& hazards);

}  // namespace tapbook
