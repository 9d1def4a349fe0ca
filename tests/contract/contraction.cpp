// What a compiler contracts into one operation where nothing forbids it: see contraction.cmake.
double sum_with_product(double a, double b, double c) { return a * b + c; }
