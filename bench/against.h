#pragma once
// Our run against other integrators on the plant's equations written a second time (tests/cross).
namespace wellproof {
/// Rows of the table; says so where CVODE or SciPy is absent.
void against_rows();
}  // namespace wellproof
