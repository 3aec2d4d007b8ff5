package meltkeeper.cli.outlook;

import static meltkeeper.cli.outlook.Words.count;
import static meltkeeper.cli.outlook.Words.money;
import static meltkeeper.cli.outlook.Words.number;
import static meltkeeper.cli.outlook.Words.percent;
import static meltkeeper.cli.outlook.Words.range;

import java.io.PrintWriter;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Optional;
import meltkeeper.cli.report.TextTable;
import meltkeeper.outlook.Due;
import meltkeeper.outlook.LifeAnswer;

/** What the shop's data say, as text. */
public final class LifeText {

  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("yyyy-MM-dd");

  /** Costs closer than this share are alike. */
  private static final double AS_GOOD = 0.02;

  private final LifeAnswer answer;
  private final PrintWriter out;

  private LifeText(LifeAnswer answer, PrintWriter out) {
    this.answer = answer;
    this.out = out;
  }

  /** Prints it, kind by kind. */
  public static void print(LifeAnswer answer, PrintWriter out) {
    LifeText text = new LifeText(answer, out);
    boolean first = true;
    for (var kind : answer.kinds().entrySet()) {
      if (!first) {
        out.println();
      }
      first = false;
      if (kind.getValue().parts() == 0 && answer.kinds().size() > 1) {
        text.unheard(kind.getKey(), kind.getValue());
      } else {
        text.kind(kind.getKey(), kind.getValue());
      }
    }
  }

  private void unheard(String name, LifeAnswer.OfKind kind) {
    out.printf(
        "%s: no part has run yet; believed to last %s h at %.0f °C%n",
        name, number(kind.believed().lifeHours().p50()), kind.referenceTemperature());
  }

  private void kind(String name, LifeAnswer.OfKind kind) {
    out.printf(
        "%s: %s, %s; hours count as hours at %.0f °C%n",
        name,
        count(kind.parts(), "part"),
        count(kind.failures(), "failure"),
        kind.referenceTemperature());
    line("lasts", "on average " + range(kind.meanLifeHours(), "h"));
    line("heat", "life halves with every " + range(kind.halving(), "K") + " more");
    line("wear", wear(kind));
    line("replace", replace(kind.advice()));
    for (LifeAnswer.Against against : kind.advice().against()) {
      line("", against(against));
    }
    line("because", kind.advice().because());
    line("spares", spares(kind.spares()));
    kind.cleaning().ifPresent(cleaning -> line("cleaning", cleaning(cleaning)));
    kind.hotIdle()
        .ifPresent(
            idle ->
                line(
                    "idle",
                    String.format(
                        java.util.Locale.ROOT,
                        "%s of its hot hours fed nothing; that they age it faster: %s (50 %% is no"
                            + " news)",
                        percent(idle.share()),
                        percent(idle.probabilityFaster()))));
    kind.variants().ifPresent(this::variants);
    line("how sure", howSure(kind));
    kind.notes().forEach(note -> line("note", note));
    fitted(kind);
    kind.explained().ifPresent(explained -> ExplainText.print(kind, explained, out));
  }

  private void line(String label, String text) {
    out.printf("  %-9s %s%n", label, text);
  }

  private static String wear(LifeAnswer.OfKind kind) {
    String shape = "shape " + range(kind.shape(), "").replace(" ,", ",").strip();
    if (kind.shape().p5() > 1) {
      return "it wears out: the older, the likelier to fail (" + shape + ")";
    }
    return kind.shape().p95() < 1
        ? "it fails early or not at all (" + shape + ")"
        : "whether it wears out or fails by chance is not clear yet (" + shape + ")";
  }

  private String replace(LifeAnswer.Advice advice) {
    String costs = money(advice.costPer1000Hours(), answer.currency()) + " per 1000 h";
    return advice.replaceAt().isPresent()
        ? "at " + number(advice.replaceAt().getAsDouble()) + " h, which costs " + costs
        : "only when it fails, which costs " + costs;
  }

