package meltkeeper.config;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import meltkeeper.web.guard.Certificates;
import meltkeeper.web.guard.TokenHash;
import meltkeeper.web.guard.WebSettings;

/** Reads where the page is served, and to whom. */
record HttpReader(Folder folder) {

  WebSettings read(Fields fields) {
    HostPort listen = fields.get(Keys.LISTEN);
    Optional<TokenHash> token = readToken(fields);
    boolean forReads = fields.get(Keys.TOKEN_FOR_READS);
    if (forReads && !fields.has(Keys.TOKEN_FILE)) {
      fields
          .entryOrBlank(Keys.TOKEN_FOR_READS)
          .tell("true without token-file", "true beside a token-file", "add the key token-file");
    }
    return new WebSettings(
        listen.host(), listen.port(), readNames(fields), token, forReads, readCertificate(fields));
  }

  private static Set<String> readNames(Fields fields) {
    Set<String> names = new HashSet<>();
    if (fields.has(Keys.NAMES)) {
      Entry entry = fields.entryOrBlank(Keys.NAMES);
      if (!entry.isList()) {
        entry.tell(
            entry.shown(), Keys.NAMES.form().allowed(), "write a list: [ shelf.shop.example ]");
      }
      entry.elements().forEach(e -> Fields.read(e, Keys.A_HOST_NAME).ifPresent(names::add));
    }
    return names;
  }

  private Optional<TokenHash> readToken(Fields fields) {
    Optional<Path> file =
        folder
            .secret(fields, Keys.TOKEN_FILE)
            .filter(Files::isReadable)
            .filter(Files::isRegularFile);
    Optional<TokenHash> token = file.map(HttpReader::text).flatMap(TokenHash::read);
    if (file.isPresent() && token.isEmpty()) {
      fields
          .entryOrBlank(Keys.TOKEN_FILE)
          .tell(
              file.get() + " with something else in it",
              "a file that holds " + TokenHash.ALLOWED,
              "make it with meltkeeper token FILE");
    }
    return token;
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      return "";
    }
  }

  private Optional<WebSettings.CertificateFiles> readCertificate(Fields fields) {
    if (fields.has(Keys.KEY_FILE) != fields.has(Keys.CERTIFICATE_FILE)) {
      fields
          .entryOrBlank(fields.has(Keys.KEY_FILE) ? Keys.KEY_FILE : Keys.CERTIFICATE_FILE)
          .tell("one of the two", "key-file and certificate-file together", "add the other");
    }
    Optional<Path> key = folder.secret(fields, Keys.KEY_FILE).filter(Files::isReadable);
    Optional<Path> chain = folder.file(fields, Keys.CERTIFICATE_FILE).filter(Files::isReadable);
    Optional<WebSettings.CertificateFiles> files =
        key.flatMap(k -> chain.map(c -> new WebSettings.CertificateFiles(k, c)));
    files
        .flatMap(Certificates::fault)
        .ifPresent(fault -> fields.entryOrBlank(Keys.KEY_FILE).tell(fault));
    return files;
  }
}
