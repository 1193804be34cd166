package spindlebook.travel;

import java.util.List;
import java.util.Optional;
import spindlebook.uncertainty.Figure;

/**
 * Usable travel, whole and split about ride. Without a term there is no total, only what it needs.
 *
 * @param mm the whole; empty when it needs something
 * @param droopMm ride down to the lower end; empty without a ride height
 * @param bumpMm ride up to the upper end; empty without a ride height
 * @param atLeast an end's limit lies beyond what was read
 */
public record Total(
    Optional<Figure> mm,
    Optional<Figure> droopMm,
    Optional<Figure> bumpMm,
    boolean atLeast,
    List<Need> needs) {}
