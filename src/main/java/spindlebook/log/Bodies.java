package spindlebook.log;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonDeserializer;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import spindlebook.corner.Content;
import spindlebook.corner.Noted;
import spindlebook.corner.Setting;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;

/**
 * Bodies of entries, between JSON and what they say. Words are written small with hyphens ({@code
 * left-front}); what is absent is left out. In a book written by hand a length, an angle or a
 * setting may be a plain text ({@code "8 1/4 in"}), which is then read as if it had been typed.
 */
public final class Bodies {
  /** Kinds this version reads; their bodies are of version 1. */
  private static final Map<String, Class<? extends Content>> KINDS = new LinkedHashMap<>();

  static {
    KINDS.put("car", Content.Car.class);
    KINDS.put("corner", Content.Corner.class);
    KINDS.put("definition", Content.Definition.class);
    KINDS.put("round", Content.Round.class);
    KINDS.put("height", Content.Height.class);
    KINDS.put("reading", Content.Reading.class);
    KINDS.put("adjustment", Content.Adjustment.class);
    KINDS.put("happening", Content.Happening.class);
    KINDS.put("correction", Content.Correction.class);
    KINDS.put("answer", Content.Answer.class);
  }

  private static final String CORRECTION = "correction";

  private static final ObjectMapper MAPPER = mapper();

  private Bodies() {}

  /** The kind under which a content is written. */
  public static String kind(Content content) {
    if (content instanceof Content.Kept kept) {
      return kept.kind();
    }
    return KINDS.entrySet().stream()
        .filter(e -> e.getValue().isInstance(content))
        .map(Map.Entry::getKey)
        .findFirst()
        .orElseThrow();
  }

  /** A draft of an entry that says this. */
  public static Draft draft(String key, long after, String who, Content content) {
    return new Draft(key, kind(content), 1, after, who, null, null, write(content));
  }

  public static JsonNode write(Content content) {
    if (content instanceof Content.Correction correction) {
      ObjectNode body = MAPPER.createObjectNode();
      body.put("target", correction.target());
      if (correction.body() != null) {
        body.put("kind", kind(correction.body()));
        body.set("body", write(correction.body()));
      }
      body.put("reason", correction.reason());
      return body;
    }
    return MAPPER.valueToTree(content);
  }

  /**
   * What an entry says; of an unknown kind, or a later version, only that it is there.
   *
   * @throws BookRefused in one sentence, when the body is not what its kind asks for
   */
  public static Content read(Entry entry) {
    return entry.v() == 1
        ? read(entry.n(), entry.kind(), entry.body())
        : new Content.Kept(entry.kind());
  }

  /** What a body of the present version says, before it is an entry. */
  public static Content read(String kind, JsonNode body) {
    return read(0, kind, body);
  }

  public static Noted noted(Entry entry) {
    return new Noted(entry.n(), entry.key(), entry.at(), entry.who(), entry.after(), read(entry));
  }

  private static Content read(long n, String kind, JsonNode body) {
    Class<? extends Content> type = KINDS.get(kind);
    if (type == null) {
      return new Content.Kept(kind);
    }
    try {
      if (kind.equals(CORRECTION)) {
        return correction(n, body);
      }
      return MAPPER.treeToValue(body, type);
    } catch (JsonProcessingException wrong) {
      throw BookRefused.entry(
          "Entry %d, a %s, cannot be read: %s.", n, kind, inShort(wrong.getOriginalMessage()));
    }
  }

  private static Content correction(long n, JsonNode body) throws JsonProcessingException {
    String target = body.path("target").asText("");
    if (target.isEmpty()) {
      throw BookRefused.entry("Entry %d corrects nothing: it has no target.", n);
    }
    JsonNode corrected = body.get("body");
    return new Content.Correction(
        target,
        corrected == null || corrected.isNull()
            ? null
            : read(n, body.path("kind").asText(""), corrected),
        body.path("reason").asText(""));
  }

  private static String inShort(String message) {
    String line = message == null ? "" : message.lines().findFirst().orElse("");
    return line.replaceAll("\\(class [^)]*\\)|`?spindlebook\\.[A-Za-z.$]*\\.", "")
        .replaceAll("\\s+", " ")
        .replaceAll("[.;:\\s]+$", "");
  }

