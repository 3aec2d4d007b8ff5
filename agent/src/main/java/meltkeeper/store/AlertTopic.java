package meltkeeper.store;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** What an alert is about, how pressing it is, and what to mind when going there. */
public enum AlertTopic {
  JAM_NARROWING("jam-narrowing", Weight.PRESSING, SafetyWord.HOT_METAL, SafetyWord.EYES),
  JAM_STALLED("jam-stalled", Weight.PRESSING, SafetyWord.HOT_METAL, SafetyWord.EYES),
  JAM_BLIND("jam-blind", Weight.PRESSING, SafetyWord.NO_SAFETY_DEVICE),
  PART_DUE("part-due", Weight.CAN_WAIT, SafetyWord.HOT_METAL, SafetyWord.EYES),
  PART_OVERDUE("part-overdue", Weight.CAN_WAIT, SafetyWord.HOT_METAL, SafetyWord.EYES),
  BATCH_AT_RISK("batch-at-risk", Weight.CAN_WAIT, SafetyWord.HOT_METAL),
  TOO_HOT("too-hot", Weight.PRESSING, SafetyWord.FUMES, SafetyWord.HOT_METAL),
  IDLE_HOT("idle-hot", Weight.PRESSING, SafetyWord.HOT_METAL, SafetyWord.NO_SAFETY_DEVICE),
  PRINTER_SILENT("printer-silent", Weight.PRESSING, SafetyWord.NO_SAFETY_DEVICE),
  STORE_TROUBLE("store-trouble", Weight.CAN_WAIT);

  private enum Weight {
    PRESSING,
    CAN_WAIT
  }

  private final String label;
  private final Weight weight;

  /** Unmodifiable, which its type does not tell the compiler. */
  @SuppressWarnings("ImmutableEnumChecker")
  private final List<String> cautions;

  AlertTopic(String label, Weight weight, SafetyWord... words) {
    this.label = label;
    this.weight = weight;
    this.cautions = Arrays.stream(words).map(SafetyWord::text).toList();
  }

  /** As configurations, messages and the store write it. */
  public String label() {
    return label;
  }

  /** The topic of that label. */
  public static Optional<AlertTopic> of(String label) {
    return Arrays.stream(values()).filter(topic -> topic.label.equals(label)).findFirst();
  }

  /** True for what no quiet hours may hold back: jams, heat, and a hot printer out of sight. */
  public boolean isPressing() {
    return weight == Weight.PRESSING;
  }

  /** What to mind, in sentences. */
  public List<String> cautions() {
    return cautions;
  }
}
