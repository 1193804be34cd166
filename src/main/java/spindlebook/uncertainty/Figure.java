package spindlebook.uncertainty;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;

/**
 * A value together with everything that makes it doubtful, so that what two figures share cancels
 * or adds up when they are combined.
 *
 * <pre>
 *   y = f(x1 … xN)     part_s = Σi ∂f/∂xi · part_s(xi)      for each source s
 *   u²(y) = Σs part_s²        U = k u, k = 2        u(y, z) = Σs part_s(y) part_s(z)
 * </pre>
 *
 * <p>A part is coefficient × standard uncertainty of one {@link Source}, signed, in the unit of the
 * value. Sources are independent of each other; correlation between figures comes only from sources
 * they share, which makes the sum over sources equal to JCGM 100's sum with covariances.
 *
 * <p>Assumes: f is nearly straight over ± u. Where it is not, the caller widens the figure by a
 * source of its own. k = 2 covers about 95 % when several sources of like size meet; 96.6 % for the
 * difference of two tape readings with rectangular errors (triangular distribution).
 *
 * <p>Source: JCGM 100:2008, eq. 10 (independent inputs), 13 and 16 (correlated inputs), 6.2.1 (U =
 * k u); numbered from memory.
 *
 * <p>Worked example: two heights read with u = 0.458 mm each, 671.5 and 288.9 mm, differ by 382.6
 * mm, u = 0.648 mm, U = 1.30 mm. If both used one mark, the mark's part is gone.
 */
public final class Figure {
  /** Coverage factor of {@link #U()}. */
  public static final double K = 2.0;

  private final double value;
  private final Map<Source, Double> parts;

  /**
   * @param parts nobody else's to change
   */
  private Figure(double value, LinkedHashMap<Source, Double> parts) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("a figure needs a finite value, not " + value);
    }
    for (Map.Entry<Source, Double> part : parts.entrySet()) {
      if (!Double.isFinite(part.getValue())) {
        throw new IllegalArgumentException(
            "the part of " + part.getKey() + " is not finite: " + part.getValue());
      }
    }
    // A part that cancelled to nothing is no longer a source of this figure.
    parts.values().removeIf(part -> part == 0.0);
    this.value = value;
    this.parts = Collections.unmodifiableMap(parts);
  }

  /** A value that is not doubted, such as a chosen number. */
  public static Figure exact(double value) {
    return new Figure(value, new LinkedHashMap<>());
  }

  /** A value with one source. {@code u} is a standard uncertainty, not negative. */
  public static Figure of(double value, Source source, double u) {
    return exact(value).withSource(source, u);
  }

  /** A value with its parts, each coefficient × u, signed. */
  public static Figure of(double value, Map<Source, Double> parts) {
    return new Figure(value, new LinkedHashMap<>(parts));
  }

  /**
   * A figure computed from others: {@code value} as given, parts by the sensitivities
   * ∂value/∂input, in the order of the inputs.
   */
  public static Figure linear(double value, List<Figure> inputs, double[] sensitivities) {
    if (inputs.size() != sensitivities.length) {
      throw new IllegalArgumentException(
          inputs.size() + " inputs but " + sensitivities.length + " sensitivities");
    }
    LinkedHashMap<Source, Double> parts = new LinkedHashMap<>();
    for (int i = 0; i < sensitivities.length; i++) {
      double sensitivity = sensitivities[i];
      inputs.get(i).parts.forEach((s, part) -> parts.merge(s, sensitivity * part, Double::sum));
    }
    return new Figure(value, parts);
  }

  /**
   * The mean of repeats. Parts with an id of their own (placing) become smaller by √n; parts whose
   * id the repeats share (the scale's steps at one place, the tool, the mark) stay as large as they
   * were.
   */
  public static Figure mean(List<Figure> repeats) {
    if (repeats.isEmpty()) {
      throw new IllegalArgumentException("a mean needs at least one figure");
    }
    int n = repeats.size();
    double[] shares = new double[n];
    double sum = 0;
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < n; i++) {
      shares[i] = 1.0 / n;
      sum += repeats.get(i).value;
      least = Math.min(least, repeats.get(i).value);
      most = Math.max(most, repeats.get(i).value);
    }
    // The sum's last digit may leave the repeats; their mean does not, and of equals it is theirs.
    return linear(Math.min(most, Math.max(least, sum / n)), repeats, shares);
  }

  public double value() {
    return value;
  }

  /** Source → coefficient × u, signed; never zero; cannot be changed. */
  public Map<Source, Double> parts() {
    return parts;
  }

  public Figure plus(Figure other) {
    return linear(value + other.value, List.of(this, other), new double[] {1, 1});
  }

  public Figure minus(Figure other) {
    return linear(value - other.value, List.of(this, other), new double[] {1, -1});
  }

  public Figure plus(double exact) {
    return linear(value + exact, List.of(this), new double[] {1});
  }

  public Figure times(double exact) {
    return linear(value * exact, List.of(this), new double[] {exact});
  }

  /** The same value with one more source; a source it already has is added to linearly. */
  public Figure withSource(Source source, double u) {
    if (!(u >= 0)) {
      throw new IllegalArgumentException("a standard uncertainty is not negative: " + u);
    }
    LinkedHashMap<Source, Double> more = new LinkedHashMap<>(parts);
    more.merge(source, u, Double::sum);
    return new Figure(value, more);
  }

  /** Standard uncertainty. */
  public double u() {
    return Math.sqrt(covariance(this));
  }

  /** Expanded uncertainty, k = 2. */
  public double U() {
    return K * u();
  }

  /** u(y, z): the sum over the shared sources of the product of their parts. */
  public double covariance(Figure other) {
    double sum = 0;
    for (Map.Entry<Source, Double> part : parts.entrySet()) {
      sum += part.getValue() * other.parts.getOrDefault(part.getKey(), 0.0);
    }
    return sum;
  }

  /** From −1 to 1; 0 when either figure has no uncertainty. */
  public double correlation(Figure other) {
    double product = u() * other.u();
    return product == 0 ? 0 : covariance(other) / product;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Figure figure
        && Double.compare(value, figure.value) == 0
        && parts.equals(figure.parts);
  }

  @Override
  public int hashCode() {
    return Objects.hash(value, parts);
  }

  @Override
  public String toString() {
    return String.format(Locale.ROOT, "%.4f ± %.4f", value, U());
  }
}
