package meltkeeper.endure;

import java.io.File;
import java.io.IOException;
import java.net.URI;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.spi.ToolProvider;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * How a process of our own classes is started.
 *
 * @param options of the virtual machine
 * @param classPath where the classes are
 */
record Start(List<String> options, String classPath) {

  private static final String C1_ALONE = "-XX:TieredStopAtLevel=1";

  /** From the classes as this process has them. */
  static final Start USUAL = new Start(List.of(C1_ALONE), usualClassPath());

  /** The same for a process that runs long. */
  static final Start LASTING = new Start(List.of(), USUAL.classPath);

  /** Some start programs within a process whose own class path is another. */
  private static String usualClassPath() {
    return Start.class.getClassLoader() instanceof URLClassLoader loader
        ? Stream.of(loader.getURLs())
            .map(url -> Path.of(URI.create(url.toString())).toString())
            .collect(Collectors.joining(File.pathSeparator))
        : System.getProperty("java.class.path");
  }

  Start {
    options = List.copyOf(options);
  }

  /**
   * The same from archives in a folder, so that many starts take half the time: the virtual machine
   * keeps loaded classes in a file of its own when the first process ends in good order.
   */
  static Start quick(Path folder) throws IOException {
    Files.createDirectories(folder);
    List<String> entries = new ArrayList<>();
    for (String entry : USUAL.classPath.split(File.pathSeparator, -1)) {
      entries.add(
          Files.isDirectory(Path.of(entry)) ? archived(folder, entry, entries.size()) : entry);
    }
    Path classes = folder.resolve("classes.jsa");
    return new Start(
        List.of(
            C1_ALONE,
            "-XX:ArchiveClassesAtExit=" + classes,
            "-Xlog:cds=off",
            "-Xlog:cds+dynamic=off"),
        String.join(File.pathSeparator, entries));
  }

  private static String archived(Path folder, String classes, int number) {
    String jar = folder.resolve(number + ".jar").toString();
    int code =
        ToolProvider.findFirst("jar")
            .orElseThrow()
            .run(System.out, System.err, "--create", "--file", jar, "-C", classes, ".");
    if (code != 0) {
      throw new IllegalStateException("jar ended with " + code);
    }
    return jar;
  }

  /** What to use once the first process has ended in good order. */
  Start again() {
    return new Start(
        options.stream()
            .map(option -> option.replace("ArchiveClassesAtExit", "SharedArchiveFile"))
            .toList(),
        classPath);
  }

  /** A command that runs one of our own classes on a heap as small as the shop's computer has. */
  List<String> java(String... mainAndArguments) {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(options);
    // What a killed process leaves behind lands where the caller cleans up.
    command.add("-Djava.io.tmpdir=" + System.getProperty("java.io.tmpdir"));
    command.addAll(List.of("-XX:+UseSerialGC", "-Xmx64m", "-cp", classPath));
    command.addAll(List.of(mainAndArguments));
    return command;
  }
}
