package meltkeeper.endure;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import meltkeeper.testing.RealParts;

/**
 * Reads what {@code strace} wrote about a process: its writes, syncs and printed lines, in order,
 * as far as they concern one folder.
 */
final class Traced {

  private static final Pattern CALL =
      Pattern.compile("(\\d+) +(pwrite64|write|fsync|fdatasync|ftruncate)\\((\\d+)<([^>]*)>(.*)");
  private static final Pattern RESUMED =
      Pattern.compile("(\\d+) +<\\.\\.\\. (?:fsync|fdatasync) resumed>.*= 0");
  private static final Pattern WRITTEN = Pattern.compile(", \"([^\"]*)\", (\\d+), (\\d+).*");
  private static final Pattern PRINTED = Pattern.compile(", \"([^\"]*)\".*");
  private static final Pattern LENGTH = Pattern.compile(", (\\d+).*");

  private static final Pattern UNLINK = Pattern.compile("\\d+ +unlink\\(\"([^\"]*)\"\\) += 0");

  private final String folder;
  private final List<Happening> happenings = new ArrayList<>();
  private final Map<String, String> syncing = new HashMap<>();

  private Traced(Path folder) {
    this.folder = folder + "/";
  }

  /** The command before that of the process. */
  static List<String> command(Path trace) {
    return List.of(
        RealParts.find("strace").toString(),
        "-f",
        "-y",
        "-xx",
        "-s",
        "1000000",
        "-e",
        "trace=pwrite64,write,fsync,fdatasync,ftruncate,unlink",
        "-o",
        trace.toString());
  }

  static List<Happening> read(Path trace, Path folder) throws IOException {
    Traced traced = new Traced(folder);
    try (BufferedReader lines = Files.newBufferedReader(trace, StandardCharsets.US_ASCII)) {
      String line = lines.readLine();
      while (line != null) {
        traced.take(line);
        line = lines.readLine();
      }
    }
    return List.copyOf(traced.happenings);
  }

  private void take(String line) {
    Matcher resumed = RESUMED.matcher(line);
    if (resumed.matches()) {
      Optional.ofNullable(syncing.remove(resumed.group(1)))
          .ifPresent(file -> happenings.add(new Happening.Synced(file)));
      return;
    }
    Matcher unlink = UNLINK.matcher(line);
    if (unlink.matches()) {
      removed(text(unlink.group(1)));
      return;
    }
    Matcher call = CALL.matcher(line);
    if (!call.matches()) {
      return;
    }
    String path = text(call.group(4));
    if (call.group(3).equals("1")) {
      printed(call.group(5));
    } else if (path.startsWith(folder) && !path.endsWith("-shm")) {
      String file = path.substring(folder.length());
      switch (call.group(2)) {
        case "pwrite64" -> written(file, call.group(5));
        case "ftruncate" -> cut(file, call.group(5));
        case "write" -> throw new AssertionError("a write without a place: " + file);
        default -> synced(call.group(1), file, call.group(5));
      }
    }
  }

  private void printed(String rest) {
    Matcher printed = PRINTED.matcher(rest);
    if (printed.matches()) {
      String text = text(printed.group(1)).strip();
      if (text.matches("\\d{19}")) {
        happenings.add(new Happening.Promised(Long.parseLong(text)));
      }
    }
  }

  private void removed(String path) {
    if (path.startsWith(folder)) {
      happenings.add(new Happening.Removed(path.substring(folder.length())));
    }
  }

  private void written(String file, String rest) {
    Matcher written = WRITTEN.matcher(rest);
    if (!written.matches()) {
      throw new AssertionError("a write that is not understood: " + rest);
    }
    happenings.add(
        new Happening.Written(
            file,
            Integer.parseInt(written.group(3)),
            new Happening.Bytes(bytes(written.group(1)))));
  }

  private void cut(String file, String rest) {
    Matcher length = LENGTH.matcher(rest);
    if (length.matches()) {
      happenings.add(new Happening.Cut(file, Integer.parseInt(length.group(1))));
    }
  }

  private void synced(String thread, String file, String rest) {
    if (rest.contains("unfinished")) {
      syncing.put(thread, file);
    } else if (rest.endsWith("= 0")) {
      happenings.add(new Happening.Synced(file));
    }
  }

  private static String text(String escaped) {
    return escaped.startsWith("\\x") ? new String(bytes(escaped), StandardCharsets.UTF_8) : escaped;
  }

  private static byte[] bytes(String escaped) {
    return HexFormat.of().parseHex(escaped.replace("\\x", ""));
  }
}
