package spindlebook.entry;

/** What a drive leaves behind to be read. */
public enum TelltaleKind {
  SHOCK_RING("ring on the shock shaft"),
  CLAY("clay"),
  WITNESS_MARK("witness mark"),
  STRAP_LENGTH("strap between drives, mount to mount"),
  TYRE_PRESSURE("tyre pressure as found");

  private final String words;

  TelltaleKind(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
