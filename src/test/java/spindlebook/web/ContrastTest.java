package spindlebook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Relative luminance and contrast ratio as defined in W3C, WCAG 2.2, glossary. */
class ContrastTest {
  private static final Pattern COLOUR = Pattern.compile("--([a-z-]+): (#[0-9a-f]{6});");

  /** Figures and what they stand on. */
  private static final String[][] FIGURES = {
    {"ink", "paper"},
    {"ink", "wash"},
    {"ink", "short-wash"},
    {"on-blue", "blue"},
    {"paper", "blue"},
    {"paper", "ink"}
  };

  /** Words, state shapes with their words, links. */
  private static final String[][] TEXTS = {
    {"quiet", "paper"},
    {"quiet", "wash"},
    {"blue", "paper"},
    {"clear", "paper"},
    {"short", "paper"},
    {"short", "short-wash"},
    {"unsure", "paper"}
  };

  @Test
  void the_formula_gives_the_two_ratios_everybody_knows() {
    assertEquals(21, ratio("#000000", "#ffffff"), 1e-9);
    assertEquals(4.54, ratio("#767676", "#ffffff"), 0.005); // from memory: the lightest AA grey
  }

  @Test
  void figures_reach_seven_to_one_and_text_four_and_a_half_in_both_schemes() throws IOException {
    List<Map<String, String>> schemes = schemes();
    assertEquals(3, schemes.size(), "light, dark, print");
    for (Map<String, String> scheme : schemes) {
      for (String[] pair : FIGURES) {
        reaches(7, pair, scheme);
      }
      for (String[] pair : TEXTS) {
        reaches(4.5, pair, scheme);
      }
      reaches(3, new String[] {"rule", "paper"}, scheme);
    }
  }

  private static void reaches(double least, String[] pair, Map<String, String> scheme) {
    double ratio = ratio(scheme.get(pair[0]), scheme.get(pair[1]));
    assertTrue(ratio >= least, pair[0] + " on " + pair[1] + " is " + ratio + " in " + scheme);
  }

  private static List<Map<String, String>> schemes() throws IOException {
    String css = Specimen.css();
    Map<String, String> light = new LinkedHashMap<>();
    List<Map<String, String>> schemes = new java.util.ArrayList<>();
    for (String block : css.split(":root \\{")) {
      Map<String, String> scheme = new LinkedHashMap<>(light);
      Matcher matcher = COLOUR.matcher(block.substring(0, Math.max(0, block.indexOf('}'))));
      while (matcher.find()) {
        scheme.put(matcher.group(1), matcher.group(2));
      }
      if (light.isEmpty()) {
        light.putAll(scheme);
      }
      if (!scheme.isEmpty()) {
        schemes.add(scheme);
      }
    }
    return schemes;
  }

  private static double ratio(String one, String other) {
    double a = luminance(one);
    double b = luminance(other);
    return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
  }

  private static double luminance(String hex) {
    int rgb = Integer.parseInt(hex.substring(1), 16);
    return 0.2126 * linear(rgb >> 16)
        + 0.7152 * linear(rgb >> 8 & 255)
        + 0.0722 * linear(rgb & 255);
  }

  private static double linear(int channel) {
    double c = channel / 255.0;
    return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
  }
}
