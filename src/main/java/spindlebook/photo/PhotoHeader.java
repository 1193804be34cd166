package spindlebook.photo;

/**
 * What a photo's header says, before anything of it is decoded.
 *
 * @param png true for PNG, false for JPEG
 * @param bytesPerPx what one pixel takes once it is decoded, rounded up
 * @param passes how often the decoder walks over the picture: once, or once a scan of a progressive
 *     one
 * @param heldBytes what the decoder holds of it besides, where it must hold all of it at once
 * @param orientation as the camera was held, 1 to 8 as in EXIF; 1 is upright
 */
record PhotoHeader(
    boolean png,
    int widthPx,
    int heightPx,
    int bytesPerPx,
    int passes,
    long heldBytes,
    int orientation) {
  static final int MOST_PX = 40_000_000;

  /** So that no single row is large. */
  static final int LONGEST_SIDE_PX = 16_384;

  void check() throws PhotoRefused {
    if (widthPx < 1 || heightPx < 1) {
      throw PhotoRefused.unknown();
    }
    boolean large = (long) widthPx * heightPx > MOST_PX;
    if (large || widthPx > LONGEST_SIDE_PX || heightPx > LONGEST_SIDE_PX) {
      throw new PhotoRefused(
          "The photo is "
              + widthPx
              + " by "
              + heightPx
              + " pixels: send one of at most 40 megapixels and "
              + LONGEST_SIDE_PX
              + " on a side.");
    }
  }
}
