package meltkeeper.desk;

import java.time.Instant;
import java.util.List;

/**
 * What the shop is asked after a jam: the hot end stood cold, was heated again, and nobody told
 * what was done to it.
 *
 * @param episode id of the jam's alerts
 * @param jammed when the jam was called
 * @param cold since when it stood cold
 * @param heated when it was heated again; a part that was swapped took over just then
 * @param kinds of the parts that it may be, those on it first
 */
public record SwapQuestion(
    String episode,
    String printer,
    int hotEnd,
    Instant jammed,
    Instant cold,
    Instant heated,
    List<String> kinds) {

  public SwapQuestion {
    kinds = List.copyOf(kinds);
  }
}
