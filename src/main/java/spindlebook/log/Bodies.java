package spindlebook.log;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.EnumNamingStrategies;
import com.fasterxml.jackson.databind.JsonDeserializer;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.cfg.CoercionAction;
import com.fasterxml.jackson.databind.cfg.CoercionInputShape;
import com.fasterxml.jackson.databind.cfg.MapperConfig;
import com.fasterxml.jackson.databind.deser.DeserializationProblemHandler;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import com.fasterxml.jackson.databind.introspect.AnnotatedClass;
import com.fasterxml.jackson.databind.introspect.JacksonAnnotationIntrospector;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.type.LogicalType;
import java.io.IOException;
import java.util.Arrays;
import java.util.Collection;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spindlebook.definition.Defined;
import spindlebook.definition.Setting;
import spindlebook.definition.SettingUnit;
import spindlebook.entry.AlignmentWay;
import spindlebook.entry.Content;
import spindlebook.fold.Noted;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedAmount;
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
    KINDS.put("use", Content.Use.class);
    KINDS.put("telltale", Content.Telltale.class);
    KINDS.put("to-do", Content.ToDo.class);
    KINDS.put("fastener", Content.Fastener.class);
    KINDS.put("photo", Content.Photo.class);
    KINDS.put("sign-off", Content.SignOff.class);
    KINDS.put("alignment", Content.Alignment.class);
    KINDS.put("target", Content.Target.class);
    KINDS.put("part", Content.Part.class);
    KINDS.put("joint-place", Content.JointPlace.class);
  }

  private static final String CORRECTION = "correction";

  /**
   * A field that holds one of several, each of which stands in the file under its own name.
   *
   * @param field where it stands while it is read and written, never in the file
   * @param many what is said where it is none, or more than one
   */
  private record OneOf(
      String field,
      Function<Content, Object> said,
      Map<String, ? extends Class<?>> names,
      String many) {}

  private static final Map<Class<?>, OneOf> ONE_OF =
      Map.of(
          Content.Alignment.class,
          new OneOf(
              "way",
              c -> ((Content.Alignment) c).way(),
              AlignmentWay.NAMES,
              "alignment is taken one way, and this one "),
          Content.Definition.class,
          new OneOf(
              "what",
              c -> ((Content.Definition) c).what(),
              Defined.NAMES,
              "a definition says one thing, and this one "));

  private static final List<String> CORRECTION_FIELDS = List.of("target", "kind", "body", "reason");

  private static final ObjectMapper MAPPER = mapper();

  private Bodies() {}

  /** The kinds that are read as more than that they are there. */
  public static Collection<Class<? extends Content>> kinds() {
    return KINDS.values();
  }

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
    JsonNode body = MAPPER.valueToTree(content);
    OneOf one = ONE_OF.get(content.getClass());
    return one == null ? body : byName(one, content, body);
  }

  private static JsonNode byName(OneOf one, Content content, JsonNode body) {
    Object said = one.said().apply(content);
    String name =
        one.names().entrySet().stream()
            .filter(e -> e.getValue().isInstance(said))
            .map(Map.Entry::getKey)
            .findFirst()
            .orElseThrow();
    ObjectNode named = MAPPER.createObjectNode();
    for (Map.Entry<String, JsonNode> field : body.properties()) {
      named.set(field.getKey().equals(one.field()) ? name : field.getKey(), field.getValue());
    }
    return named;
  }

  /** The one that is said, gathered under one field. */
  private static JsonNode gathered(OneOf one, JsonNode body) throws JsonProcessingException {
    if (!(body instanceof ObjectNode named) || body.has(one.field())) {
      throw new Wrong(null, unfit(one.field()));
    }
    ObjectNode gathered = named.deepCopy();
    ObjectNode said = MAPPER.createObjectNode();
    for (String name : one.names().keySet()) {
      JsonNode each = gathered.remove(name);
      if (each != null && !each.isNull()) {
        said.set(name, each);
      }
    }
    if (said.size() != 1) {
      throw new Wrong(null, one.many() + said.size());
    }
    return gathered.set(one.field(), said);
  }

  private static <T> By<T> oneByName(Map<String, Class<? extends T>> names) {
    return new By<>(
        (node, parser, context) -> {
          Map.Entry<String, JsonNode> one = node.properties().iterator().next();
          if (!one.getValue().isObject()) {
            throw wrong(parser, unfit(one.getKey()));
          }
          return context.readTreeAsValue(one.getValue(), names.get(one.getKey()));
        });
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

  /** Whether its kind is known, but its body is of a later version. */
  static boolean isNewer(Entry entry) {
    return entry.v() > 1 && KINDS.containsKey(entry.kind());
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
      return MAPPER.treeToValue(
          ONE_OF.containsKey(type) ? gathered(ONE_OF.get(type), body) : body, type);
    } catch (JsonProcessingException wrong) {
      throw BookRefused.entry("Entry %d (%s) cannot be read: %s.", n, kind, inShort(wrong));
    }
  }

  private static Content correction(long n, JsonNode body) throws JsonProcessingException {
    for (Iterator<String> names = body.fieldNames(); names.hasNext(); ) {
      String name = names.next();
      if (!CORRECTION_FIELDS.contains(name)) {
        throw new Wrong(null, unknown(name, CORRECTION_FIELDS));
      }
    }
    String target = text(body, "target");
    if (target == null) {
      throw new Wrong(null, missing("target"));
    }
    JsonNode corrected = body.get("body");
    String reason = text(body, "reason");
    if (corrected == null || corrected.isNull()) {
      return new Content.Correction(target, null, reason);
    }
    String kind = text(body, "kind");
    if (kind == null) {
      throw new Wrong(null, missing("kind"));
    }
    return new Content.Correction(target, read(n, kind, corrected), reason);
  }

  private static String text(JsonNode body, String field) throws JsonProcessingException {
    JsonNode value = body.get(field);
    if (value != null && !value.isNull() && !value.isTextual()) {
      throw new Wrong(null, unfit(field));
    }
    return value == null || value.isNull() || value.textValue().isBlank()
        ? null
        : value.textValue();
  }

  /** What is wrong, in the book's words: nothing of how it is read here. */
  private static String inShort(JsonProcessingException wrong) {
    if (wrong instanceof Wrong said) {
      return said.getOriginalMessage();
    }
    if (wrong instanceof UnrecognizedPropertyException strange) {
      List<String> known =
          strange.getKnownPropertyIds().stream()
              .map(Object::toString)
              .flatMap(Bodies::inTheFile)
              .sorted()
              .toList();
      return unknown(strange.getPropertyName(), known);
    }
    if (wrong.getCause() instanceof NullPointerException absent) {
      return missing(absent.getMessage());
    }
    if (wrong.getCause() instanceof IllegalArgumentException refused) {
      return refused.getMessage();
    }
    String field = wrong instanceof JsonMappingException mapping ? field(mapping) : "";
    if (field.isEmpty()) {
      return "something in it is not what belongs there";
    }
    return wrong.getOriginalMessage().startsWith("Cannot map `null`")
        ? missing(field)
        : unfit(field);
  }

  private static String field(JsonMappingException wrong) {
    return wrong.getPath().stream()
        .map(JsonMappingException.Reference::getFieldName)
        .filter(Objects::nonNull)
        .reduce((outer, inner) -> inner)
        .orElse("");
  }

  /** A field, or the names that stand in the file for it. */
  private static Stream<String> inTheFile(String field) {
    return ONE_OF.values().stream()
        .filter(one -> one.field().equals(field))
        .findFirst()
        .map(one -> one.names().keySet().stream())
        .orElse(Stream.of(field));
  }

  private static String missing(String field) {
    return "its '" + field + "' is missing";
  }

  private static String unfit(String field) {
    return "its '" + field + "' is not what belongs there";
  }

  private static String unknown(String field, Collection<String> known) {
    return "it has a field '"
        + BookRefused.shown(field)
        + "'; it may have "
        + String.join(", ", known);
  }

  /** Something wrong that is said in words already. */
  private static final class Wrong extends JsonMappingException {
    private static final long serialVersionUID = 1;

    Wrong(JsonParser parser, String words) {
      super(parser, words);
    }
  }

  static ObjectMapper mapper() {
    SimpleModule words = new SimpleModule("words");
    words.addDeserializer(TypedLength.class, new By<>(Bodies::length));
    words.addDeserializer(TypedAngle.class, new By<>(Bodies::angle));
    words.addDeserializer(Setting.class, new By<>(Bodies::setting));
    words.addDeserializer(TypedAmount.class, new By<>(Bodies::amount));
    words.addSerializer(TypedAmount.class, new AmountAsTyped());
    words.addDeserializer(AlignmentWay.class, oneByName(AlignmentWay.NAMES));
    words.addDeserializer(Defined.class, oneByName(Defined.NAMES));
    ObjectMapper mapper =
        Json.MAPPER
            .copy()
            .setSerializationInclusion(JsonInclude.Include.NON_NULL)
            .setAnnotationIntrospector(new SmallWords())
            .addHandler(new NoSuchWord())
            .enable(DeserializationFeature.FAIL_ON_NUMBERS_FOR_ENUMS)
            .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
            .disable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
            .registerModule(words);
    for (LogicalType type :
        List.of(LogicalType.Boolean, LogicalType.Float, LogicalType.Textual, LogicalType.Enum)) {
      for (CoercionInputShape shape : CoercionInputShape.values()) {
        boolean wholeNumber = type == LogicalType.Float && shape == CoercionInputShape.Integer;
        if (!wholeNumber) {
          mapper.coercionConfigFor(type).setCoercion(shape, CoercionAction.Fail);
        }
      }
    }
    return mapper;
  }

  /** As much as may be typed. */
  private static final double MOST_MM = 100_000;

  private static final double MOST_RAD = 2 * Math.PI + 1e-9;

  private static final Set<String> NUMBERS = Set.of("mm", "rad", "amount");

  private interface Reads<T> {
    T of(JsonNode node, JsonParser parser, DeserializationContext context) throws IOException;
  }

  private static final class By<T> extends JsonDeserializer<T> {
    private final Reads<T> reads;

    private By(Reads<T> reads) {
      this.reads = reads;
    }

    @Override
    public T deserialize(JsonParser parser, DeserializationContext context) throws IOException {
      return reads.of(context.readTree(parser), parser, context);
    }
  }

  private static TypedLength length(
      JsonNode node, JsonParser parser, DeserializationContext context) throws IOException {
    if (node.isTextual()) {
      return HandWritten.length(node.asText())
          .orElseThrow(() -> wrong(parser, shown(node) + " is not one length with its unit"));
    }
    checkFields(parser, node, "typed", "mm", "unit", "rule");
    within(parser, node, "mm", MOST_MM, "100 m");
    return new TypedLength(
        node.get("typed").textValue(),
        node.get("mm").doubleValue(),
        context.readTreeAsValue(node.get("unit"), LengthUnit.class),
        node.get("rule").textValue());
  }

  private static TypedAngle angle(JsonNode node, JsonParser parser, DeserializationContext context)
      throws IOException {
    if (node.isTextual()) {
      return HandWritten.angle(node.asText())
          .orElseThrow(() -> wrong(parser, shown(node) + " is not one angle"));
    }
    checkFields(parser, node, "typed", "rad", "rule");
    within(parser, node, "rad", MOST_RAD, "a full turn");
    return new TypedAngle(
        node.get("typed").textValue(), node.get("rad").doubleValue(), node.get("rule").textValue());
  }

  /**
   * A plain decimal number with its unit: there is nothing in it that a later rule could change.
   */
  private static TypedAmount amount(
      JsonNode node, JsonParser parser, DeserializationContext context) throws IOException {
    return Optional.ofNullable(node.textValue())
        .flatMap(text -> TypedAmount.read(text, null))
        .orElseThrow(
            () ->
                wrong(
                    parser,
                    shown(node)
                        + " is not one amount with its unit, a plain decimal such as '61.3"
                        + " N/mm'"));
  }

  private static final class AmountAsTyped extends JsonSerializer<TypedAmount> {
    @Override
    public void serialize(TypedAmount amount, JsonGenerator to, SerializerProvider provider)
        throws IOException {
      to.writeString(amount.typed());
    }
  }

  private static Setting setting(JsonNode node, JsonParser parser, DeserializationContext context)
      throws IOException {
    if (node.isTextual()) {
      return HandWritten.setting(node.asText());
    }
    boolean counted = node.hasNonNull("amount");
    checkFields(
        parser,
        node,
        counted ? new String[] {"typed", "unit", "amount"} : new String[] {"typed", "unit"});
    if (counted) {
      within(parser, node, "amount", MOST_MM, "anything is set to");
    }
    try {
      return new Setting(
          node.get("typed").textValue(),
          context.readTreeAsValue(node.get("unit"), SettingUnit.class),
          counted ? node.get("amount").doubleValue() : null);
    } catch (IllegalArgumentException unfit) {
      throw wrong(parser, unfit.getMessage());
    }
  }

  /** What nobody could have typed would only run over further on. */
  private static void within(
      JsonParser parser, JsonNode node, String field, double most, String words)
      throws IOException {
    if (!(Math.abs(node.get(field).doubleValue()) <= most)) {
      throw wrong(parser, "its '" + field + "' is more than " + words);
    }
  }

  /** Exactly these: numbers where the name is a unit, text elsewhere. */
  private static void checkFields(JsonParser parser, JsonNode node, String... fields)
      throws IOException {
    List<String> known = List.of(fields);
    if (!node.isObject()) {
      throw wrong(parser, "'" + BookRefused.shown(node.toString()) + "' is not what belongs there");
    }
    for (String field : fields) {
      if (!node.hasNonNull(field)) {
        throw wrong(parser, missing(field));
      }
      boolean fits =
          NUMBERS.contains(field) ? node.get(field).isNumber() : node.get(field).isTextual();
      if (!fits) {
        throw wrong(parser, unfit(field));
      }
    }
    for (Iterator<String> names = node.fieldNames(); names.hasNext(); ) {
      String name = names.next();
      if (!known.contains(name) && node.hasNonNull(name)) {
        throw wrong(parser, unknown(name, known));
      }
    }
  }

  private static String shown(JsonNode text) {
    return "'" + BookRefused.shown(text.asText()) + "'";
  }

  private static IOException wrong(JsonParser parser, String sentence) {
    return new Wrong(parser, sentence);
  }

  /** Enumerated words as {@code left-front}. */
  private static final class SmallWords extends JacksonAnnotationIntrospector {
    private static final long serialVersionUID = 1;

    @Override
    public Object findEnumNamingStrategy(MapperConfig<?> config, AnnotatedClass type) {
      return EnumNamingStrategies.KebabCaseStrategy.class;
    }
  }

  private static final class NoSuchWord extends DeserializationProblemHandler {
    @Override
    public Object handleWeirdStringValue(
        DeserializationContext context, Class<?> type, String word, String why) throws IOException {
      if (!type.isEnum()) {
        return NOT_HANDLED;
      }
      String known =
          Arrays.stream(type.getEnumConstants())
              .map(e -> MAPPER.valueToTree(e).textValue())
              .collect(Collectors.joining(", "));
      throw wrong(context.getParser(), "'" + BookRefused.shown(word) + "' is none of " + known);
    }
  }
}
