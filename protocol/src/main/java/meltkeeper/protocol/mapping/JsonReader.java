package meltkeeper.protocol.mapping;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.IsoTime;
import meltkeeper.protocol.Outlet;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Received;
import meltkeeper.protocol.Rejected;
import meltkeeper.protocol.Rejected.Reason;
import meltkeeper.protocol.Sample;
import meltkeeper.protocol.Signal;
import org.jspecify.annotations.Nullable;

/**
 * Reads JSON payloads in one pass: the parser's tokens go straight into cells, and the cells are
 * told when the whole document has been seen, so that a torn one tells nothing.
 */
final class JsonReader implements MessageReader {

  private static final Comparator<ValueRule> AS_TOLD =
      Comparator.comparing(ValueRule::signal).thenComparingInt(ValueRule::hotEnd);

  private static final int SHOWN_BYTES = 200;

  private final JsonFactory json;
  private final Optional<TimeRule> timeRule;
  private final Cell time = new Cell(true);
  private final ValueTeller[] tellers;
  private final PathTree paths;
  private final HotEnd[] hotEnds;
  private final @Nullable Sample[] samples;

  JsonReader(JsonFactory json, String printer, Optional<TimeRule> timeRule, List<ValueRule> rules) {
    this.json = json;
    this.timeRule = timeRule;
    Map<JsonPath, Cell> cells = new HashMap<>();
    this.tellers =
        rules.stream()
            .sorted(AS_TOLD)
            .map(rule -> new ValueTeller(rule, cell(rule, rules, cells)))
            .toArray(ValueTeller[]::new);
    timeRule.ifPresent(rule -> cells.put(rule.at(), time));
    this.paths = PathTree.of(cells);
    int count = 1 + rules.stream().mapToInt(ValueRule::hotEnd).max().orElse(0);
    this.hotEnds = new HotEnd[count];
    Arrays.setAll(hotEnds, index -> new HotEnd(printer, index));
    this.samples = new Sample[count];
  }

  private Cell cell(ValueRule rule, List<ValueRule> rules, Map<JsonPath, Cell> cells) {
    if (timeRule.filter(time -> time.at().equals(rule.at())).isPresent()) {
      return time;
    }
    boolean asText =
        rules.stream()
            .filter(other -> other.at().equals(rule.at()))
            .anyMatch(other -> other.signal().form() != Signal.Form.NUMBER);
    return cells.computeIfAbsent(rule.at(), at -> new Cell(asText));
  }

  @Override
  public void read(Received received, Outlet outlet) {
    Payload payload = received.payload();
    if (!payload.isUtf8()) {
      refuse(Reason.TORN_LINE, "UTF-8", "", received, outlet);
      return;
    }
    try (JsonParser in = json.createParser(payload.array())) {
      if (!paths.fill(in)) {
        refuse(Reason.TORN_LINE, "one JSON document", "", received, outlet);
        return;
      }
    } catch (StreamConstraintsException e) {
      refuse(Reason.TOO_LONG, JsonDialect.LIMITS, "", received, outlet);
      return;
    } catch (IOException e) {
      refuse(Reason.TORN_LINE, "one whole JSON document", brokenAt(e), received, outlet);
      return;
    }
    tellAll(received, outlet);
  }

  private void tellAll(Received received, Outlet outlet) {
    if (isSilent()) {
      return;
    }
    long arrived = received.arrival().steadyNanos();
    long at = timeRule.isPresent() ? ownTime(timeRule.get().format()) : arrived;
    if (at < 0) {
      refuseTime(at, received, outlet);
      return;
    }
    Sample.Clock clock = timeRule.isPresent() ? Sample.Clock.OWN : Sample.Clock.ARRIVAL;
    Arrays.fill(samples, null);
    for (ValueTeller teller : tellers) {
      if (!teller.isSilent()) {
        int index = teller.hotEnd();
        Sample sample = samples[index];
        if (sample == null) {
          sample = new Sample(hotEnds[index], at, arrived, clock, received.retained());
          samples[index] = sample;
        }
        teller.tell(sample, received.origin(), outlet);
      }
    }
  }

  private boolean isSilent() {
    for (ValueTeller teller : tellers) {
      if (!teller.isSilent()) {
        return false;
      }
    }
    return true;
  }

  private long ownTime(TimeFormat format) {
    return time.isEmpty() ? IsoTime.NOT_A_TIME : format.nanos(time.text().strip());
  }

  private void refuseTime(long code, Received received, Outlet outlet) {
    Reason reason = code == IsoTime.OUT_OF_RANGE ? Reason.OUT_OF_RANGE : Reason.NOT_A_NUMBER;
    String found = time.isEmpty() ? "nothing" : time.text();
    String allowed = timeRule.map(rule -> rule.format().allowed()).orElse("");
    Fault fault = Fault.of("time", found, allowed).at(received.origin().describe());
    outlet.rejected(new Rejected(reason, fault.toString()));
  }

  private static void refuse(
      Reason reason, String allowed, String mend, Received received, Outlet outlet) {
    byte[] bytes = received.payload().array();
    String start =
        new String(bytes, 0, Math.min(bytes.length, SHOWN_BYTES), StandardCharsets.UTF_8);
    Fault fault = Fault.of("payload", start, allowed, mend).at(received.origin().describe());
    outlet.rejected(new Rejected(reason, fault.toString()));
  }

  private static String brokenAt(IOException e) {
    return e instanceof JacksonException torn && torn.getLocation() != null
        ? "it breaks after " + torn.getLocation().getByteOffset() + " bytes"
        : "";
  }
}
