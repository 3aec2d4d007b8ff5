package meltkeeper.cli;

import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import meltkeeper.config.Settings;
import meltkeeper.desk.Desk;
import meltkeeper.desk.Shop;
import meltkeeper.outlook.GcodeBatch;
import meltkeeper.outlook.OutlookDesk;
import meltkeeper.pipeline.Live;
import meltkeeper.pipeline.Minute;
import meltkeeper.pipeline.Pipeline;
import meltkeeper.protocol.HotEnd;
import meltkeeper.source.SteadyClock;
import meltkeeper.web.view.AgentView;

/**
 * The running agent, as page and API see it.
 *
 * @param connected sources by name: true while connected
 * @param troubles by route of alerts: why its last try failed, empty while all is well
 */
record AgentInView(
    Settings settings,
    Pipeline pipeline,
    Desk desk,
    OutlookDesk outlook,
    SteadyClock clock,
    Supplier<Map<String, Boolean>> connected,
    Supplier<Map<String, String>> troubles)
    implements AgentView {

  @Override
  public Live live() {
    return pipeline.live();
  }

  @Override
  public List<Minute> trail(HotEnd hotEnd) {
    return pipeline.trail(hotEnd);
  }

  @Override
  public Map<String, Boolean> sources() {
    return connected.get();
  }

  @Override
  public Map<String, String> routeTroubles() {
    return troubles.get();
  }

  @Override
  public Shop shop() {
    return OpenDesk.shop(settings);
  }

  @Override
  public GcodeBatch gcode(String printer, String fileName) {
    return new GcodeBatch(
        fileName,
        OpenDesk.motion(settings, printer),
        index -> hotAboveCelsius(new HotEnd(printer, index)));
  }

  @Override
  public double hotAboveCelsius(HotEnd hotEnd) {
    return Joints.limits(settings).apply(hotEnd).hotAboveCelsius();
  }

  @Override
  public long nowNanos() {
    return clock.now().wallNanos();
  }
}
