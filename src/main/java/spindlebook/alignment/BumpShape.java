package spindlebook.alignment;

import spindlebook.uncertainty.Figure;

/**
 * Toe against wheel position about ride, as slope and bend.
 *
 * @param window the stretch the readings used lie on
 * @param readings places read, repeats at one place counted once
 * @param degree of the curve fitted
 * @param rideMm wheel position at ride
 * @param toeAtRideRad by the fit
 * @param slope dtoe/dz at ride, rad per mm, + toe-in towards bump
 * @param curvature d²toe/dz² at ride, rad per mm², + toe-in at both ends
 */
public record BumpShape(
    Window window,
    int readings,
    int degree,
    double rideMm,
    Figure toeAtRideRad,
    Figure slope,
    Figure curvature) {}
