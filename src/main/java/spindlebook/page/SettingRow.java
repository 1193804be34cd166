package spindlebook.page;

import spindlebook.drawing.FigureText;

/**
 * One adjuster as it is set.
 *
 * @param what the adjuster
 * @param now what it is set to; null when nobody has said
 * @param since "since 9 Oct · was 14 1/2 in"; may be empty
 * @param href where it is changed; null when it cannot be
 */
public record SettingRow(String what, FigureText now, String since, String href) {}
