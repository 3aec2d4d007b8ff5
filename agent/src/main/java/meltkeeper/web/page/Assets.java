package meltkeeper.web.page;

import io.javalin.config.RoutesConfig;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.zip.CRC32;
import meltkeeper.plot.PlotStyle;

/** The files that the page needs: its style, its picture and two small scripts of others. */
final class Assets {

  private static final String A_YEAR = "public, max-age=31536000, immutable";
  private static final Map<String, Asset> ALL = all();

  private Assets() {}

  private record Asset(String type, String text, String version) {
    static Asset of(String type, String text) {
      CRC32 sum = new CRC32();
      sum.update(text.getBytes(StandardCharsets.UTF_8));
      return new Asset(type, text, Long.toHexString(sum.getValue()));
    }
  }

  private static Map<String, Asset> all() {
    Map<String, Asset> all = new LinkedHashMap<>();
    all.put("page.css", Asset.of("text/css", text("page.css") + PlotStyle.CSS));
    all.put("icon.svg", Asset.of("image/svg+xml", text("icon.svg")));
    all.put("htmx.js", script("htmx.org", "2.0.8", "dist/htmx.min.js"));
    all.put("live.js", script("htmx-ext-sse", "2.2.2", "sse.js"));
    return all;
  }

  private static Asset script(String library, String version, String file) {
    return Asset.of(
        "text/javascript",
        text("/META-INF/resources/webjars/" + library + "/" + version + "/" + file));
  }

  private static String text(String name) {
    try (InputStream in = Objects.requireNonNull(Assets.class.getResourceAsStream(name), name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static String address(String name) {
    return "/assets/" + name + "?v=" + Objects.requireNonNull(ALL.get(name), name).version();
  }

  static void serve(RoutesConfig routes) {
    ALL.forEach(
        (name, asset) ->
            routes.get(
                "/assets/" + name,
                request ->
                    request
                        .contentType(asset.type() + "; charset=utf-8")
                        .header("Cache-Control", A_YEAR)
                        .result(asset.text())));
  }
}
