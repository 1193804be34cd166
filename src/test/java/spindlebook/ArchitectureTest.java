package spindlebook;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The house's arrows: Main/App/Routes → features → log, web and the pure packages. */
class ArchitectureTest {
  private static final JavaClasses HOUSE =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("spindlebook");

  /** From the ground up: each sees some of those before it and none of those after it. */
  private static final String[] PURE = {
    "spindlebook.units..",
    "spindlebook.uncertainty..",
    "spindlebook.definition..",
    "spindlebook.entry..",
    "spindlebook.fold..",
    "spindlebook.words..",
    "spindlebook.plan..",
    "spindlebook.curve..",
    "spindlebook.linkage..",
    "spindlebook.spring..",
    "spindlebook.travel..",
    "spindlebook.advice..",
    "spindlebook.alignment..",
    "spindlebook.measured..",
    "spindlebook.parts..",
    "spindlebook.ride..",
    "spindlebook.finding.."
  };

  /** From the ground up. */
  private static final String[] WEB = {
    "spindlebook.drawing..", "spindlebook.page..", "spindlebook.web.."
  };

  /** The first part of every package's name below the house's own, which is "". */
  private static final Set<String> ROOMS =
      HOUSE.stream()
          .map(JavaClass::getPackageName)
          .map(p -> p.replaceFirst("^spindlebook\\.?", "").replaceFirst("\\..*", ""))
          .collect(Collectors.toCollection(TreeSet::new));

  /** Every room that is not pure, the log or what all pages are made of: none can be forgotten. */
  private static final String[] FEATURES =
      ROOMS.stream()
          .filter(room -> !Set.of("", "log", "drawing", "page", "web").contains(room))
          .map(room -> "spindlebook." + room + "..")
          .filter(room -> !List.of(PURE).contains(room))
          .toArray(String[]::new);

  @Test
  void a_pure_package_knows_only_the_jdk_commons_math_and_pure_packages() {
    check(
        classes()
            .that()
            .resideInAnyPackage(PURE)
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage(
                join(
                    PURE,
                    "java.lang..",
                    "java.util..",
                    "java.math..",
                    "java.time..",
                    "org.apache.commons.math3..")));
  }

  @Test
  void a_pure_package_knows_no_clock_and_no_chance() {
    check(
        noClasses()
            .that()
            .resideInAnyPackage(PURE)
            .should()
            .dependOnClassesThat()
            .haveFullyQualifiedName("java.time.Clock")
            .orShould()
            .callMethod(System.class, "currentTimeMillis")
            .orShould()
            .callMethod(System.class, "nanoTime")
            .orShould()
            .callMethod(java.time.Instant.class, "now")
            .orShould()
            .dependOnClassesThat()
            .haveFullyQualifiedName("java.util.Random"));
  }

  @Test
  void the_pure_arrows_run_downward() {
    for (int i = 0; i < PURE.length - 1; i++) {
      noArrow(PURE[i], Arrays.copyOfRange(PURE, i + 1, PURE.length));
    }
  }

  @Test
  void definitions_and_entries_are_told_in_units_and_know_no_doubt() {
    noArrow("spindlebook.definition..", "spindlebook.uncertainty..");
    noArrow("spindlebook.entry..", "spindlebook.uncertainty..");
  }

  @Test
  void the_log_knows_no_feature_and_no_page() {
    noArrow(
        "spindlebook.log..",
        join(
            join(FEATURES, WEB),
            "spindlebook.curve..",
            "spindlebook.travel..",
            "spindlebook.alignment..",
            "io.javalin..",
            "gg.jte.."));
  }

  @Test
  void what_pages_are_made_of_knows_no_feature_and_no_book() {
    String[] fromDefinitionsOn = Arrays.copyOfRange(PURE, 2, PURE.length);
    for (int i = 0; i < WEB.length; i++) {
      noArrow(WEB[i], join(FEATURES, fromDefinitionsOn));
      noArrow(
          WEB[i],
          join(Arrays.copyOfRange(WEB, i + 1, WEB.length), "spindlebook.log..", "org.jdbi.."));
    }
  }

