// The namespace of the kernels. A file that is compiled for an instruction set of its own sets it before it includes
// them, so that no function built for one instruction set is ever shared with another.
#pragma once

#ifndef LVB_KERNEL
#define LVB_KERNEL kernel
#endif
