// The models behind the plain functions of the header.
#pragma once

#include "antenna/aperture.hpp"
#include "antenna/cosine.hpp"
#include "antenna/dipole.hpp"
#include "antenna/helix.hpp"
#include "antenna/polarization.hpp"
#include "limits/exposure.hpp"
#include "noise/external.hpp"
#include "noise/products.hpp"
#include "noise/thermal.hpp"
#include "path/diffraction.hpp"
#include "path/free_space.hpp"
#include "path/indoor.hpp"
#include "path/two_ray.hpp"
#include "units/length.hpp"
#include "units/mismatch.hpp"
#include "units/power.hpp"
