package meltkeeper.protocol.mapping;

import java.util.Optional;
import java.util.Set;
import meltkeeper.protocol.Fault;

/**
 * A mapping and the printers of one broker that are read with it.
 *
 * @param mapping how to read them
 * @param printers their names; exactly one when a rule's topic has no {@code {printer}}
 */
public record Route(Mapping mapping, Set<String> printers) {

  /**
   * A route checked by {@link #fault}.
   *
   * @throws IllegalArgumentException with the text of the fault
   */
  public Route {
    printers = Set.copyOf(printers);
    fault(mapping, printers)
        .ifPresent(
            fault -> {
              throw new IllegalArgumentException(fault.toString());
            });
  }

  /** What is wrong with the pair, its key being the mapping's topic; empty when nothing is. */
  public static Optional<Fault> fault(Mapping mapping, Set<String> printers) {
    if (printers.size() == 1) {
      return Optional.empty();
    }
    return mapping.rules().stream()
        .map(MessageRule::topic)
        .filter(topic -> !topic.capturesPrinter())
        .findFirst()
        .map(
            topic ->
                Fault.of(
                    "mappings." + mapping.name() + ".topic",
                    topic,
                    "a topic with " + TopicPattern.PRINTER + ", for " + count(printers),
                    "put " + TopicPattern.PRINTER + " where the printer's name stands"));
  }

  private static String count(Set<String> printers) {
    return printers.isEmpty()
        ? "no printer uses the mapping"
        : printers.size() + " printers use the mapping";
  }
}