  static ObjectMapper mapper() {
    SimpleModule words = new SimpleModule("words");
    words.setDeserializerModifier(new SmallWords.Reading());
    words.addSerializer(new SmallWords.Writing());
    words.addDeserializer(TypedLength.class, new LengthOrText());
    words.addDeserializer(TypedAngle.class, new AngleOrText());
    words.addDeserializer(Setting.class, new SettingOrText());
    return Json.MAPPER
        .copy()
        .setSerializationInclusion(JsonInclude.Include.NON_NULL)
        .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
        .disable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
        // A value inside a body is followed by the rest of the body.
        .disable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
        .registerModule(words);
  }

  private static final class LengthOrText extends JsonDeserializer<TypedLength> {
    @Override
    public TypedLength deserialize(JsonParser parser, DeserializationContext context)
        throws IOException {
      JsonNode node = parser.readValueAsTree();
      if (node.isTextual()) {
        return HandWritten.length(node.asText())
            .orElseThrow(
                () -> wrong(parser, "'" + node.asText() + "' is not one length with its unit"));
      }
      requireFields(parser, node, "typed", "mm", "unit", "rule");
      return new TypedLength(
          node.get("typed").asText(),
          node.get("mm").asDouble(),
          SmallWords.read(spindlebook.units.LengthUnit.class, node.get("unit").asText(), parser),
          node.get("rule").asText());
    }
  }

  private static final class AngleOrText extends JsonDeserializer<TypedAngle> {
    @Override
    public TypedAngle deserialize(JsonParser parser, DeserializationContext context)
        throws IOException {
      JsonNode node = parser.readValueAsTree();
      if (node.isTextual()) {
        return HandWritten.angle(node.asText())
            .orElseThrow(() -> wrong(parser, "'" + node.asText() + "' is not one angle"));
      }
      requireFields(parser, node, "typed", "rad", "rule");
      return new TypedAngle(
          node.get("typed").asText(), node.get("rad").asDouble(), node.get("rule").asText());
    }
  }

  private static final class SettingOrText extends JsonDeserializer<Setting> {
    @Override
    public Setting deserialize(JsonParser parser, DeserializationContext context)
        throws IOException {
      JsonNode node = parser.readValueAsTree();
      if (node.isTextual()) {
        return HandWritten.setting(node.asText());
      }
      requireFields(parser, node, "typed", "unit");
      return new Setting(
          node.get("typed").asText(),
          SmallWords.read(spindlebook.corner.SettingUnit.class, node.get("unit").asText(), parser),
          node.hasNonNull("amount") ? node.get("amount").asDouble() : null);
    }
  }

  private static void requireFields(JsonParser parser, JsonNode node, String... fields)
      throws IOException {
    for (String field : fields) {
      if (!node.hasNonNull(field)) {
        throw wrong(parser, "'" + field + "' is missing in " + node);
      }
    }
  }

  private static IOException wrong(JsonParser parser, String sentence) {
    return new com.fasterxml.jackson.databind.JsonMappingException(parser, sentence);
  }

  /** Enumerated words as {@code left-front}. */
  private static final class SmallWords {
    static String write(Enum<?> value) {
      return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    static <E extends Enum<E>> E read(Class<E> type, String word, JsonParser parser)
        throws IOException {
      for (E value : type.getEnumConstants()) {
        if (write(value).equals(word)) {
          return value;
        }
      }
      String known =
          Arrays.stream(type.getEnumConstants())
              .map(SmallWords::write)
              .collect(Collectors.joining(", "));
      throw wrong(parser, "'" + word + "' is none of: " + known);
    }

    static final class Writing extends JsonSerializer<Enum<?>> {
      @Override
      @SuppressWarnings("unchecked")
      public Class<Enum<?>> handledType() {
        return (Class<Enum<?>>) (Class<?>) Enum.class;
      }

      @Override
      public void serialize(Enum<?> value, JsonGenerator out, SerializerProvider provider)
          throws IOException {
        out.writeString(write(value));
      }
    }

    static final class Reading
        extends com.fasterxml.jackson.databind.deser.BeanDeserializerModifier {
      private static final long serialVersionUID = 1;

      @Override
      @SuppressWarnings({"unchecked", "rawtypes"})
      public JsonDeserializer<?> modifyEnumDeserializer(
          com.fasterxml.jackson.databind.DeserializationConfig config,
          com.fasterxml.jackson.databind.JavaType type,
          com.fasterxml.jackson.databind.BeanDescription description,
          JsonDeserializer<?> deserializer) {
        return new JsonDeserializer<Enum<?>>() {
          @Override
          public Enum<?> deserialize(JsonParser parser, DeserializationContext context)
              throws IOException {
            return SmallWords.read((Class) type.getRawClass(), parser.getText(), parser);
          }
        };
      }
    }
  }
}
