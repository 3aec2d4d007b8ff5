package meltkeeper.cli.tune;

import java.io.PrintWriter;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import meltkeeper.cli.report.TextTable;
import meltkeeper.part.Moments;

/** Tells people how limits of the jam watch did. */
public final class TuneText {

  private static final String NONE = "-";

  private TuneText() {}

  /** Prints it, times as the shop tells them. */
  public static void print(TuneAnswer answer, ZoneId zone, PrintWriter out) {
    TextTable limits =
        new TextTable(
            ">false-alarm-every",
            ">jams",
            ">warned",
            ">by 30 s",
            ">by 5 min",
            ">lead 10 %, min",
            ">median",
            ">false alarms",
            ">per 1000 h (95 %)");
    for (TuneAnswer.OfLimit limit : answer.limits()) {
      TuneAnswer.Rate rate = limit.falseAlarmRate();
      limits.row(
          hours(limit.falseAlarmEveryHours()),
          String.valueOf(limit.knownJams()),
          String.valueOf(limit.warnedBeforeStall()),
          String.valueOf(limit.calledAtOnce()),
          String.valueOf(limit.calledSoon()),
          tenths(limit.leadMinutes().p10()),
          tenths(limit.leadMinutes().p50()),
          String.valueOf(limit.falseAlarms()),
          String.format(Locale.ROOT, "%.1f (%.1f-%.1f)", rate.rate(), rate.low(), rate.high()));
    }
    limits.print(out);
    out.printf(Locale.ROOT, "%.1f printing hours outside of jams%n", answer.printingHours());
    if (answer.blindHours() > 0) {
      out.printf(
          Locale.ROOT,
          "%.1f printing hours blind: see replay without --tune%n",
          answer.blindHours());
    }
    if (!answer.jams().isEmpty()) {
      out.println();
      jams(answer, zone).print(out);
    }
    out.println();
    out.println(answer.advice().because());
    out.println();
    out.printf("%d lines read%n", answer.lines());
    answer.rejected().forEach((reason, count) -> out.printf("%d %s%n", count, reason));
  }

  private static TextTable jams(TuneAnswer answer, ZoneId zone) {
    List<String> header = new ArrayList<>(List.of("hot end", "stalled"));
    answer.limits().forEach(limit -> header.add(">" + hours(limit.falseAlarmEveryHours())));
    header.add("note");
    TextTable table = new TextTable(header.toArray(String[]::new));
    for (TuneAnswer.OfJam jam : answer.jams()) {
      List<String> row = new ArrayList<>();
      row.add(jam.printer() + (jam.hotEnd() == 0 ? "" : "/" + jam.hotEnd()));
      row.add(Moments.words(jam.stalled().getEpochSecond() * 1_000_000_000L, zone));
      jam.alarms().forEach(alarm -> row.add(words(alarm)));
      row.add(jam.note());
      table.row(row.toArray(String[]::new));
    }
    return table;
  }

  private static String words(TuneAnswer.OfAlarm alarm) {
    if (alarm.leadMinutes().isPresent()) {
      return tenths(alarm.leadMinutes()) + " min before";
    }
    return alarm.secondsAfterStop().isPresent()
        ? String.format(Locale.ROOT, "%.1f min late", alarm.secondsAfterStop().getAsDouble() / 60)
        : "missed";
  }

  private static String hours(double hours) {
    return String.format(Locale.ROOT, "%.0fh", hours);
  }

  private static String tenths(OptionalDouble value) {
    return value.isPresent() ? String.format(Locale.ROOT, "%.1f", value.getAsDouble()) : NONE;
  }
}
