package spindlebook.sheet;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spindlebook.card.Capital;
import spindlebook.card.Zero;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.Lengths;
import spindlebook.finding.Beside;
import spindlebook.finding.Beside.Found;
import spindlebook.finding.Finding;
import spindlebook.finding.Finding.Group;
import spindlebook.finding.Findings;

/** Two corners beside each other, row by row, in the unit of the first. */
public record Rows(Findings one, Findings other, Lengths lengths) {
  private static final int SEEN_AT_ONCE = 4;
  private static final Set<Group> TRAVEL =
      EnumSet.of(Group.RULES_END, Group.MARGIN, Group.MID_TRAVEL, Group.TOTAL);

  /**
   * @param folded closed until it is asked for: nothing in it differs, or enough stands above it
   * @param counted how many are in it
   */
  public record Titled(String title, boolean folded, String counted, List<Row> rows) {
    /** Else all of it is alike, or not compared. */
    public boolean differs() {
      return rows.get(0).differs();
    }
  }

  /**
   * One thing of both sides.
   *
   * @param apart null where there are no two numbers
   * @param verdict "differs", "within ±", or why it is not compared
   */
  public record Row(
      String what, Cell left, Cell right, FigureText apart, Found found, String verdict) {
    public boolean differs() {
      return found == Found.DIFFERS;
    }
  }

  /** What differs first, the first few of it to be seen at once; then what does not. */
  public List<Titled> titled(Heads heads) {
    Map<String, List<Row>> groups = new LinkedHashMap<>();
    for (Beside beside : Beside.of(one, other, heads.one(), heads.other())) {
      groups
          .computeIfAbsent(beside.either().group().title(), g -> new ArrayList<>())
          .add(row(beside));
    }
    List<Titled> differing = new ArrayList<>();
    List<Titled> folded = new ArrayList<>();
    groups.forEach(
        (title, rows) -> {
          List<Row> differ = rows.stream().filter(Row::differs).toList();
          List<Row> rest = rows.stream().filter(r -> !r.differs()).toList();
          if (!differ.isEmpty()) {
            long above = differing.stream().mapToLong(t -> t.rows().size()).sum();
            boolean fold = above + differ.size() > SEEN_AT_ONCE && above > 0;
            differing.add(new Titled(title, fold, differ.size() + " differ", differ));
          }
          if (!rest.isEmpty()) {
            long same = rest.stream().filter(r -> r.found() == Found.SAME).count();
            folded.add(new Titled(title, true, counted(same, "alike", rest.size() - same), rest));
          }
        });
    differing.addAll(folded);
    return differing;
  }

  /** {@code 3 alike, 2 not compared}; none of a kind is not said. */
  public static String counted(long of, String word, long not) {
    return Stream.of(of + " " + word, not + " not compared")
        .filter(c -> !c.startsWith("0 "))
        .collect(Collectors.joining(", "));
  }

  /** What comes of all that is set and read, without each limit by itself. */
  public List<Row> travel(Heads heads) {
    return Beside.of(one, other, heads.one(), heads.other()).stream()
        .filter(b -> TRAVEL.contains(b.either().group()))
        .map(this::row)
        .toList();
  }

  private Row row(Beside beside) {
    Finding either = beside.either();
    FigureText apart =
        beside.apart() == null ? null : Cell.text(either, beside.apart(), lengths.unit(), true);
    boolean hidden =
        beside.words().equals("differs")
            && apart != null
            && either.group() != Group.ALIGNMENT
            && either.group() != Group.SPRING
            && either.group() != Group.SWIVEL
            && lengths.bare(beside.apart().value()).equals(lengths.bare(0));
    return new Row(
        Capital.of(either.title()),
        Cell.of(beside.one(), either, Zero.FRAME_MARK, lengths.unit()),
        Cell.of(beside.other(), either, Zero.FRAME_MARK, lengths.unit()),
        apart,
        hidden ? Found.SAME : beside.found(),
        hidden ? "by less than is shown" : beside.words());
  }
}
