package spindlebook.page;

/** One step of the way back up: the word shown and where it leads. */
public record Crumb(String word, String href) {}
