package meltkeeper.cli;

import java.util.List;
import java.util.Optional;
import meltkeeper.config.PrinterSettings;
import meltkeeper.config.Settings;
import meltkeeper.desk.Desk;
import meltkeeper.desk.Shop;
import meltkeeper.desk.When;
import meltkeeper.outlook.OutlookDesk;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.motion.MotionLimits;
import meltkeeper.store.Store;
import meltkeeper.store.sql.Stores;

/**
 * The shop's desk, open for the length of one command.
 *
 * @param store closed with it
 * @param settings of the configuration
 * @param nowNanos the wall clock when it was opened, nanoseconds since 1970
 */
record OpenDesk(Store store, Settings settings, long nowNanos) implements AutoCloseable {

  /** How a command comes by a desk. */
  interface Opening {

    /**
     * Opens the desk of a configuration.
     *
     * @throws FaultsException when the configuration is at fault
     * @throws meltkeeper.store.StoreException when the store cannot be opened
     */
    OpenDesk open(ConfigFile config);
  }

  /** The desk over the store that the configuration names, now. */
  static OpenDesk of(ConfigFile config) {
    Settings settings = config.settings();
    return new OpenDesk(
        Stores.open(settings.storeUrl()), settings, System.currentTimeMillis() * 1_000_000);
  }

  /** What the configuration says of the shop. */
  static Shop shop(Settings settings) {
    return new Shop(
        List.copyOf(settings.printers().keySet()),
        List.copyOf(settings.kinds().values()),
        settings.costs(),
        settings.zone());
  }

  /** What a printer can do. */
  MotionLimits motion(String printer) {
    return motion(settings, printer);
  }

  Shop shop() {
    return shop(settings);
  }

  Desk desk() {
    return Desk.of(store, shop());
  }

  OutlookDesk outlook() {
    return new OutlookDesk(store, shop());
  }

  /** What a printer can do, by the configuration. */
  static MotionLimits motion(Settings settings, String printer) {
    return Optional.ofNullable(settings.printers().get(printer))
        .map(PrinterSettings::motion)
        .orElse(MotionLimits.DEFAULT);
  }

  /** Above this a hot end is hot, °C. */
  double hotAboveCelsius(HotEnd hotEnd) {
    return Joints.limits(settings).apply(hotEnd).hotAboveCelsius();
  }

  /** Reads times as this shop tells them. */
  When when() {
    return new When(shop().zone(), nowNanos);
  }

  @Override
  public void close() {
    store.close();
  }
}
