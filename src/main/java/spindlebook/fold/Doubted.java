package spindlebook.fold;

/** An entry that does not count until somebody answers. */
public record Doubted(Noted entry, String kind, String words, String doubt) implements OfEntry {}
