package meltkeeper.alert.route;

import java.time.ZoneId;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import meltkeeper.part.Moments;
import meltkeeper.store.Alert;
import meltkeeper.store.AlertTopic;
import meltkeeper.store.Subject;

/** Alerts in words for a person. */
public record Words(ZoneId zone) {

  /** One line, {@code heron: too hot}. */
  static String title(Message message) {
    Alert alert = message.alert();
    String title = of(alert.subject()) + ": " + of(alert.topic());
    if (message.isSample()) {
      return "Test, nothing is the matter";
    }
    return switch (alert.phase()) {
      case BEGAN -> title;
      case REMINDER -> "Still: " + title;
      case ALL_CLEAR -> "All clear: " + title;
    };
  }

  /** One line for several, {@code L-014 on heron: replacement is due soon, and 2 more}. */
  static String title(List<Message> messages) {
    String first = title(messages.get(0));
    return messages.size() == 1 ? first : first + ", and " + (messages.size() - 1) + " more";
  }

  static String of(AlertTopic topic) {
    return switch (topic) {
      case JAM_NARROWING -> "a jam begins";
      case JAM_STALLED -> "jammed";
      case JAM_BLIND -> "the jam watch sees too little";
      case PART_DUE -> "replacement is due soon";
      case PART_OVERDUE -> "replacement is overdue";
      case BATCH_AT_RISK -> "the batch is at risk";
      case TOO_HOT -> "too hot";
      case IDLE_HOT -> "hot with nothing to do";
      case PRINTER_SILENT -> "silent while hot";
      case STORE_TROUBLE -> "trouble with its store";
    };
  }

  static String of(Subject subject) {
    return subject
        .partId()
        .map(part -> part + " on " + subject.place().map(Object::toString).orElse("no printer"))
        .or(() -> subject.place().map(Object::toString))
        .or(subject::printerName)
        .orElse("Meltkeeper");
  }

  /** Everything there is to say of several: each with its id, the cautions once. */
  String letter(List<Message> messages) {
    if (messages.size() == 1) {
      return letter(messages.get(0));
    }
    StringBuilder letter = new StringBuilder();
    Set<String> cautions = new LinkedHashSet<>();
    for (Message message : messages) {
      Alert alert = message.alert();
      letter.append(title(message)).append('\n').append(alert.text()).append('\n');
      letter.append(Moments.words(alert.atNanos(), zone)).append(", ").append(alert.id());
      letter.append("\n\n");
      cautions.addAll(alert.cautions());
    }
    cautions.forEach(caution -> letter.append("! ").append(caution).append('\n'));
    letter.append(cautions.isEmpty() ? "" : "\n");
    return letter
        .append("No more reminders of one: meltkeeper alert acknowledge, and its id\n")
        .toString();
  }

  /** Everything there is to say, in lines that read well on a phone. */
  String letter(Message message) {
    Alert alert = message.alert();
    StringBuilder letter = new StringBuilder(alert.text()).append("\n\n");
    letter.append(Moments.words(alert.atNanos(), zone)).append('\n');
    if (!alert.cautions().isEmpty()) {
      letter.append('\n');
      alert.cautions().forEach(caution -> letter.append("! ").append(caution).append('\n'));
    }
    if (!message.isSample() && alert.phase() != Alert.Phase.ALL_CLEAR) {
      letter
          .append("\nNo more reminders of this: meltkeeper alert acknowledge ")
          .append(alert.id())
          .append('\n');
    }
    return letter.toString();
  }
}
