package meltkeeper.cli.outlook;

import static meltkeeper.cli.outlook.Words.number;
import static meltkeeper.cli.outlook.Words.percent;
import static meltkeeper.cli.outlook.Words.range;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import meltkeeper.cli.report.TextTable;
import meltkeeper.outlook.LifeAnswer;

/** The model, the data and the checks behind an answer. */
final class ExplainText {

  private ExplainText() {}

  static void print(LifeAnswer.OfKind kind, LifeAnswer.Explained explained, PrintWriter out) {
    out.printf("%n  Model: %s.%n%n", explained.model());
    TextTable beliefs =
        new TextTable("  Unknown", "Believed at first", "Believed now", ">From your parts");
    beliefs.row(
        "  characteristic life",
        range(kind.believed().lifeHours(), "h"),
        range(kind.lifeHours(), "h"),
        percent(kind.learned().life()));
    beliefs.row(
        "  shape",
        plain(range(kind.believed().shape(), "")),
        plain(range(kind.shape(), "")),
        percent(kind.learned().shape()));
    beliefs.row(
        "  halving interval",
        range(kind.believed().halving(), "K"),
        range(kind.halving(), "K"),
        percent(kind.learned().halving()));
    beliefs.print(out);
    out.println();
    TextTable data =
        new TextTable(
            "  Part", "Standing", ">Hot h", ">Age h", ">Cleanings", ">Last °C", "Failed by then");
    for (LifeAnswer.OfPart part : explained.lives()) {
      data.row(
          "  " + part.id(),
          part.ending(),
          number(part.hotHours()),
          number(part.ageHours()),
          String.valueOf(part.cleanings()),
          part.lastCelsius().isPresent() ? number(part.lastCelsius().getAsDouble()) : "",
          part.failedAmong().stream().map(Words::percent).collect(Collectors.joining(", ")));
    }
    data.print(out);
    out.printf(
        Locale.ROOT,
        "%n  Check: %d failures were seen, the model would have had %.1f.%s%n",
        kind.failures(),
        explained.expectedFailures(),
        places(explained.lives()));
  }

  private static String places(List<LifeAnswer.OfPart> lives) {
    List<Double> shares = lives.stream().flatMap(p -> p.failedAmong().stream()).toList();
    long early = shares.stream().filter(share -> share < 0.5).count();
    return shares.isEmpty()
        ? ""
        : " Failed by then: the share of such parts that it expects to have failed by that"
            + " age; of "
            + shares.size()
            + " failures "
            + early
            + " came in the first half. About half is as it should be; fewer when parts are swapped"
            + " late, more when they are swapped early.";
  }

  private static String plain(String range) {
    return range.replace(" ,", ",").replace("  ", " ").strip();
  }
}
