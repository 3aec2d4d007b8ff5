package meltkeeper.pipeline;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.Rejected;

/**
 * What stands now, published whole by the one writer; immutable, for any thread.
 *
 * @param hotEnds by printer and index
 * @param received messages and lines taken in
 * @param readings made of them
 * @param rejected by reason
 * @param unknownPrinters heard, matched by a mapping, but not listed; the first hundred
 * @param commits made since the start
 * @param trouble why the last commit failed; empty while all is well
 */
public record Live(
    List<HotEndLive> hotEnds,
    long received,
    long readings,
    Map<Rejected.Reason, Long> rejected,
    List<String> unknownPrinters,
    long commits,
    Optional<String> trouble) {

  /** Before anything was heard. */
  public static final Live EMPTY =
      new Live(List.of(), 0, 0, Map.of(), List.of(), 0, Optional.empty());

  public Live {
    hotEnds = List.copyOf(hotEnds);
    rejected = Map.copyOf(rejected);
    unknownPrinters = List.copyOf(unknownPrinters);
  }

  /** The hot end of that name. */
  public Optional<HotEndLive> hotEnd(HotEnd hotEnd) {
    return hotEnds.stream().filter(h -> h.hotEnd().equals(hotEnd)).findFirst();
  }
}
