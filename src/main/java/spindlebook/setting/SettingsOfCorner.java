package spindlebook.setting;

import java.util.List;
import spindlebook.page.SettingRow;

/** One corner's adjusters, as they are set. */
public record SettingsOfCorner(
    String place, List<SettingRow> rows, String newHref, String trialHref) {}
