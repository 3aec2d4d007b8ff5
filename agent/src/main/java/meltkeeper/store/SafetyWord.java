package meltkeeper.store;

/** A caution that goes with an alert, as {@code docs/safety.md} has it at length. */
enum SafetyWord {
  HOT_METAL("Hot metal burns: let it cool, or hold it with tools."),
  EYES("Wear eye protection for scraping and compressed air."),
  FUMES(
      "PTFE must stay below 260 °C: its fumes are harmful to people and deadly to birds."
          + " Air the room and keep birds out."),
  NO_SAFETY_DEVICE(
      "A printer left alone is a fire risk, and Meltkeeper is no safety device: it replaces no"
          + " smoke detector, thermal protection, fire code or electrician.");

  private final String text;

  SafetyWord(String text) {
    this.text = text;
  }

  String text() {
    return text;
  }
}
