// The two scales as closed switches, so that a new method does not go unweighed.
#include "evidence/points.h"

#include <algorithm>

namespace tapbook {

int pair_points(Method method) {
    switch (method) {
        case Method::scoped:
            return 4;
        case Method::metered:
            return 3;
        case Method::seen:
            return 2;
        case Method::copied:
            break;
    }
    return 1;
}

int polarity_points(PolarityMethod method) {
    switch (method) {
        case PolarityMethod::scoped:
            return 4;
        case PolarityMethod::phase:
        case PolarityMethod::cell:
            return 3;
        case PolarityMethod::metered:
        case PolarityMethod::seen:
        case PolarityMethod::copied:
            break;
    }
    return 1;
}

int points_after_knowing(int points, bool knew_first, bool has_proof) {
    return knew_first && !has_proof ? std::max(1, points - 1) : points;
}

bool looked_at(Method method) {
    return method != Method::copied;
}

bool looked_at(PolarityMethod method) {
    return polarity_points(method) > polarity_points(PolarityMethod::copied);
}

bool measured(Method method) {
    return method == Method::scoped || method == Method::metered;
}

std::string_view method_words(PolarityMethod method) {
    switch (method) {
        case PolarityMethod::phase:
            return "phase-checked";
        case PolarityMethod::cell:
            return "cell-tested";
        case PolarityMethod::scoped:
        case PolarityMethod::metered:
        case PolarityMethod::seen:
        case PolarityMethod::copied:
            break;
    }
    return word_of(method);
}

}  // namespace tapbook
