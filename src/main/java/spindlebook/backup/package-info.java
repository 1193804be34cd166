/**
 * Backups that are known to restore.
 *
 * <p>A {@link spindlebook.backup.Place} is a folder on this disk, a stick or a NAS. In {@code
 * books} it holds {@link spindlebook.backup.BookCopy whole copies} of the book's file, in {@code
 * photos} every photo once. A copy gets its name only after it was opened and its chain and photos
 * were checked; so what lies there under such a name was good when it was made.
 */
package spindlebook.backup;
