#include "consumer.h"

int main() { return run_consumer(); }
