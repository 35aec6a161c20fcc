/// The GNU Scientific Library as an independent reference: steps of a differential equation, and a root.
#pragma once

#include <cmath>
#include <vector>

#include <gsl/gsl_errno.h>
#include <gsl/gsl_odeiv2.h>
#include <gsl/gsl_roots.h>

namespace reference
{

/// State after integrating y' = f(t, y) from 0 to `time`; `f` fills a vector of slopes.
template<class F>
std::vector<double> integrated(F f, std::vector<double> state, double time)
{
    gsl_odeiv2_system system{[](double t, const double y[], double slope[], void *p) {
                                 (*static_cast<F *>(p))(t, y, slope);
                                 return int(GSL_SUCCESS);
                             },
                             nullptr, state.size(), &f};
    gsl_odeiv2_driver *driver =
        gsl_odeiv2_driver_alloc_y_new(&system, gsl_odeiv2_step_rk8pd, 1e-6, 1e-13, 1e-13);
    double t = 0;
    const int outcome = gsl_odeiv2_driver_apply(driver, &t, time, state.data());
    gsl_odeiv2_driver_free(driver);
    if (outcome != GSL_SUCCESS)
        state.assign(state.size(), std::nan(""));
    return state;
}

/// A root of `f` in a bracket by Brent's method.
template<class F>
double root(F f, double low, double high)
{
    gsl_function g{[](double x, void *p) { return (*static_cast<F *>(p))(x); }, &f};
    gsl_root_fsolver *solver = gsl_root_fsolver_alloc(gsl_root_fsolver_brent);
    gsl_root_fsolver_set(solver, &g, low, high);
    for (int i = 0; i < 200; ++i) {
        gsl_root_fsolver_iterate(solver);
        if (gsl_root_test_interval(gsl_root_fsolver_x_lower(solver), gsl_root_fsolver_x_upper(solver), 0,
                                   1e-13) == GSL_SUCCESS)
            break;
    }
    const double found = gsl_root_fsolver_root(solver);
    gsl_root_fsolver_free(solver);
    return found;
}

inline bool close(double a, double b, double tolerance)
{
    return std::fabs(a - b) <= tolerance * std::fmax(std::fabs(a), std::fabs(b));
}

} // namespace reference
