package meltkeeper.dashboards;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;
import meltkeeper.dashboards.Shipped.Board;
import meltkeeper.dashboards.Shipped.Form;
import meltkeeper.dashboards.Shipped.Line;
import meltkeeper.dashboards.Shipped.Panel;
import meltkeeper.dashboards.Shipped.Unit;
import meltkeeper.dashboards.Shipped.Words;

/** Makes a dashboard in Grafana's JSON model out of its description. */
final class Grafana {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final int SCHEMA_VERSION = 38;
  private static final int PAGE_WIDE = 24;
  private static final int PANEL_WIDE = 12;
  private static final int PANEL_HIGH = 8;

  private static final String GOOD = "#1d6b45";
  private static final String ALARM = "#a3201a";
  private static final String WARN = "#c2570c";
  private static final String BLIND = "#5b4b8a";
  private static final String PLAIN = "#11606b";

  private static final Map<Unit, String> UNITS =
      Map.of(
          Unit.HOURS, "h",
          Unit.DAYS, "d",
          Unit.SECONDS, "s",
          Unit.CELSIUS, "celsius",
          Unit.SHARE, "percentunit",
          Unit.METERS, "lengthm",
          Unit.BYTES, "bytes");

  private int id;
  private int left;
  private int top;

  private Grafana() {}

  static String dashboard(Board board) throws JsonProcessingException {
    return JSON.writerWithDefaultPrettyPrinter().writeValueAsString(new Grafana().of(board)) + "\n";
  }

  private ObjectNode of(Board board) {
    ObjectNode dashboard = JSON.createObjectNode();
    dashboard
        .put("title", board.title())
        .put("uid", "meltkeeper-" + board.file())
        .put("schemaVersion", SCHEMA_VERSION)
        .put("editable", true)
        .put("refresh", "1m");
    dashboard.putArray("tags").add("meltkeeper");
    dashboard.putObject("time").put("from", "now-24h").put("to", "now");
    ArrayNode choices = dashboard.putObject("templating").putArray("list");
    choices
        .addObject()
        .put("name", "source")
        .put("label", "read from")
        .put("type", "datasource")
        .put("query", "prometheus");
    ObjectNode printer =
        choices
            .addObject()
            .put("name", "printer")
            .put("type", "query")
            .put("query", "label_values(meltkeeper_jam_level, printer)")
            .put("refresh", 2)
            .put("sort", 1)
            .put("multi", true)
            .put("includeAll", true)
            .put("allValue", ".*");
    printer.putObject("current").put("text", "All").put("value", "$__all");
    putSource(printer);
    ArrayNode panels = dashboard.putArray("panels");
    board.panels().forEach(panel -> panels.add(of(panel)));
    return dashboard;
  }

  private ObjectNode of(Panel panel) {
    ObjectNode json = JSON.createObjectNode();
    json.put("id", ++id)
        .put("type", type(panel.form()))
        .put("title", panel.title())
        .put("description", panel.say());
    place(json.putObject("gridPos"), panel.wide().orElse(PANEL_WIDE));
    putSource(json);
    ArrayNode targets = json.putArray("targets");
    boolean isOverTime = panel.form() == Form.LINES || panel.form() == Form.STATES;
    for (Line line : panel.lines()) {
      String reference = String.valueOf((char) ('A' + targets.size()));
      targets
          .addObject()
          .put("refId", reference)
          .put("expr", line.ask())
          .put("legendFormat", line.name())
          .put("range", isOverTime)
          .put("instant", !isOverTime);
    }
    defaults(json.putObject("fieldConfig").putObject("defaults"), panel);
    options(json.putObject("options"), panel.form());
    return json;
  }

  private static String type(Form form) {
    return switch (form) {
      case STATES -> "state-timeline";
      case LINES -> "timeseries";
      case BARS -> "bargauge";
      case FIGURES -> "stat";
    };
  }

  private void place(ObjectNode position, int wide) {
    if (left + wide > PAGE_WIDE) {
      left = 0;
      top += PANEL_HIGH;
    }
    position.put("x", left).put("y", top).put("w", wide).put("h", PANEL_HIGH);
    left += wide;
  }

  private static void putSource(ObjectNode json) {
    json.putObject("datasource").put("type", "prometheus").put("uid", "${source}");
  }

  private static void defaults(ObjectNode defaults, Panel panel) {
    panel.unit().ifPresent(unit -> defaults.put("unit", UNITS.get(unit)));
    defaults.put("noValue", "nothing to show");
    defaults
        .putObject("color")
        .put("mode", panel.form() == Form.LINES ? "palette-classic" : "thresholds");
    ObjectNode thresholds = defaults.putObject("thresholds").put("mode", "absolute");
    ArrayNode steps = thresholds.putArray("steps");
    steps.addObject().put("color", PLAIN).putNull("value");
    panel.limit().ifPresent(limit -> steps.addObject().put("color", ALARM).put("value", limit));
    panel.words().ifPresent(words -> name(defaults.putArray("mappings"), words));
    if (panel.form() == Form.LINES) {
      ObjectNode custom = defaults.putObject("custom").put("lineWidth", 2).put("spanNulls", false);
      panel.limit().ifPresent(limit -> custom.putObject("thresholdsStyle").put("mode", "dashed"));
    } else if (panel.form() == Form.BARS) {
      defaults.put("min", 0);
    }
  }

  /** Each state has a sign and a word, so that no colour needs to be told from another. */
  private static void name(ArrayNode mappings, Words words) {
    ObjectNode options = mappings.addObject().put("type", "value").putObject("options");
    switch (words) {
      case LEVEL -> {
        state(options, "-1", "? blind", BLIND);
        state(options, "0", "✓ clear", GOOD);
        state(options, "1", "▼ narrowing", WARN);
        state(options, "2", "✕ stalled", ALARM);
      }
      case YES -> {
        state(options, "0", "✕ no", BLIND);
        state(options, "1", "✓ yes", GOOD);
      }
    }
  }

  private static void state(ObjectNode options, String value, String text, String colour) {
    options
        .putObject(value)
        .put("text", text)
        .put("color", colour)
        .put("index", options.size() - 1);
  }

  private static void options(ObjectNode options, Form form) {
    switch (form) {
      case LINES -> {
        options
            .putObject("legend")
            .put("displayMode", "table")
            .put("placement", "bottom")
            .putArray("calcs")
            .add("lastNotNull");
        options.putObject("tooltip").put("mode", "multi");
      }
      case STATES -> {
        options.put("showValue", "always").put("mergeValues", true);
        options.putObject("legend").put("showLegend", false);
      }
      case BARS -> options.put("orientation", "horizontal").put("displayMode", "basic");
      case FIGURES -> options.put("colorMode", "none").put("graphMode", "area");
    }
  }
}
