package meltkeeper.config;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import meltkeeper.metrics.MetricsSettings;
import meltkeeper.metrics.otlp.OtlpSettings;

/** Reads what the shop's monitoring is given. */
record MetricsReader(Folder folder) {

  MetricsSettings read(Fields fields) {
    return new MetricsSettings(
        fields.get(MetricsKeys.KEEP_REMOVED),
        fields.entry(MetricsKeys.OTLP).flatMap(this::readOtlp));
  }

  private Optional<OtlpSettings> readOtlp(Entry entry) {
    Fields fields = Fields.of(entry, Section.OTLP);
    Duration every = fields.get(MetricsKeys.EVERY);
    Map<String, String> headers = Headers.read(fields.entryOrBlank(MetricsKeys.HEADERS));
    Optional<Path> token = folder.secret(fields, MetricsKeys.TOKEN_FILE);
    Duration timeout = fields.get(MetricsKeys.TIMEOUT);
    return fields
        .need(MetricsKeys.URL)
        .map(url -> new OtlpSettings(url, every, headers, token, timeout));
  }
}
