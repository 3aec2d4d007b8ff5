package meltkeeper.cli.outlook;

import static meltkeeper.cli.outlook.Words.number;
import static meltkeeper.cli.outlook.Words.percent;

import java.io.PrintWriter;
import meltkeeper.cli.report.TextTable;
import meltkeeper.outlook.RiskAnswer;

/** Whether a batch gets through, as text. */
public final class RiskText {

  private RiskText() {}

  /** Prints the advice, then the parts. */
  public static void print(RiskAnswer answer, PrintWriter out) {
    out.println(sentence(answer.advice()) + ".");
    answer.cautions().forEach(caution -> out.println("Caution: " + caution + "."));
    if (!answer.parts().isEmpty()) {
      out.println();
      table(answer).print(out);
      out.printf(
          "%nA batch of %s h on %s: at least one of them fails in it with %s.%n",
          number(answer.hours()), answer.printer(), percent(answer.any()));
    }
    answer.notes().forEach(note -> out.println("Note: " + note + "."));
  }

  private static TextTable table(RiskAnswer answer) {
    TextTable table =
        new TextTable("Part", "Kind", ">Age h", ">Fails", "Very likely between", ">A new one");
    for (RiskAnswer.OfPart part : answer.parts()) {
      table.row(
          part.id(),
          part.kind(),
          number(part.ageHours()),
          percent(part.failureProbability().mean()),
          percent(part.failureProbability().p5())
              + " and "
              + percent(part.failureProbability().p95()),
          percent(part.newPartProbability()));
    }
    return table;
  }

  private static String sentence(String advice) {
    return Character.toUpperCase(advice.charAt(0)) + advice.substring(1);
  }
}
