package spindlebook.entry;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import spindlebook.definition.Measure;
import spindlebook.definition.WatchPoint;
import spindlebook.units.AngleText;
import spindlebook.units.LengthUnit;
import spindlebook.units.TapeText;
import spindlebook.units.TextRead;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;

/**
 * Reads what is typed for one reading: a length or an angle as the quantity asks, or one of the
 * words of a gap ({@code well clear}, {@code touches}, {@code binds}, {@code not looked}), or what
 * a drill says ({@code 1/8 goes, 3/16 does not}; either half alone).
 */
public final class ReadingText {
  private static final Map<String, GapResult> WORDS =
      Map.ofEntries(
          Map.entry("well clear", GapResult.WELL_CLEAR),
          Map.entry("clear", GapResult.WELL_CLEAR),
          Map.entry("touches", GapResult.TOUCHES),
          Map.entry("touch", GapResult.TOUCHES),
          Map.entry("touching", GapResult.TOUCHES),
          Map.entry("binds", GapResult.BINDS),
          Map.entry("bind", GapResult.BINDS),
          Map.entry("not looked", GapResult.NOT_LOOKED));

  // A size holds none of the words that end it ("3/16 no go" is no size "3/16 no" that goes), and
  // is short, so that long nonsense is refused as fast as it is read.
  private static final String SIZE =
      "((?:(?!\\b(?:does|doesn|not|no|go|goes|fits?|drill|shank)\\b)[^,;]){1,40}?)"
          + "\\s*+(?:(?:drill|shank)\\s*+)?+";
  private static final String NOT = "(?:does not|doesn['’]t|not|no)(?:[- ]?(?:go|fit))?";
  private static final Pattern GOES =
      Pattern.compile(
          SIZE + "(?:goes|go|fits)\\b[,;\\s]*+(?:(?:but|and)\\s++)?(?:" + SIZE + NOT + ")?");
  private static final Pattern DOES_NOT = Pattern.compile(SIZE + NOT);

  private ReadingText() {}

  /** What came of reading a text. */
  public sealed interface Result {}

  /** It says this; what does not belong to the result is null. */
  public record Says(
      GapResult result, TypedLength length, TypedAngle angle, TypedLength go, TypedLength noGo)
      implements Result {}

  /** It can mean more than one; each choice is a text that means one. */
  public record Either(List<String> choices) implements Result {}

  /** It says nothing that can be read; one sentence tells what would be accepted. */
  public record Refused(String sentence) implements Result {}

  /** Whether what is read here is an angle. */
  public static boolean angle(Quantity quantity, WatchPoint point) {
    return quantity == Quantity.CAMBER
        || (point != null && point.place().measure() == Measure.ANGLE);
  }

  public static Result read(String text, LengthUnit bare, Quantity quantity, WatchPoint point) {
    String plain = text.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
    boolean gap = quantity == Quantity.WATCH_POINT || quantity == Quantity.STOP_GAP;
    if (gap && WORDS.containsKey(plain)) {
      return new Says(WORDS.get(plain), null, null, null, null);
    }
    if (angle(quantity, point) || (quantity == Quantity.TOE && plain.matches(".*(°|deg).*"))) {
      return angle(text);
    }
    if (gap && plain.length() <= 100) {
      Matcher goes = GOES.matcher(plain);
      if (goes.matches()) {
        return drill(goes.group(1), goes.group(2), bare);
      }
      Matcher doesNot = DOES_NOT.matcher(plain);
      if (doesNot.matches()) {
        return drill(null, doesNot.group(1), bare);
      }
    }
    boolean signed =
        quantity == Quantity.TOE || (point != null && point.place().measure() == Measure.PLUNGE);
    return length(text, bare, signed, gap);
  }

  private static Result length(String text, LengthUnit bare, boolean signed, boolean gap) {
    TextRead<TypedLength> read = TapeText.read(text, bare);
    if (!signed && read.plain().filter(length -> length.mm() < 0).isPresent()) {
      return new Refused(
          "'"
              + text.strip()
              + (gap
                  ? "' is below nothing; if the parts press on each other, tap 'binds'."
                  : "' is below nothing; type the length without a sign."));
    }
    return result(read, TypedLength::typed, mm -> new Says(GapResult.NUMBER, mm, null, null, null));
  }

  private static <T> Result result(
      TextRead<T> read, Function<T, String> typed, Function<T, Says> says) {
    if (read instanceof TextRead.TwoMeanings<T> two) {
      return new Either(two.choices().stream().map(typed).toList());
    }
    return read instanceof TextRead.Refused<T> refused
        ? new Refused(refused.sentence())
        : says.apply(read.plain().orElseThrow());
  }

  private static Result angle(String text) {
    return result(
        AngleText.read(text),
        TypedAngle::typed,
        rad -> new Says(GapResult.NUMBER, null, rad, null, null));
  }

  private static Result drill(String go, String noGo, LengthUnit bare) {
    TypedLength goes = size(go, bare);
    TypedLength not = size(noGo, bare);
    if ((go != null && goes == null) || (noGo != null && not == null)) {
      return new Refused(
          "A drill is told like this: 1/8 goes, 3/16 does not; '"
              + (go != null && goes == null ? go : noGo)
              + "' is no drill size.");
    }
    if (goes != null && not != null && goes.mm() >= not.mm()) {
      return new Refused(
          "The drill that goes, "
              + goes.typed()
              + ", must be thinner than the one that does not, "
              + not.typed()
              + ".");
    }
    return new Says(GapResult.GO_NO_GO, null, null, goes, not);
  }

  private static TypedLength size(String text, LengthUnit bare) {
    return text == null
        ? null
        : TapeText.plain(text, bare).filter(drill -> drill.mm() > 0).orElse(null);
  }
}
