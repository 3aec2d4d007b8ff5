package meltkeeper.desk;

import java.math.BigDecimal;
import java.util.List;

/**
 * What was taken in from paper.
 *
 * @param parts how many
 * @param hotHours of all of them, to the thousandth
 * @param failures how many had jammed or were worn
 * @param stillFitted how many are on a printer and go on
 * @param ids of all of them, in the order of the table
 */
public record PaperAnswer(
    int parts, BigDecimal hotHours, int failures, int stillFitted, List<String> ids) {

  public PaperAnswer {
    ids = List.copyOf(ids);
  }
}
