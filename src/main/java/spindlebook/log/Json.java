package spindlebook.log;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.StreamWriteConstraints;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;

/**
 * JSON as the book reads and writes it: one compact line, doubles in their shortest form, a field
 * named twice refused, no number that is not finite, bounded depth and length.
 */
public final class Json {
  /** Levels of nesting that are read; a line of the book adds one to its body's. */
  static final int DEPTH = 64;

  private static final int LONGEST_DOCUMENT = 16 << 20;

  public static final ObjectMapper MAPPER =
      JsonMapper.builder(
              JsonFactory.builder()
                  .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                  .enable(StreamReadFeature.USE_FAST_DOUBLE_PARSER)
                  .enable(StreamWriteFeature.USE_FAST_DOUBLE_WRITER)
                  .disable(JsonWriteFeature.WRITE_NAN_AS_STRINGS)
                  .streamReadConstraints(
                      StreamReadConstraints.builder()
                          .maxNestingDepth(DEPTH)
                          .maxDocumentLength(LONGEST_DOCUMENT)
                          .maxStringLength(LONGEST_DOCUMENT)
                          .maxNumberLength(100)
                          .build())
                  .streamWriteConstraints(
                      StreamWriteConstraints.builder().maxNestingDepth(DEPTH).build())
                  .build())
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .enable(DeserializationFeature.FAIL_ON_READING_DUP_TREE_KEY)
          .build();

  private Json() {}

  /** Reads one value; what is wrong with it is said in the exception's message, in a few words. */
  public static JsonNode read(byte[] utf8) throws IOException {
    // From zeros or a mark another encoding would be guessed, and lines read that are none of ours.
    if (utf8.length > 0 && (utf8[0] <= 0 || utf8.length > 1 && utf8[1] == 0)) {
      throw new IOException("it is not plain UTF-8, as if an editor had saved it otherwise");
    }
    JsonNode node;
    try {
      node = MAPPER.readTree(utf8);
    } catch (JsonProcessingException wrong) {
      throw new IOException("it is not JSON that can be read" + from(wrong), wrong);
    }
    check(node);
    return node;
  }

  /** Refuses, in a few words, what could be written but never be read again. */
  public static void check(JsonNode node) throws IOException {
    check(node, DEPTH);
  }

  private static void check(JsonNode node, int levels) throws IOException {
    if (levels == 0) {
      throw new IOException("it is nested deeper than " + DEPTH + " levels");
    }
    if (node.isFloatingPointNumber() && !Double.isFinite(node.doubleValue())) {
      throw new IOException("a number in it is not finite");
    }
    for (JsonNode child : node) {
      check(child, levels - 1);
    }
  }

  /** Where it goes wrong, in the book's words: nothing of how it is read here. */
  private static String from(JsonProcessingException wrong) {
    JsonLocation at = wrong.getLocation();
    return at == null || at.getColumnNr() < 1 ? "" : ", from character " + at.getColumnNr() + " on";
  }
}
