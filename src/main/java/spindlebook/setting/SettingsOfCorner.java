package spindlebook.setting;

import java.util.List;
import spindlebook.page.Link;
import spindlebook.page.SettingRow;

/**
 * One corner's adjusters, as they are set.
 *
 * @param ways what else is set or given there
 */
public record SettingsOfCorner(String place, List<SettingRow> rows, List<Link> ways) {}
