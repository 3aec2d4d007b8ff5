package meltkeeper.cli;

import java.util.Optional;
import picocli.CommandLine.IVersionProvider;

/** Tells the version and the commit that it was built from, out of the jar's manifest. */
final class Version implements IVersionProvider {

  @Override
  public String[] getVersion() {
    return new String[] {
      "meltkeeper " + text(), "Java " + Runtime.version() + " on " + System.getProperty("os.arch")
    };
  }

  static String text() {
    Package built = Version.class.getPackage();
    return Optional.ofNullable(built.getImplementationVersion()).orElse("not packaged");
  }
}
