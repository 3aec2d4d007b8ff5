package meltkeeper.config;

import java.nio.file.Path;

/**
 * The daily copies of the store.
 *
 * @param folder where they are kept
 * @param keep how many days; 0 for none
 */
public record CopySettings(Path folder, int keep) {}
