package meltkeeper.web.api;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import meltkeeper.desk.RefusedException;
import meltkeeper.protocol.Fault;

/**
 * Knows the latest writes by the key that their sender gave them, so that one sent again after a
 * lost answer is not done again. Kept in memory: a thousand of them, until the agent ends. One
 * write at a time. Safe for any thread.
 */
final class Repeats {

  private static final int REMEMBERED = 1_000;
  private static final int LONGEST_KEY = 200;

  /** A write that was done. */
  private record Done(String asked, String answer) {}

  private final Map<String, Done> done =
      new LinkedHashMap<>() {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Done> eldest) {
          return size() > REMEMBERED;
        }
      };

  /**
   * Does a write, or answers as it was answered before.
   *
   * @param key of the sender; empty to do it anyhow
   * @param asked all that tells one write from another
   * @throws RefusedException when the key was used for another write
   */
  synchronized String once(Optional<String> key, String asked, Supplier<String> write) {
    if (key.isEmpty()) {
      return write.get();
    }
    String name = key.get();
    if (name.isBlank() || name.length() > LONGEST_KEY) {
      throw refused(name, "1 to " + LONGEST_KEY + " characters");
    }
    Optional<Done> before = Optional.ofNullable(done.get(name));
    if (before.filter(b -> !b.asked().equals(asked)).isPresent()) {
      throw refused(name, "a key that was not used for another write");
    }
    String answer = before.map(Done::answer).orElseGet(write);
    done.put(name, new Done(asked, answer));
    return answer;
  }

  private static RefusedException refused(String found, String allowed) {
    return new RefusedException(List.of(Fault.of("Idempotency-Key", found, allowed)));
  }
}