  @Test
  void no_room_knows_the_front_door() {
    check(
        noClasses()
            .that()
            .resideInAnyPackage(join(FEATURES, join(WEB, join(PURE, "spindlebook.log.."))))
            .should()
            .dependOnClassesThat()
            .resideInAPackage("spindlebook"));
  }

  @Test
  void rooms_form_no_ring() {
    slices().matching("spindlebook.(*)..").should().beFreeOfCycles().check(HOUSE);
  }

  @Test
  void no_room_is_too_large_or_leant_on_by_too_many() throws IOException {
    Pattern room =
        Pattern.compile("^import (?:static )?spindlebook\\.(\\w+)\\.", Pattern.MULTILINE);
    Map<String, Integer> holds = new TreeMap<>();
    Map<String, Integer> leantOn = new TreeMap<>();
    List<Path> files;
    try (Stream<Path> all = Files.walk(Path.of("src", "main", "java"))) {
      files = all.filter(f -> f.toString().endsWith(".java")).toList();
    }
    for (Path file : files) {
      holds.merge(file.getParent().getFileName().toString(), 1, Integer::sum);
      room.matcher(Files.readString(file))
          .results()
          .map(r -> r.group(1))
          .distinct()
          .forEach(r -> leantOn.merge(r, 1, Integer::sum));
    }
    holds.values().removeIf(n -> n <= 40);
    leantOn.values().removeIf(n -> n <= files.size() / 3);
    leantOn.remove("entry");
    assertEquals(Map.of(), holds, "files of a room");
    assertEquals(Map.of(), leantOn, "files that import from a room, of " + files.size());
  }

  @Test
  void sql_is_spoken_in_stores_lists_and_the_log_only() {
    check(
        noClasses()
            .that()
            .resideInAnyPackage(FEATURES)
            .and()
            .haveSimpleNameNotEndingWith("Store")
            .and()
            .haveSimpleNameNotEndingWith("List")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("org.jdbi..", "java.sql.."));
  }

  @Test
  void every_package_is_in_a_known_room() {
    assertEquals(
        new TreeSet<>(
            Set.of(
                "",
                "units",
                "uncertainty",
                "definition",
                "entry",
                "fold",
                "geometry",
                "words",
                "plan",
                "curve",
                "linkage",
                "spring",
                "travel",
                "advice",
                "measured",
                "parts",
                "ride",
                "suspension",
                "alignment",
                "finding",
                "log",
                "drawing",
                "page",
                "web",
                "charts",
                "sums",
                "gauge",
                "car",
                "card",
                "corner",
                "round",
                "setting",
                "watch",
                "book",
                "device",
                "use",
                "todo",
                "fastener",
                "telltale",
                "recheck",
                "photo",
                "drivecheck",
                "life",
                "limits",
                "trial",
                "compare",
                "sheet",
                "figures",
                "backup")),
        ROOMS);
  }

  @Test
  void no_class_is_a_manager_helper_or_the_like() {
    check(
        noClasses().should().haveNameMatching(".*(Manager|Helper|Impl|Data|Util|Utils|Service)$"));
  }

  @Test
  void the_top_level_holds_what_it_should() throws IOException {
    try (Stream<Path> top = Files.list(Path.of(""))) {
      List<String> odd =
          top.map(p -> p.getFileName().toString())
              .filter(n -> !n.startsWith("."))
              .filter(
                  n ->
                      !Set.of(
                              "pom.xml",
                              "README.md",
                              "DEVELOPERS.md",
                              "src",
                              "db",
                              "static",
                              "docs",
                              "target",
                              "data")
                          .contains(n))
              .toList();
      assertTrue(odd.isEmpty(), () -> "not in the plan: " + odd);
    }
  }

  private static void noArrow(String from, String... to) {
    check(
        noClasses()
            .that()
            .resideInAPackage(from)
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(to));
  }

  private static void check(ArchRule rule) {
    rule.check(HOUSE);
  }

  private static String[] join(String[] some, String... more) {
    return Stream.concat(Stream.of(some), Stream.of(more)).toArray(String[]::new);
  }
}
