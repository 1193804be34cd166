package spindlebook.log;

import java.util.Objects;

/**
 * Where an imported entry stood before.
 *
 * @param book id of the book it was written in
 * @param n its position there
 * @param hash SHA-256 of its line there, in hex
 */
public record Origin(String book, long n, String hash) {
  public Origin {
    Objects.requireNonNull(book, "book");
    Objects.requireNonNull(hash, "hash");
  }
}
