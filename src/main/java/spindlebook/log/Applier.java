package spindlebook.log;

import java.util.Set;
import org.jdbi.v3.core.Handle;

/**
 * Keeps a feature's own tables of the index up to date.
 *
 * <p>It is called once for each entry of its kinds, in the order of the book, in the transaction
 * that writes the entry's row. It must derive all it writes from the entry and from tables it or an
 * earlier applier filled, so that an index built anew is the same. What it throws never loses the
 * entry: its own changes for this entry are undone, the trouble is told, and the index is built
 * anew at the next start.
 */
public interface Applier {
  Set<String> kinds();

  void apply(Handle handle, Entry entry);
}
