/**
 * What the book knows of what carries a corner and ends its motion: rate and ride height, the
 * shock's stroke, the bump stop on landing, how long the strap lasts.
 *
 * <p>{@link spindlebook.ride.CornerRide#of} gives all of a card, kept with it. A figure that lacks
 * something says what ({@link spindlebook.ride.RideNeed}); nothing is guessed. Units as in {@link
 * spindlebook.spring}.
 */
package spindlebook.ride;
