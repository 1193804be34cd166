package spindlebook.uncertainty;

import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.function.BiConsumer;
import java.util.function.Predicate;

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

  private static final Figure NOTHING = new Figure(0, new Source[0], new int[0], new double[0]);

  private final double value;

  // One part a source, in the order of the sources' marks: two figures are joined in one walk.
  private final Source[] sources;
  private final int[] marks;
  private final double[] parts;

  /** The arrays are nobody else's to change. */
  private Figure(double value, Source[] sources, int[] marks, double[] parts) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("a figure needs a finite value, not " + value);
    }
    for (int i = 0; i < parts.length; i++) {
      if (!Double.isFinite(parts[i])) {
        throw new IllegalArgumentException(
            "the part of " + sources[i] + " is not finite: " + parts[i]);
      }
    }
    this.value = value;
    this.sources = sources;
    this.marks = marks;
    this.parts = parts;
  }

  /** A value that is not doubted, such as a chosen number. */
  public static Figure exact(double value) {
    return NOTHING.worth(value);
  }

  /** The same parts of another value. */
  private Figure worth(double other) {
    return new Figure(other, sources, marks, parts);
  }

  /** A value with one source. {@code u} is a standard uncertainty, not negative. */
  public static Figure of(double value, Source source, double u) {
    return exact(value).withSource(source, u);
  }

  /** A value with its parts, each coefficient × u, signed. */
  public static Figure of(double value, Map<Source, Double> parts) {
    List<Figure> singles =
        parts.entrySet().stream().map(part -> single(part.getKey(), part.getValue())).toList();
    double[] ones = new double[singles.size()];
    Arrays.fill(ones, 1);
    return linear(value, singles, ones);
  }

  private static Figure single(Source source, double part) {
    return new Figure(0, new Source[] {source}, new int[] {source.hashCode()}, new double[] {part});
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
    return linear(inputs, sensitivities, 0, sensitivities.length).worth(value);
  }

  /** Halves, so that many figures of many sources are not walked through once for each. */
  private static Figure linear(List<Figure> inputs, double[] sensitivities, int from, int to) {
    if (to - from <= 1) {
      return to == from ? NOTHING : joined(0, inputs.get(from), sensitivities[from], NOTHING, 1);
    }
    int middle = (from + to) / 2;
    return to - from == 2
        ? joined(
            0, inputs.get(from), sensitivities[from], inputs.get(to - 1), sensitivities[to - 1])
        : joined(
            0,
            linear(inputs, sensitivities, from, middle),
            1,
            linear(inputs, sensitivities, middle, to),
            1);
  }

  private static Figure joined(double value, Figure a, double ofA, Figure b, double ofB) {
    int most = a.parts.length + b.parts.length;
    Source[] sources = new Source[most];
    int[] marks = new int[most];
    double[] parts = new double[most];
    int n = 0;
    int i = 0;
    int j = 0;
    while (i < a.parts.length || j < b.parts.length) {
      int order = order(a, i, b, j);
      parts[n] = (order <= 0 ? ofA * a.parts[i] : 0) + (order >= 0 ? ofB * b.parts[j] : 0);
      marks[n] = order <= 0 ? a.marks[i] : b.marks[j];
      sources[n] = order <= 0 ? a.sources[i] : b.sources[j];
      i += order <= 0 ? 1 : 0;
      j += order >= 0 ? 1 : 0;
      // A part that cancelled to nothing is no longer a source of this figure.
      n += parts[n] == 0 ? 0 : 1;
    }
    return n == most
        ? new Figure(value, sources, marks, parts)
        : new Figure(
            value, Arrays.copyOf(sources, n), Arrays.copyOf(marks, n), Arrays.copyOf(parts, n));
  }

  /** Negative where a's source i comes before b's j, or b has no more; 0 where they are one. */
  private static int order(Figure a, int i, Figure b, int j) {
    if (i == a.parts.length || j == b.parts.length) {
      return i == a.parts.length ? 1 : -1;
    }
    int byMark = Integer.compare(a.marks[i], b.marks[j]);
    if (byMark != 0 || a.sources[i].equals(b.sources[j])) {
      return byMark;
    }
    int byId = a.sources[i].id().compareTo(b.sources[j].id());
    return byId != 0 ? byId : a.sources[i].kind().compareTo(b.sources[j].kind());
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
    Map<Source, Double> map = new LinkedHashMap<>();
    eachPart(map::put);
    return Collections.unmodifiableMap(map);
  }

  void eachPart(BiConsumer<Source, Double> with) {
    for (int i = 0; i < parts.length; i++) {
      with.accept(sources[i], parts[i]);
    }
  }

  public Figure plus(Figure other) {
    return joined(value + other.value, this, 1, other, 1);
  }

  public Figure minus(Figure other) {
    return joined(value - other.value, this, 1, other, -1);
  }

  public Figure plus(double exact) {
    return worth(value + exact);
  }

  public Figure times(double exact) {
    return joined(value * exact, this, exact, NOTHING, 1);
  }

  /** The same value with one more source; a source it already has is added to linearly. */
  public Figure withSource(Source source, double u) {
    if (!(u >= 0)) {
      throw new IllegalArgumentException("a standard uncertainty is not negative: " + u);
    }
    return joined(value, this, 1, single(source, u), 1);
  }

  /** Standard uncertainty. */
  public double u() {
    return Math.sqrt(covariance(this));
  }

  /** The same of some kinds of sources alone. */
  public double u(Predicate<SourceKind> of) {
    return Math.sqrt(
        parts().entrySet().stream()
            .filter(p -> of.test(p.getKey().kind()))
            .mapToDouble(p -> p.getValue() * p.getValue())
            .sum());
  }

  /** Expanded uncertainty, k = 2. */
  public double U() {
    return K * u();
  }

  /** u(y, z): the sum over the shared sources of the product of their parts. */
  public double covariance(Figure other) {
    // What rounding loses is added at the end: the sum does not hang on what the sources are
    // called.
    double sum = 0;
    double lost = 0;
    int i = 0;
    int j = 0;
    while (i < parts.length && j < other.parts.length) {
      int order = order(this, i, other, j);
      double term = order == 0 ? parts[i] * other.parts[j] : 0;
      double more = sum + term;
      lost += Math.abs(sum) >= Math.abs(term) ? sum - more + term : term - more + sum;
      sum = more;
      i += order <= 0 ? 1 : 0;
      j += order >= 0 ? 1 : 0;
    }
    return sum + lost;
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
        && Arrays.equals(parts, figure.parts)
        && Arrays.equals(sources, figure.sources);
  }

  @Override
  public int hashCode() {
    return Objects.hash(value, Arrays.hashCode(parts), Arrays.hashCode(marks));
  }

  @Override
  public String toString() {
    return String.format(Locale.ROOT, "%.4f ± %.4f", value, U());
  }
}
