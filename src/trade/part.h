// What is a converter, what is an amplifier? Typed forms of the parts' fields. The shop's terms lie apart (terms.h of
// the catalog): what a part is can be exchanged, what it costs cannot.
#pragma once

#include <string>

#include "trade/field.h"

namespace tapbook {

struct Converter {
    std::string path, maker, name, remarks;  // path is the part's one slug
    ConverterSpec spec;
};

struct Amplifier {
    std::string path, maker, name, remarks;
    AmplifierSpec spec;
};

Converter converter_of(const Values& values);
Amplifier amplifier_of(const Values& values);

}  // namespace tapbook
