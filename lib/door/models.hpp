// The models behind the plain functions of the header.
#pragma once

#include "antenna/dipole.hpp"
#include "antenna/polarization.hpp"
#include "fading/diversity.hpp"
#include "fading/multipath.hpp"
#include "fading/shadowing.hpp"
#include "noise/thermal.hpp"
#include "path/free_space.hpp"
#include "units/length.hpp"
#include "units/mismatch.hpp"
#include "units/power.hpp"
