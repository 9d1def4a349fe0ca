#include "decide/search.hpp"