  private String against(LifeAnswer.Against against) {
    double saving = against.savingPer1000Hours();
    String habit = against.habit() + " (" + number(against.hours()) + " h)";
    if (Math.abs(saving) < AS_GOOD * against.costPer1000Hours()) {
      return "which costs as much as " + habit;
    }
    return (saving < 0 ? "which costs " : "and saves ")
        + money(Math.abs(saving), answer.currency())
        + (saving < 0 ? " more per 1000 h than " : " per 1000 h against ")
        + habit;
  }

  private static String spares(LifeAnswer.OfSpares spares) {
    if (spares.hotEnds() == 0) {
      return "cannot be told: no hot end with one on it was hot within four weeks";
    }
    return String.format(
        java.util.Locale.ROOT,
        "keep %d for the next %d days (%.1f swaps expected; enough in %s of futures)",
        spares.keep(),
        spares.days(),
        spares.expected(),
        percent(spares.confidence()));
  }

  private String cleaning(LifeAnswer.OfCleaning cleaning) {
    String rates =
        money(cleaning.costPer1000Hours(), answer.currency())
            + " per 1000 h against "
            + money(cleaning.buyNewCostPer1000Hours(), answer.currency())
            + " for buying new";
    String undoes = "; a cleaning undoes " + percent(cleaning.restores().p50()) + " of its age";
    return cleaning.pays() && cleaning.at().isPresent()
        ? String.format(
            "pays: clean at %s h, up to %d times: %s%s",
            number(cleaning.at().getAsDouble()), cleaning.times(), rates, undoes)
        : "does not pay: " + rates + undoes;
  }

  private void variants(LifeAnswer.OfVariants variants) {
    line(
        "variants",
        "that they differ by more than a tenth in life: "
            + percent(variants.probabilityDifferent())
            + " (believed before: "
            + percent(variants.believedDifferent())
            + ")");
    for (LifeAnswer.OfVariant variant : variants.variants()) {
      line(
          "",
          String.format(
              "%s: %s; %s, %s; that it outlasts its kind: %s%s",
              variant.variant(),
              range(variant.lifeHours(), "h"),
              count(variant.parts(), "part"),
              count(variant.failures(), "failure"),
              percent(variant.probabilityLonger()),
              variant.replaceAt().isPresent()
                  ? "; replace at " + number(variant.replaceAt().getAsDouble()) + " h"
                  : ""));
    }
  }

  private static String howSure(LifeAnswer.OfKind kind) {
    double own = kind.learned().life();
    String source =
        own < 0.25
            ? "this is mostly what you believed; your own parts have said little yet"
            : own < 0.75 ? "partly your belief, partly your own parts" : "mostly your own parts";
    return source + " (" + percent(own) + " of what is known of life comes from them)";
  }

  private void fitted(LifeAnswer.OfKind kind) {
    if (kind.fitted().isEmpty()) {
      return;
    }
    out.println();
    TextTable table =
        new TextTable(
            "  Part",
            "On",
            ">Age h",
            ">Life used",
            "Due",
            "Very likely between",
            ">Fails in 24 h",
            ">in 7 days");
    for (LifeAnswer.Fitted part : kind.fitted()) {
      table.row(
          "  " + part.id(),
          part.printer() + (part.hotEnd() == 0 ? "" : "/" + part.hotEnd()),
          number(part.ageHours().p50()),
          percent(part.lifeUsed()),
          part.due().map(this::due).orElse("-"),
          part.due().filter(due -> due.hours() > 0).map(this::between).orElse(""),
          percent(part.failsWithin24Hours()),
          percent(part.failsWithin7Days()));
    }
    table.print(out);
    if (kind.fitted().stream().anyMatch(part -> part.failsWithin24Hours().isEmpty())) {
      out.println("  A dash: its hot end was not hot within four weeks, so there is no duty.");
    }
  }

  private String due(Due due) {
    return due.hours() > 0 ? day(due.at()) : "now";
  }

  private String between(Due due) {
    return day(due.earliest()) + " and " + day(due.latest());
  }

  private String day(Optional<Instant> at) {
    return at.map(instant -> DAY.format(instant.atZone(ZoneId.of(answer.zone()))))
        .orElse("in over 10 years");
  }
}
