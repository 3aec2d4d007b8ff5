package meltkeeper.cli.doctor;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import meltkeeper.config.From;
import meltkeeper.config.Settings;
import meltkeeper.source.Source;

/**
 * Looks an installation over, after its sources were listened to for a while.
 *
 * @param heard what they told meanwhile
 * @param sources those that were listened to
 * @param kept what the store told before
 */
public record Doctor(
    Settings settings, Heard heard, List<? extends Source> sources, Kept kept, Instant now) {

  private static final Duration LATELY = Duration.ofMinutes(10);

  public Doctor {
    sources = List.copyOf(sources);
  }

  /** Everything that was looked at. */
  public List<Finding> findings() {
    Optional<Instant> latest = kept.lastHeard().values().stream().max(Instant::compareTo);
    List<Finding> findings = new ArrayList<>(new ComputerCheck(settings, now, latest).findings());
    findings.add(kept.finding());
    findings.add(
        new CopyCheck(
                settings.copies(), LocalDate.ofInstant(now, settings.zone()), kept.agentRuns())
            .finding());
    findings.add(
        kept.agentRuns()
            ? Finding.well("agent", "it runs, and writes to the store")
            : Finding.weak(
                "agent", "none writes to the store", "start it: systemctl start meltkeeper"));
    settings.brokers().keySet().forEach(name -> findings.add(broker(name)));
    findings.addAll(new PrinterCheck(settings, heard, byTheAgent()).findings());
    if (settings.alerts().routes().isEmpty()) {
      findings.add(
          Finding.weak("alerts", "nobody is called", "name a route under alerts: docs/alerts.md"));
    }
    return findings;
  }

  private Finding broker(String name) {
    String about = "broker " + name;
    return sources.stream()
        .filter(source -> source.name().equals(name))
        .findFirst()
        .map(
            source ->
                source.state().isUp()
                    ? Finding.well(about, source.state().reason())
                    : Finding.bad(
                        about,
                        source.state().reason(),
                        "see that it runs and is reachable, and that url, username and"
                            + " password-file are those that it wants"))
        .orElseGet(() -> Finding.weak(about, "it was not asked", "please report this"));
  }

  /** A serial port has one listener: what the agent has heard lately of such printers counts. */
  private Map<String, Instant> byTheAgent() {
    Map<String, Instant> heardByIt = new HashMap<>();
    if (kept.agentRuns()) {
      kept.lastHeard()
          .forEach(
              (printer, at) -> {
                boolean ownLine =
                    Optional.ofNullable(settings.printers().get(printer))
                        .filter(known -> !(known.from() instanceof From.Mqtt))
                        .isPresent();
                if (ownLine && at.isAfter(now.minus(LATELY))) {
                  heardByIt.put(printer, at);
                }
              });
    }
    return heardByIt;
  }
}
