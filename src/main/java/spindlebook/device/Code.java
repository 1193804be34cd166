package spindlebook.device;

import java.time.Instant;

/**
 * What pairs one device, once.
 *
 * @param link the part of the link that cannot be guessed
 * @param typed the short one for the keyboard, in capital letters, without its dash
 * @param keeps what the device it pairs may do
 * @param until when it is over
 */
public record Code(String link, String typed, boolean keeps, Instant until) {
  /** The page of the link, below the book's address. */
  public String path() {
    return "/pair/" + link;
  }

  /** The short code in two halves, as it is read aloud. */
  public String spoken() {
    return typed.substring(0, typed.length() / 2) + "-" + typed.substring(typed.length() / 2);
  }
}
