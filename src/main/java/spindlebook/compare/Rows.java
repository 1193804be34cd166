package spindlebook.compare;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spindlebook.align.AlignedText;
import spindlebook.alignment.AlignedFinding;
import spindlebook.card.Capital;
import spindlebook.card.Shown;
import spindlebook.card.Zero;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.Lengths;
import spindlebook.drawing.State;
import spindlebook.finding.Beside;
import spindlebook.finding.Beside.Found;
import spindlebook.finding.Finding;
import spindlebook.finding.Finding.Group;
import spindlebook.finding.Findings;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;

/** Two corners beside each other, row by row, in the unit of the first. */
public record Rows(Findings one, Findings other, Lengths lengths) {
  private static final Set<Group> TRAVEL =
      EnumSet.of(Group.RULES_END, Group.MARGIN, Group.MID_TRAVEL, Group.TOTAL);

  /**
   * @param folded closed until it is asked for: nothing in it differs
   * @param counted how many are in it
   */
  public record Titled(String title, boolean folded, String counted, List<Row> rows) {}

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

    /** Whether two numbers were held against each other. */
    boolean measured() {
      return found != Found.NOT_COMPARED && left.figure() != null && right.figure() != null;
    }
  }

  /**
   * @param figure null where there is no number, with {@code word} instead
   * @param state null for what simply holds
   */
  public record Cell(FigureText figure, String word, State state) {}

  /** What differs first, then what does not, folded. */
  List<Titled> titled(Heads heads) {
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
            differing.add(new Titled(title, false, "", differ));
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
  static String counted(long of, String word, long not) {
    return Stream.of(of + " " + word, not + " not compared")
        .filter(c -> !c.startsWith("0 "))
        .collect(Collectors.joining(", "));
  }

  /** What comes of all that is set and read, without each limit by itself. */
  public List<Row> travel(Heads heads, boolean turned) {
    return Beside.of(one, other, heads.one(), heads.other()).stream()
        .filter(b -> TRAVEL.contains(b.either().group()))
        .map(b -> row(turned ? b.turned() : b))
        .toList();
  }

  private Row row(Beside beside) {
    FigureText apart = beside.apart() == null ? null : text(beside.either(), beside.apart(), true);
    boolean hidden =
        beside.words().equals("differs")
            && apart != null
            && beside.either().group() != Group.ALIGNMENT
            && lengths.bare(beside.apart().value()).equals(lengths.bare(0));
    return new Row(
        Capital.of(beside.either().name()),
        cell(beside.one(), beside.either()),
        cell(beside.other(), beside.either()),
        apart,
        hidden ? Found.SAME : beside.found(),
        hidden ? "by less than is shown" : beside.words());
  }

  private Cell cell(Finding finding, Finding either) {
    if (finding == null) {
      boolean mid = either.group() == Group.MID_TRAVEL;
      return new Cell(null, mid ? "nothing found" : "not there", null);
    }
    if (finding.group() == Group.ALIGNMENT && finding.figure() != null) {
      AlignedFinding aligned = Findings.aligned(finding);
      return new Cell(
          AlignedText.of(aligned.figure(), aligned.value(), lengths.unit()),
          AlignedText.acrossEdge(aligned, lengths.unit()).orElse(""),
          AlignedText.state(aligned));
    }
    // What was not read says so in words: its sign is too wide for a column of three.
    State state =
        finding.verdict() == null || finding.verdict() == Outcome.NEEDS
            ? null
            : Shown.state(finding.verdict());
    if (finding.isPlace() && finding.figure() != null) {
      return new Cell(lengths.signedFigure(finding.figure()), Zero.FRAME_MARK.words(), state);
    }
    return finding.figure() == null
        ? new Cell(null, finding.says(), state)
        : new Cell(
            text(finding, finding.figure(), finding.group() == Group.LIMIT),
            finding.atLeast() ? "at least" : finding.says(),
            state);
  }

  private FigureText text(Finding finding, Figure figure, boolean signed) {
    if (finding.group() == Group.ALIGNMENT) {
      return AlignedText.apart(Findings.aligned(finding).figure(), figure, lengths.unit());
    }
    return signed ? lengths.signedFigure(figure) : lengths.figure(figure);
  }
}
