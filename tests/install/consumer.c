#include "consumer.h"

int main(void) { return run_consumer(); }
