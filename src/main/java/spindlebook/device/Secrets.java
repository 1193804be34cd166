package spindlebook.device;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import spindlebook.log.Sha256;

/** What cannot be guessed, and how it is compared so that time tells nothing. */
final class Secrets {
  private static final SecureRandom RANDOM = new SecureRandom();

  private Secrets() {}

  /** Random bytes in letters that may stand in a cookie and an address. */
  static String fresh(int bytes) {
    byte[] random = new byte[bytes];
    RANDOM.nextBytes(random);
    return Base64.getUrlEncoder().withoutPadding().encodeToString(random);
  }

  static String letters(String alphabet, int length) {
    StringBuilder letters = new StringBuilder(length);
    for (int i = 0; i < length; i++) {
      letters.append(alphabet.charAt(RANDOM.nextInt(alphabet.length())));
    }
    return letters.toString();
  }

  static boolean same(String one, String other) {
    return MessageDigest.isEqual(
        one.getBytes(StandardCharsets.UTF_8), other.getBytes(StandardCharsets.UTF_8));
  }

  static String hash(String secret) {
    return Sha256.hex(secret.getBytes(StandardCharsets.UTF_8));
  }
}
