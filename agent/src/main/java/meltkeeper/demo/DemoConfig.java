package meltkeeper.demo;

import java.net.URI;
import java.nio.file.Path;

/** The demo's configuration, as an owner would write it. */
final class DemoConfig {

  private static final String TEXT =
      """
      store: jdbc:sqlite:$STORE
      brokers:
        shop: { url: "$BROKER", protocol: 5 }
      mappings:
        status-json:
          - topic: plant/{printer}/status
            time: { at: /at, format: iso }
            read:
              hot-end-temperature: /hotend/now
              hot-end-target: /hotend/set
              heater-duty: { at: /hotend/pwm, scale: 0.0078740157 }
              filament-commanded: /feed/asked
              filament-measured: /feed/seen
              feed-load: /feed/force
              fan: /fan
              job-state: { at: /job/state, words: { RUN: printing, HOLD: paused, REST: idle } }
              job: /job/name
              progress: /job/done
              material: /spool/material
        plain-values:
          - topic: bench/{printer}/hotend/now
            payload: number
            read: { hot-end-temperature: "" }
          - topic: bench/{printer}/hotend/set
            payload: number
            read: { hot-end-target: "" }
          - topic: bench/{printer}/feed/asked
            payload: number
            read: { filament-commanded: "" }
          - topic: bench/{printer}/job/state
            payload: text
            read: { job-state: "" }
      printers:
        heron: { from: { broker: shop, mapping: status-json } }
        ibis: { from: { broker: shop, mapping: plain-values } }
        egret: { from: { tcp: "127.0.0.1:$EGRET", every: 500ms, gap: 2m } }
        kestrel: { from: { broker: shop, mapping: status-json } }
      kinds:
        liner:  { price: 4.50,  swap-minutes: 15, belief: { life-hours: 600, spread: 0.35, shape: 2.5, halving: 10, at: 220 } }
        nozzle: { price: 12.00, swap-minutes: 10, belief: { life-hours: 1200, spread: 0.5, shape: 2.0, halving: 10, at: 220 } }
      costs: { currency: EUR, labour-per-hour: 25, jam: 18 }
      """;

  private DemoConfig() {}

  static String text(Path store, URI broker, int egretPort) {
    return TEXT.replace("$STORE", store.toString())
        .replace("$BROKER", broker.toString())
        .replace("$EGRET", Integer.toString(egretPort));
  }
}
