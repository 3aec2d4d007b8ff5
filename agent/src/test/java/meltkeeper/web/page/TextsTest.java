package meltkeeper.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import meltkeeper.jam.Detector;
import meltkeeper.part.Because;
import meltkeeper.protocol.JobState;
import meltkeeper.store.Alert;
import meltkeeper.store.AlertTopic;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every word of the page is in the bundle, and nothing else is. */
final class TextsTest {

  private static final Pattern KEY = Pattern.compile("\"([a-z]+(?:\\.[a-z-]+)+)\"");
  private static final Pattern SAID = Pattern.compile("say\\(\\s*\"([a-z.-]+)\"");

  private static Set<String> bundle() {
    return new TreeSet<>(ResourceBundle.getBundle(Texts.BUNDLE, java.util.Locale.ENGLISH).keySet());
  }

  private static String sources() throws IOException {
    StringBuilder all = new StringBuilder();
    for (String folder : List.of("src/main/jte", "src/main/java/meltkeeper/web/page")) {
      try (Stream<Path> files = Files.walk(Path.of(folder))) {
        for (Path file : files.filter(Files::isRegularFile).toList()) {
          all.append(Files.readString(file)).append('\n');
        }
      }
    }
    return all.toString();
  }

  private static Set<String> found(Pattern pattern) throws IOException {
    Set<String> found = new TreeSet<>();
    Matcher matcher = pattern.matcher(sources());
    while (matcher.find()) {
      if (!matcher.group(1).endsWith(".")) {
        found.add(matcher.group(1));
      }
    }
    return found;
  }

  private static Set<String> families() {
    Set<String> keys = new TreeSet<>();
    Stream.of(Standing.values()).forEach(one -> keys.add("standing." + one.key()));
    Stream.of(JobState.values()).forEach(one -> keys.add("state." + one.word()));
    Stream.of(Detector.values()).forEach(one -> keys.add("detector." + one.word()));
    Stream.of(AlertTopic.values()).forEach(one -> keys.add("topic." + one.label()));
    Stream.of(Alert.Phase.values()).forEach(one -> keys.add("phase." + one.label()));
    Stream.of(Because.values()).forEach(one -> keys.add("because." + one.word()));
    Stream.of("overview", "batch", "parts", "kinds", "alerts")
        .forEach(view -> keys.add("menu." + view));
    Stream.of(
            "still-fitted",
            "on-shelf",
            "jam",
            "worn",
            "precaution",
            "inspection",
            "excused",
            "retired")
        .forEach(ending -> keys.add("ending." + ending));
    return keys;
  }

  @Test
  void everythingSaid_isInTheBundle() throws IOException {
    Set<String> said = found(SAID);
    said.addAll(families());

    assertThat(said).hasSizeGreaterThan(100);
    assertThat(bundle()).containsAll(said);
  }

  @Test
  void everythingInTheBundle_isSaid() throws IOException {
    Set<String> used = found(KEY);
    used.addAll(families());

    assertThat(bundle()).isSubsetOf(used);
  }

  @ParameterizedTest
  @ValueSource(strings = {"{0} of {1} <b>", "it''s {0}"})
  void valuesPutIn_areNotReadAsPatterns(String value) {
    assertThat(Texts.ENGLISH.say("printer.title", value)).isEqualTo(value);
  }
}
