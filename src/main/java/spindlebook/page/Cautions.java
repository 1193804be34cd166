package spindlebook.page;

/** The usual cautions, each where its work is. */
public final class Cautions {
  public static final String MEASURING =
      "Stands rated for the load on level ground, wheels chocked, never on a jack alone. An arm"
          + " drops when it is let go: hands out of the pinch. Springs, shocks and gas stops store"
          + " pressure.";
  public static final String SETTING =
      "Jam nuts tight and marked afterwards. No welding near a charged shock. A spring is let off"
          + " before a rod end is turned.";
  public static final String WHEEL =
      "Wheel nuts tightened crosswise to the wheel maker's torque, and again after the first drive."
          + " A spacer takes thread off the studs: the nuts still need a stud's diameter of it"
          + " (common practice).";
  public static final String FIGURES =
      "These are the owner's measurements against the owner's limits. Local rules on modified"
          + " vehicles and a licensed inspection stand above them.";

  private Cautions() {}
}
