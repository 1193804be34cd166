package spindlebook.figures;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Rows of one kind as comma-separated values (RFC 4180, UTF-8, lines ended by CR LF, the first line
 * naming the columns), for a spreadsheet.
 *
 * <p>Numbers stand as plain decimals, times as {@code 2026-10-05 14:03:00} in UTC. What a person
 * typed becomes no formula there, and {@code 5/8} no day in May: what begins like a formula, or
 * could be read as a date, is put behind an apostrophe (common practice, no source).
 *
 * @param name what its file is called
 * @param rows values by column; a column that a row lacks is left empty
 */
public record Table(String name, List<Map<String, JsonNode>> rows) {
  /** A nanometre, a fifth of a second of arc. */
  private static final int DECIMALS = 6;

  private static final Pattern QUOTED = Pattern.compile("[\",\r\n]|^\\s|\\s$");
  private static final Pattern MISREAD =
      Pattern.compile("[=+\\-@\t\r\n＝＋－＠].*|[0-9]+[ /.,:-][0-9 /.,:-]*", Pattern.DOTALL);
  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss");

  public String csv() {
    Set<String> columns = new LinkedHashSet<>();
    rows.forEach(row -> columns.addAll(row.keySet()));
    StringBuilder csv = new StringBuilder();
    line(csv, columns.stream().map(Table::quoted).toList());
    for (Map<String, JsonNode> row : rows) {
      line(csv, columns.stream().map(column -> cell(row.get(column))).toList());
    }
    return csv.toString();
  }

  private static void line(StringBuilder csv, List<String> cells) {
    csv.append(String.join(",", cells)).append("\r\n");
  }

  private static String cell(JsonNode value) {
    if (value == null || value.isNull()) {
      return "";
    }
    if (value.isFloatingPointNumber()) {
      return BigDecimal.valueOf(value.doubleValue())
          .setScale(DECIMALS, RoundingMode.HALF_EVEN)
          .stripTrailingZeros()
          .toPlainString();
    }
    if (!value.isTextual()) {
      return value.asText();
    }
    String text = value.textValue();
    return quoted(MISREAD.matcher(text).matches() ? "'" + text : time(text));
  }

  private static String time(String text) {
    try {
      return text.endsWith("Z") ? TIME.format(Instant.parse(text).atOffset(ZoneOffset.UTC)) : text;
    } catch (DateTimeParseException words) {
      return text;
    }
  }

  private static String quoted(String text) {
    return QUOTED.matcher(text).find() ? '"' + text.replace("\"", "\"\"") + '"' : text;
  }
}
