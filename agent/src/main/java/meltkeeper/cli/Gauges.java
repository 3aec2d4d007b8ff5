package meltkeeper.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.function.Function;
import meltkeeper.alert.RouteState;
import meltkeeper.config.Settings;
import meltkeeper.desk.Desk;
import meltkeeper.ledger.Limits;
import meltkeeper.metrics.ShownPart;
import meltkeeper.metrics.Sight;
import meltkeeper.outlook.FittedOutlook;
import meltkeeper.pipeline.Live;
import meltkeeper.protocol.Arrival;
import meltkeeper.protocol.HotEnd;

/** Takes together what one scrape shows. For any thread. */
final class Gauges {

  private final Desk desk;
  private final Function<HotEnd, Limits> limits;
  private final Map<String, Double> limitsCelsius;
  private final long keepRemovedNanos;
  private final Path storeFile;

  Gauges(Settings settings, Desk desk) {
    this.desk = desk;
    this.limits = Joints.limits(settings);
    this.limitsCelsius = Joints.limitsCelsius(settings);
    this.keepRemovedNanos = settings.metrics().keepRemoved().toNanos();
    this.storeFile = settings.storeFile();
  }

  Sight sight(
      Live live,
      List<FittedOutlook> ahead,
      Map<String, Boolean> sources,
      List<RouteState> routes,
      Arrival now) {
    List<ShownPart> parts =
        Dressing.parts(
            desk.parts().heats().heats(Dressing.totals(live), now.wallNanos()),
            now.wallNanos() - keepRemovedNanos);
    return new Sight(
        live,
        Dressing.hotEnds(live, parts, now.steadyNanos(), limits, limitsCelsius),
        parts,
        Dressing.forecasts(ahead),
        sources,
        Dressing.routes(routes),
        freeBytes());
  }

  private OptionalLong freeBytes() {
    try {
      return OptionalLong.of(Files.getFileStore(storeFile).getUsableSpace());
    } catch (IOException e) {
      return OptionalLong.empty();
    }
  }
}
