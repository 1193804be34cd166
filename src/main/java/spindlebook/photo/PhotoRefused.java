package spindlebook.photo;

import java.io.IOException;

/** What was sent is no photo that can be kept; the message is one sentence for who sent it. */
final class PhotoRefused extends IOException {
  private static final long serialVersionUID = 1;

  PhotoRefused(String sentence) {
    super(sentence);
  }

  static PhotoRefused truncated() {
    return new PhotoRefused("The photo ends before it is whole: send it again.");
  }

  static PhotoRefused unknown() {
    return new PhotoRefused("That is no photo that can be kept: send a JPEG or a PNG.");
  }
}
