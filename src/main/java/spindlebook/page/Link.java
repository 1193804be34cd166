package spindlebook.page;

/**
 * A link in a view.
 *
 * @param word what stands there
 */
public record Link(String word, String href) {}
