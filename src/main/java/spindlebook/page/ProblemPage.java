package spindlebook.page;

/**
 * What stands on the page when a request cannot be answered.
 *
 * @param status the HTTP status, 400 to 599
 * @param heading what is wrong, in a few words
 * @param sentence what to do now, one sentence
 */
public record ProblemPage(int status, String heading, String sentence) {}
