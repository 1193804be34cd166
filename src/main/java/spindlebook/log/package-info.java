/**
 * The book itself: the append-only file, its one writer, reading it back, and the index in H2 that
 * can always be built anew from the file.
 *
 * <p>The file is the truth. Nothing here changes or removes a byte of an entry that was
 * acknowledged. What the bodies of the entries mean is not known here, but for the few fields that
 * tell which car and corner an entry belongs to.
 */
package spindlebook.log;
